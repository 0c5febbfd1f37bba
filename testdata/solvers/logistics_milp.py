#!/usr/bin/env python3
"""Solve the cases of logistics_cases again with general-purpose MILP solvers.

Needs python3-scipy (HiGHS) and coinor-cbc.

    go run ./testdata/solvers/logistics_cases > cases.json
    python3 testdata/solvers/logistics_milp.py cases.json [--cbc 100]

Whole packages: least cost, then least left over at that cost, then fewest packages.
Stops: for every unbeaten choice, the least cost with no load above its peak; and the
least peak at any cost. A solver that reports an optimum dearer than our plan (which
the Go tests check against the rules) is wrong itself, and counted apart.
"""
import argparse
import json
import pathlib
import subprocess
import tempfile
import time

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_array

UNLIMITED = 1 << 40
NONE = 1 << 60  # stands for "no solution" in comparisons


def whole(value):
    return NONE if value is None else round(value)


class Model:
    """Integer columns with bounds, rows lower <= a x <= upper."""

    def __init__(self):
        self.upper, self.rows = [], []

    def column(self, upper):
        self.upper.append(upper)
        return len(self.upper) - 1

    def row(self, terms, lower=-np.inf, upper=np.inf):
        self.rows.append((terms, lower, upper))

    def highs(self, cost, presolve=True):
        n = len(self.upper)
        data, at, col = [], [], []
        for i, (terms, _, _) in enumerate(self.rows):
            for j, a in terms.items():
                data.append(a)
                at.append(i)
                col.append(j)
        matrix = csr_array((data, (at, col)), shape=(len(self.rows), n))
        got = milp(np.array([cost.get(j, 0) for j in range(n)], float), integrality=np.ones(n),
                   bounds=Bounds(0, np.array(self.upper, float)),
                   constraints=LinearConstraint(matrix, [r[1] for r in self.rows], [r[2] for r in self.rows]),
                   options={"mip_rel_gap": 0, "presolve": presolve, "time_limit": 60})
        return got.fun if got.status == 0 else None

    def cbc(self, cost, preprocess=True):
        def side(terms):
            return " ".join(f"{'+' if a >= 0 else '-'} {abs(a)} x{j}" for j, a in terms.items())
        text = ["Minimize", " obj: " + (side(cost) or "0 x0"), "Subject To"]
        for i, (terms, low, high) in enumerate(self.rows):
            if low > -np.inf:
                text.append(f" l{i}: {side(terms)} >= {low}")
            if high < np.inf:
                text.append(f" u{i}: {side(terms)} <= {high}")
        text += ["Bounds"] + [f" 0 <= x{j} <= {u}" for j, u in enumerate(self.upper)]
        text += ["Generals", " " + "\n ".join(f"x{j}" for j in range(len(self.upper))), "End"]
        with tempfile.TemporaryDirectory() as folder:
            lp, sol = pathlib.Path(folder, "m.lp"), pathlib.Path(folder, "m.sol")
            lp.write_text("\n".join(text))
            subprocess.run(["cbc", str(lp), "preprocess", "sos" if preprocess else "off", "ratio", "0", "allow", "0",
                            "sec", "60", "solve", "solu", str(sol)],
                           capture_output=True, check=True)
            first = sol.read_text().splitlines()[0]
            if not first.startswith("Optimal"):
                return None
            return float(first.rsplit(None, 1)[-1])


def packages(item):
    """The model of one item: variables by (package, deadline) and their grams."""
    m, x = Model(), {}
    need, packs = item["NeedGrams"], item["Packages"] or []
    for p, pack in enumerate(packs):
        for k, offer in enumerate(pack["Offers"]):
            most = sum(need) // pack["NetGrams"] + 1
            x[p, k] = m.column(min(offer["Available"], most))
    for k in range(len(need)):
        first = 0 if item["Keeps"] else k
        m.row({x[p, j]: packs[p]["NetGrams"] for p in range(len(packs)) for j in range(first, k + 1)},
              lower=sum(need[first:k + 1]))
    cost = {x[p, k]: packs[p]["Offers"][k]["PriceCents"] for p, k in x}
    grams = {x[p, k]: packs[p]["NetGrams"] for p, k in x}
    return m, cost, grams


def compare_packages(cases, solve):
    same = worse = better = infeasible = 0
    spent = 0.0
    for case in cases:
        m, cost, grams = packages(case["Item"])
        began = time.time()
        least = solve(m, cost)
        spent += time.time() - began
        if case["Cost"] < 0 or least is None:
            infeasible += 1
            better += (case["Cost"] < 0) != (least is None)
            continue
        least = round(least)
        m.row(cost, upper=case["Cost"])
        bought = solve(m, grams)
        m.row(grams, upper=case["Left"] + sum(case["Item"]["NeedGrams"]))
        count = solve(m, {j: 1 for j in cost})
        theirs = (least, whole(bought) - sum(case["Item"]["NeedGrams"]), whole(count))
        ours = (case["Cost"], case["Left"], case["Packs"])
        same += theirs == ours
        worse += theirs > ours
        better += theirs < ours
    return same, worse, better, infeasible, spent


def route(p):
    """The carry-over model: each day's food from one place, in order."""
    m, food, days = Model(), p["FoodGrams"], len(p["FoodGrams"])
    places = [None] + sorted((pt for pt in p["Points"] or [] if 0 < pt["Day"] < days), key=lambda pt: pt["Day"])
    day = [0 if pt is None else pt["Day"] for pt in places]
    y = {(s, d): m.column(1) for s in range(len(places)) for d in range(day[s], days)}
    cost = {y[s, d]: p["CarryCents"] * food[d] * (d + 1 - day[s]) for s, d in y}
    for d in range(days):
        m.row({y[s, d]: 1 for s in range(len(places)) if (s, d) in y}, 1, 1)
        for s in range(1, len(places)):  # a later day comes from no earlier place
            if d + 1 < days:
                terms = {y[r, d + 1]: 1 for r in range(s) if (r, d + 1) in y}
                for r in range(s):
                    if (r, d) in y:
                        terms[y[r, d]] = terms.get(y[r, d], 0) - 1
                m.row(terms, upper=0)
    for s, pt in enumerate(places):
        if pt is None:
            continue
        own = [d for d in range(day[s], days)]
        use = m.column(1)
        cost[use] = 1000 * (pt["StopCents"] + pt["Detour"] * pt["DetourCents"])
        for d in own:
            m.row({use: 1, y[s, d]: -1}, lower=0)
            cost[y[s, d]] += pt["PremiumCents"] * food[d]
            if p["WholeLegs"]:  # a stop that is used supplies all days until the next
                for r in range(s):
                    m.row({use: 1, y[r, d]: 1}, upper=1)
        if pt["ParcelGrams"] < UNLIMITED:
            parcels = m.column(min(pt["Parcels"], 10_000))
            cost[parcels] = 1000 * pt["ParcelCents"]
            m.row({parcels: pt["ParcelGrams"], **{y[s, d]: -food[d] for d in own}}, lower=0)
        elif pt["ParcelCents"]:
            cost[use] += 1000 * pt["ParcelCents"]
    loads = []
    for morning in range(days):
        loads.append({y[s, d]: food[d] for s, d in y if d >= morning and day[s] <= morning})
        m.row(loads[-1], upper=min(p["RoomGrams"][morning], UNLIMITED))
    return m, cost, loads


def compare_stops(cases, solve):
    same = worse = better = infeasible = choices = 0
    spent = 0.0
    for case in cases:
        began = time.time()
        if not case["Front"]:
            m, cost, _ = route(case["Problem"])
            infeasible += 1
            better += solve(m, cost) is not None
            spent += time.time() - began
            continue
        for mine, peak in case["Front"]:
            m, cost, loads = route(case["Problem"])
            for load in loads:
                m.row(load, upper=peak)
            theirs = whole(solve(m, cost))
            choices += 1
            same += theirs == mine
            worse += theirs > mine
            better += theirs < mine
        m, cost, loads = route(case["Problem"])
        least = min(peak for _, peak in case["Front"])
        for load in loads:
            m.row(load, upper=least - 1)
        better += solve(m, cost) is not None
        spent += time.time() - began
    return same, worse, better, infeasible, choices, spent


def basket(case):
    """The model of one basket: packages below and from the number of the price by the many, visits."""
    m, cost = Model(), {}
    shops = case["Shops"]
    visit = [m.column(1) for _ in shops]
    spent = [{} for _ in shops]
    for s, shop in enumerate(shops):
        cost[visit[s]] = shop["VisitCents"][0]
    for item in case["Items"]:
        need, grams = item["NeedGrams"][0], {}
        for pack in item["Packages"]:
            offer, s = pack["Offers"][0], pack["Shop"]
            # a least order may be reached by buying more than is needed
            most = need // pack["NetGrams"] + 1 + max(shops[s]["LeastCents"][0] // max(1, offer["PriceCents"] // 2), offer["ManyFrom"])
            most = min(offer["Available"], most)
            # who buys so many pays the price by the many, even short of a least order
            few = m.column(min(most, offer["ManyFrom"] - 1) if offer["ManyFrom"] > 0 else most)
            columns = {few: offer["PriceCents"]}
            if offer["ManyFrom"] > 0:
                many, from_on = m.column(most), m.column(1)
                columns[many] = offer["ManyCents"]
                m.row({few: 1, from_on: most}, upper=most)
                m.row({many: 1, from_on: -most}, upper=0)
                m.row({many: 1, from_on: -offer["ManyFrom"]}, lower=0)
            for j, price in columns.items():
                cost[j] = price
                spent[s][j] = price
                grams[j] = pack["NetGrams"]
                m.row({j: 1, visit[s]: -most}, upper=0)
        m.row(grams, lower=need)
    for s, shop in enumerate(shops):
        if shop["LeastCents"][0] > 0:
            m.row({**spent[s], visit[s]: -shop["LeastCents"][0]}, lower=0)
    return m, cost


def compare_baskets(cases, solve):
    same = worse = better = infeasible = 0
    spent = 0.0
    for case in cases:
        m, cost = basket(case["Basket"])
        began = time.time()
        least = solve(m, cost)
        spent += time.time() - began
        if case["Cost"] < 0 or least is None:
            infeasible += 1
            if (case["Cost"] < 0) != (least is None):
                print("only one of the two found an answer:", case["Cost"], least)
        elif round(least) == case["Cost"]:
            same += 1
        elif round(least) > case["Cost"]:
            worse += 1
        else:
            better += 1
            print("better:", round(least), "proven" if case["Proven"] else "best found", case["Cost"])
    return same, worse, better, infeasible, spent


def main():
    args = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    args.add_argument("cases", type=pathlib.Path)
    args.add_argument("--cbc", type=int, default=100, help="how many cases of each kind CBC also solves")
    options = args.parse_args()
    cases = json.loads(options.cases.read_text())
    solvers = [("HiGHS", Model.highs, None),
               ("HiGHS, no presolve", lambda m, c: m.highs(c, presolve=False), None),
               ("CBC", Model.cbc, options.cbc),
               ("CBC, no preprocessing", lambda m, c: m.cbc(c, preprocess=False), options.cbc)]
    print("| solver | problem | same | solver worse | solver better | infeasible, both | seconds |")
    print("|---|---|---|---|---|---|---|")
    for name, solve, most in solvers:
        same, worse, better, none, spent = compare_packages(cases["Packs"][:most], solve)
        print(f"| {name} | packages | {same} | {worse} | {better} | {none} | {spent:.1f} |", flush=True)
    for name, solve, most in solvers:
        same, worse, better, none, spent = compare_baskets(cases["Baskets"][:most and most // 4], solve)
        print(f"| {name} | baskets | {same} | {worse} | {better} | {none} | {spent:.1f} |", flush=True)
    for name, solve, most in solvers[:2]:
        same, worse, better, none, spent = compare_baskets(cases["Larges"], solve)
        print(f"| {name} | large baskets | {same} | {worse} | {better} | {none} | {spent:.1f} |", flush=True)
    for name, solve, most in solvers:
        most = most and most // 5
        same, worse, better, none, choices, spent = compare_stops(cases["Stops"][:most], solve)
        print(f"| {name} | stops ({choices} choices) | {same} | {worse} | {better} | {none} | {spent:.1f} |", flush=True)


if __name__ == "__main__":
    main()
