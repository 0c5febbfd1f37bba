#!/usr/bin/env python3
"""Solve a menu problem with general-purpose MILP solvers, to compare with domain/solve/menufill.

Reads a menufill.Problem as JSON (the field names of the Go type) and prints bound and value of HiGHS, through SciPy, and of
CBC. Debian packages: python3-scipy, coinor-cbc.

    go test ./domain/solve/menufill -run TestWriteProblems -problems DIR
    python3 testdata/solvers/menufill_milp.py DIR/*.json --seconds 60
"""
import argparse
import json
import os
import re
import subprocess
import tempfile
import time

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csr_matrix, vstack


class Model:
    """Rows and columns of the integer programme in the package comment of menufill."""

    def __init__(self, p):
        self.p, self.cost, self.integer, self.top = p, [], [], []
        self.rows, self.low, self.high = [], [], []
        self.x, self.y = {}, {}
        self.build()

    def column(self, cost, top=1.0, integer=1):
        self.cost.append(cost)
        self.integer.append(integer)
        self.top.append(top)
        return len(self.cost) - 1

    def row(self, terms, low, high):
        if terms or low > 0:
            self.rows.append(terms)
            self.low.append(low)
            self.high.append(high)

    def candidates(self, s):
        p = self.p
        if s["Fixed"]:
            return sorted(s["Fixed"])
        found = []
        for r, recipe in enumerate(p["Recipes"]):
            fresh = recipe["LastDay"] == 0 or s["Day"] <= recipe["LastDay"]
            eaten = any(n > 0 and recipe["Servings"][g]["Served"] for g, n in enumerate(s["Eaters"]))
            if fresh and eaten and s["Kind"] in recipe["Kinds"] and r not in (s["Excluded"] or []):
                found.append(r)
        return found

    def build(self):
        p = self.p
        w = p["Weights"]
        for i, s in enumerate(p["Slots"]):
            for r in self.candidates(s):
                self.x[i, r] = self.column(0)
                for g, n in enumerate(s["Eaters"]):
                    v = p["Recipes"][r]["Servings"][g]
                    if n > 0 and v["Served"]:
                        y = self.y[i, g, r] = self.column(n * (w["Mass"] * v["MassDg"] + w["Cost"] * v["CostCents"]))
                        self.row([(y, 1), (self.x[i, r], -1)], -np.inf, 0)
            mine = [(self.x[i, r], 1) for r in self.candidates(s)]
            if s["Fixed"]:
                self.row(mine, len(s["Fixed"]), len(s["Fixed"]))
            else:
                self.row(mine, 0, s["Pots"])
            for g, n in enumerate(s["Eaters"]):
                if n > 0:
                    self.row([(self.y[i, g, r], 1) for r in self.candidates(s) if (i, g, r) in self.y], 1, 1)
        self.days()
        self.trip()

    def of_day(self, g, day, figure):
        p = self.p
        return [(y, p["Recipes"][r]["Servings"][k][figure]) for (i, k, r), y in self.y.items()
                if k == g and (day is None or p["Slots"][i]["Day"] == day)]

    def days(self):
        p = self.p
        for d in range(p["Days"]):
            self.row([(x, p["Recipes"][r]["CookMinutes"]) for (i, r), x in self.x.items() if p["Slots"][i]["Day"] == d + 1],
                     -np.inf, p["CookMinutes"][d])
            for g, c in enumerate(p["Classes"]):
                energy = self.of_day(g, d + 1, "Kcal")
                if energy:
                    self.row(energy, c["EnergyMin"][d], c["EnergyMax"][d])
                    self.row(self.of_day(g, d + 1, "ProteinDg"), c["ProteinMin"][d], np.inf)

    def trip(self):
        p = self.p
        for g, c in enumerate(p["Classes"]):
            self.row(self.of_day(g, None, "Kcal"), c["EnergyTotal"], np.inf)
        for r, recipe in enumerate(p["Recipes"]):
            uses = [(x, p["Slots"][i]["Day"]) for (i, k), x in self.x.items() if k == r]
            self.row([(x, 1) for x, _ in uses], -np.inf, recipe["Repeats"])
            if p["Weights"]["Repeat"] and uses:
                again = self.column(p["Weights"]["Repeat"], top=len(uses), integer=0)
                self.row([(x, 1) for x, _ in uses] + [(again, -1)], -np.inf, 1)
            length = min(recipe["GapDays"] + 1, p["Days"])
            for first in range(1, p["Days"] - length + 2):
                window = [(x, 1) for x, day in uses if first <= day < first + length]
                if len(window) > 1:
                    self.row(window, -np.inf, 1)

    def matrix(self):
        at = [(k, c, v) for k, terms in enumerate(self.rows) for c, v in terms]
        k, c, v = zip(*at)
        return csr_matrix((v, (k, c)), shape=(len(self.rows), len(self.cost)))

    def relaxed(self):
        a, high, low = self.matrix(), np.array(self.high), np.array(self.low)
        up, down = np.isfinite(high), np.isfinite(low)
        answer = linprog(self.cost, A_ub=vstack([a[up], -a[down]]), b_ub=np.concatenate([high[up], -low[down]]),
                       bounds=list(zip([0] * len(self.top), self.top)), method="highs").fun
        return "none: infeasible" if answer is None else f"{answer:.1f}"

    def highs(self, seconds):
        begin = time.time()
        r = milp(self.cost, constraints=LinearConstraint(self.matrix(), self.low, self.high), integrality=self.integer,
                 bounds=Bounds(0, self.top), options={"time_limit": seconds, "mip_rel_gap": 0})
        return r.fun, r.mip_dual_bound, time.time() - begin, r.message

    def cbc(self, seconds):
        begin = time.time()
        with tempfile.TemporaryDirectory() as folder:
            lp, answer = os.path.join(folder, "m.lp"), os.path.join(folder, "m.txt")
            with open(lp, "w") as f:
                self.write(f)
            out = subprocess.run(["cbc", lp, "timeMode", "elapsed", "sec", str(seconds), "ratio", "0", "solve", "solu", answer],
                                 capture_output=True, text=True).stdout
        value = re.search(r"Objective value:\s+([-\d.e+]+)", out)
        bound = re.search(r"Lower bound:\s+([-\d.e+]+)", out)
        value = float(value.group(1)) if value else None
        optimal = "Optimal solution found" in out
        return value, value if optimal else (float(bound.group(1)) if bound else None), time.time() - begin, \
            "optimal" if optimal else "time limit" if value is not None else out[-200:]

    def write(self, f):
        f.write("Minimize\n obj: " + " ".join(f"{'+' if c >= 0 else '-'} {abs(c)} v{k}" for k, c in enumerate(self.cost) if c) + "\nSubject To\n")
        for k, terms in enumerate(self.rows):
            left = " ".join(f"{'+' if v >= 0 else '-'} {abs(v)} v{c}" for c, v in terms)
            if self.low[k] == self.high[k]:
                f.write(f" r{k}: {left} = {self.low[k]}\n")
                continue
            if np.isfinite(self.high[k]):
                f.write(f" r{k}: {left} <= {self.high[k]}\n")
            if np.isfinite(self.low[k]):
                f.write(f" s{k}: {left} >= {self.low[k]}\n")
        f.write("Bounds\n" + "".join(f" 0 <= v{k} <= {t}\n" for k, t in enumerate(self.top)))
        f.write("General\n" + "".join(f" v{k}\n" for k, i in enumerate(self.integer) if i) + "End\n")


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("problems", nargs="+")
    options.add_argument("--seconds", type=float, default=60)
    options.add_argument("--solvers", default="lp,highs,cbc")
    chosen = options.parse_args()
    for path in chosen.problems:
        with open(path) as f:
            m = Model(json.load(f))
        name = os.path.basename(path)
        if "lp" in chosen.solvers:
            print(f"{name}\tlp\tbound {m.relaxed()}", flush=True)
        for solver in ("highs", "cbc"):
            if solver in chosen.solvers:
                value, bound, seconds, message = getattr(m, solver)(chosen.seconds)
                print(f"{name}\t{solver}\tvalue {value}\tbound {bound}\t{seconds:.1f} s\t{message}", flush=True)


if __name__ == "__main__":
    main()
