#!/usr/bin/env python3
"""Compare the carry solver with general-purpose solvers, side by side.

Needs python3-scipy (HiGHS) and coinor-cbc. First let the package write its cases:

    mkdir cases && FAIRSPLIT_EXPORT=$PWD/cases go test -run TestExportCases ./domain/solve/fairsplit
    python3 testdata/solvers/fairsplit_milp.py cases --seconds 60 [--only 4x3]

Two problems per case, as in the objective of the package: the least R1, then the least
S with R1 within 0.5 % of the least R1 known. Prints percent above the water level.
"""
import argparse
import json
import pathlib
import re
import subprocess
import tempfile
import time

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csr_array


class Model:
    """Rows A x <= upper and A x == 1 over items' carriers x and days' burdens R."""

    def __init__(self, p):
        self.days, self.hours = p["Days"], np.array(p["HoursTenths"], float)
        crew, items = p["Crew"], p["Items"]
        self.pairs = [(j, i) for j, it in enumerate(items)
                      for i in (range(len(crew)) if it["Allowed"] is None else it["Allowed"])]
        self.size = len(self.pairs) + self.days
        burden = {d: len(self.pairs) + d for d in range(self.days)}
        self.rows = []  # (coefficients by column, lower, upper)
        by_item, by_member = {}, {}
        for column, (j, i) in enumerate(self.pairs):
            by_item.setdefault(j, []).append(column)
            by_member.setdefault(i, []).append(column)
        for j in range(len(items)):
            self.rows.append(({c: 1.0 for c in by_item[j]}, 1.0, 1.0))
        for i, m in enumerate(crew):
            mine = by_member.get(i, [])
            for d in range(self.days):
                row = {c: float(self.mass(items[self.pairs[c][0]], d)) for c in mine}
                row[burden[d]] = -float(m["Strength"])
                self.rows.append((row, -np.inf, -float(m["BaseGrams"])))
            self.rows.append(({c: float(items[self.pairs[c][0]]["MassGrams"]) for c in mine},
                              -np.inf, float(m["MaxGrams"] - m["BaseGrams"])))
            self.rows.append(({c: float(items[self.pairs[c][0]]["VolumeMl"]) for c in mine},
                              -np.inf, float(m["VolumeMl"])))
            for cl in p["Classes"]:
                of_class = [it["Energy"] for it in items if it["Class"] == cl["Name"]]
                most = sum(of_class) * cl["Share"]["Num"] // cl["Share"]["Den"]
                row = {c: float(items[self.pairs[c][0]]["Energy"]) for c in mine
                       if items[self.pairs[c][0]]["Class"] == cl["Name"]}
                self.rows.append((row, -np.inf, float(most)))
        self.rows = [r for r in self.rows if r[0]]

    @staticmethod
    def mass(item, day):
        if day >= item["GoneAfter"]:
            return item["ResidualGrams"]
        return item["Mornings"][day] if item.get("Mornings") else item["MassGrams"]

    def objective(self, phase):
        c = np.zeros(self.size)
        if phase == 1:
            c[len(self.pairs)] = 1
        else:
            c[len(self.pairs):] = self.hours / self.hours.sum()
        return c

    def bounds(self, most_first):
        upper = np.ones(self.size)
        upper[len(self.pairs):] = np.inf
        if most_first:
            upper[len(self.pairs)] = most_first
        return Bounds(np.zeros(self.size), upper)

    def matrix(self):
        data, row, column = [], [], []
        for n, (coefficients, _, _) in enumerate(self.rows):
            for c, v in coefficients.items():
                data.append(v), row.append(n), column.append(c)
        return csr_array((data, (row, column)), shape=(len(self.rows), self.size))

    def highs(self, phase, most_first, seconds):
        constraint = LinearConstraint(self.matrix(), [r[1] for r in self.rows], [r[2] for r in self.rows])
        whole = np.ones(self.size)
        whole[len(self.pairs):] = 0
        start = time.time()
        r = milp(self.objective(phase), constraints=constraint, integrality=whole,
                 bounds=self.bounds(most_first), options={"time_limit": seconds, "mip_rel_gap": 1e-4})
        value = r.fun if r.x is not None else None
        if value is None and r.status == 2:
            value = "none"
        return value, r.mip_dual_bound, time.time() - start

    def relaxed(self, phase, most_first):
        matrix = self.matrix()
        equal = np.array([r[1] == r[2] for r in self.rows])
        upper = np.array([r[2] for r in self.rows])
        b = self.bounds(most_first)
        r = linprog(self.objective(phase), A_ub=matrix[~equal], b_ub=upper[~equal], A_eq=matrix[equal],
                    b_eq=upper[equal], bounds=np.column_stack([b.lb, b.ub]), method="highs")
        return r.fun

    def cbc(self, phase, most_first, seconds):
        with tempfile.TemporaryDirectory() as folder:
            path = pathlib.Path(folder, "case.lp")
            path.write_text(self.lp_text(phase, most_first))
            start = time.time()
            out = subprocess.run(["cbc", str(path), "-timeMode", "elapsed", "-ratio", "0.0001", "-seconds", str(seconds), "-solve"],
                                 capture_output=True, text=True, check=False).stdout
            took = time.time() - start
        value = re.search(r"^Objective value:\s+(\S+)", out, re.M)
        bound = re.search(r"^Lower bound:\s+(\S+)", out, re.M)
        if "infeasible" in out and not value:
            return "none", None, took
        value = float(value[1]) if value else None
        return value, float(bound[1]) if bound else value, took

    def lp_text(self, phase, most_first):
        def expression(coefficients):
            return " ".join(f"{v:+.12g} v{c}\n" for c, v in coefficients.items())

        objective = {c: v for c, v in enumerate(self.objective(phase)) if v}
        text = ["Minimize\nobj: " + expression(objective), "Subject To\n"]
        for n, (coefficients, low, high) in enumerate(self.rows):
            sign = "=" if low == high else "<="
            text.append(f"r{n}: {expression(coefficients)} {sign} {high:.12g}\n")
        if most_first:
            text.append(f"first: v{len(self.pairs)} <= {most_first:.12g}\n")
        text.append("Binary\n" + "\n".join(f"v{c}" for c in range(len(self.pairs))) + "\nEnd\n")
        return "".join(text)


def percent(value, level):
    return f"{value if isinstance(value, str) else '-'}" if not isinstance(value, float) else f"{100 * (value / level - 1):.3f}"


def compare(path, seconds, solvers):
    case = json.loads(path.read_text())
    ours, model = case["Ours"], Model(case["Problem"])
    level, mean_level = ours["LevelR1"], ours["LevelS"]
    best = ours["BestR1"] if ours["Feasible"] else None
    rows = []
    try:
        relaxed = model.relaxed(1, None), model.relaxed(2, None)
    except ValueError:
        relaxed = None, None
    results = {}
    for solver in solvers:
        first, bound, took = getattr(model, solver)(1, None, seconds)
        results[solver] = [first, bound, None, None, took]
        if isinstance(first, float):
            best = min(best or np.inf, first)
    for solver, r in results.items():
        if r[0] != "none":
            r[2], r[3], took = getattr(model, solver)(2, 1.005 * best if best else None, seconds)
            r[4] += took
        rows.append((solver, *r))
    shown = [("ours", ours["BestR1"] if ours["Feasible"] else None, ours["BoundR1"],
              ours["S"] if ours["Feasible"] else None, ours["BoundS"], ours["Seconds"]),
             ("LP", None, relaxed[0], None, relaxed[1], 0.0), *rows]
    for name, r1, b1, s, bs, took in shown:
        print(f"| {path.stem} | {name} | {percent(r1, level)} | {percent(b1, level)} | {percent(s, mean_level)} "
              f"| {percent(bs, mean_level)} | {took:.2f} |", flush=True)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("cases", type=pathlib.Path)
    parser.add_argument("--seconds", type=float, default=60, help="limit per solver and problem")
    parser.add_argument("--only", default="", help="cases whose name starts so")
    parser.add_argument("--solvers", default="highs,cbc", help="of highs, cbc; empty for the LP alone")
    args = parser.parse_args()
    print("| case | solver | R1 % | R1 bound % | S % | S bound % | seconds |\n|---|---|---|---|---|---|---|")
    for path in sorted(args.cases.glob(args.only + "*.json")):
        compare(path, args.seconds, [s for s in args.solvers.split(",") if s])


if __name__ == "__main__":
    main()
