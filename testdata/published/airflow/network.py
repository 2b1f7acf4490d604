"""Reference flows of duct networks: network.toml.

Run with Debian's python3-scipy and python3-fluids (1.10.1 and 1.0.22 here):
python3 network.py > network.toml

A network is a tree of round ducts with coefficients and stated losses. The
unknowns are the flows of all runs and the pressures of all junctions; the
equations are continuity and the loss of each run, solved by fsolve (a hybrid
Powell method) with the library's own friction factor. That is another
formulation and another solver than the program's. Only networks are kept whose
runs are all turbulent, since the two treat transition differently. SI.
"""

import math
import random

import fluids
import scipy
from fluids.friction import Colebrook
from scipy.optimize import brentq, fsolve

DENSITY, VISCOSITY = 1.204, 1.813e-5


class Run:
    def __init__(self, rng, number, parent, diameter, end):
        self.number, self.parent, self.diameter, self.end = number, parent, diameter, end
        self.length = round(rng.uniform(0.5, 15), 2)
        self.roughness = rng.choice([4.6e-5, 9e-5, 9e-4])
        self.coefficient = round(rng.uniform(0, 3), 2)
        self.stated = round(rng.uniform(2, 30), 1) if end else 0.0  # Pa
        self.stated_at = round(rng.uniform(0.01, 0.03), 4) if end else 0.0  # m3/s
        self.exponent = rng.choice([2.0, 2.0, 1.5, 1.0]) if end else 2.0

    def reynolds(self, flow):
        return 4 * DENSITY * abs(flow) / (math.pi * self.diameter * VISCOSITY)

    def loss(self, flow):
        if flow == 0:
            return 0.0
        velocity = 4 * abs(flow) / (math.pi * self.diameter**2)
        factor = Colebrook(max(self.reynolds(flow), 10), self.roughness / self.diameter, tol=1e-13)
        duct = (factor * self.length / self.diameter + self.coefficient) * DENSITY * velocity**2 / 2
        stated = self.stated * (abs(flow) / self.stated_at) ** self.exponent if self.end else 0.0
        return math.copysign(duct + stated, flow)


def grow(rng):
    """A tree of 2 to 14 runs; ends get smaller ducts."""
    runs = []

    def branch(parent, depth):
        end = depth == 0 or (parent is not None and rng.random() < 0.5)
        sizes = [0.1, 0.125] if end else [0.15, 0.2]
        runs.append(Run(rng, len(runs), parent, rng.choice(sizes), end))
        here = len(runs) - 1
        if not end:
            for _ in range(rng.randint(2, 3)):
                branch(here, depth - 1)

    branch(None, rng.randint(1, 3))
    return runs


def equations(runs, total):
    """Residuals of continuity and pressure at x = flows, then pressures at the far end of inner runs."""
    inner = [r.number for r in runs if not r.end]
    place = {number: len(runs) + i for i, number in enumerate(inner)}
    children = {number: [r.number for r in runs if r.parent == number] for number in inner}

    def residuals(x):
        out = [x[0] - total]
        out += [50 * (x[n] - sum(x[c] for c in children[n])) for n in inner]
        for r in runs:
            if r.parent is None:
                continue
            beyond = 0.0 if r.end else x[place[r.number]]
            out.append((x[place[r.parent]] - beyond - r.loss(x[r.number])) / 100)
        return out

    return residuals, children


def solve(runs, total):
    residuals, children = equations(runs, total)
    start = [0.0] * len(runs)
    for r in runs:
        start[r.number] = total if r.parent is None else start[r.parent] / len(children[r.parent])
    pressures = [20.0 for r in runs if not r.end]
    x, _, ok, _ = fsolve(residuals, start + pressures, full_output=True, xtol=1e-13, maxfev=20000)
    worst = max(abs(v) for v in residuals(x))
    if ok != 1 and worst > 1e-9 or worst > 1e-8:
        return None
    return list(x[: len(runs)]), runs[0].loss(x[0]) + x[len(runs)]


def meet(runs, curve):
    """The flow at which the fan's straight lines meet the system."""

    def fan(flow):
        for (q0, p0), (q1, p1) in zip(curve, curve[1:]):
            if flow <= q1:
                return p0 + (p1 - p0) * (flow - q0) / (q1 - q0)
        return 0.0

    def missing(flow):
        found = solve(runs, flow)
        if found is None:
            raise ArithmeticError("no solution")
        return found[1] - fan(flow)

    return brentq(missing, 0.02, curve[-1][0], xtol=1e-12, rtol=1e-12)


def numbers(values):
    return "[" + ", ".join(repr(float(v)) for v in values) + "]"


def write(runs, total, flows, pressure, curve, operating):
    print("\n[[network]]")
    print(f"total = {total!r}\npressure = {float(pressure)!r}")
    print(f"fan_flow = {numbers(q for q, _ in curve)}\nfan_pressure = {numbers(p for _, p in curve)}\noperating = {float(operating)!r}")
    print("# parent, diameter, length, roughness, coefficient, stated loss, at flow, exponent, flow found")
    print("runs = [")
    for r, flow in zip(runs, flows):
        parent = -1 if r.parent is None else r.parent
        print("  " + numbers([parent, r.diameter, r.length, r.roughness, r.coefficient, r.stated, r.stated_at, r.exponent, flow]) + ",")
    print("]")


def main():
    rng = random.Random(20)
    print(f"# Written by network.py with scipy {scipy.__version__} and fluids {fluids.__version__}; do not edit. SI.")
    kept = 0
    while kept < 40:
        runs = grow(rng)
        ends = sum(r.end for r in runs)
        if ends < 2 or len(runs) > 14:
            continue
        total = round(rng.uniform(0.012, 0.025) * ends, 4)
        found = solve(runs, total)
        if found is None or min(r.reynolds(q) for r, q in zip(runs, found[0])) < 4500:
            continue
        flows, pressure = found
        curve = [(0.0, 2.2 * pressure), (0.8 * total, 1.5 * pressure), (1.2 * total, 0.7 * pressure), (1.8 * total, 0.0)]
        try:
            operating = meet(runs, curve)
        except (ArithmeticError, ValueError):
            continue
        at_point = solve(runs, operating)
        if at_point is None or min(r.reynolds(q) for r, q in zip(runs, at_point[0])) < 4500:
            continue
        write(runs, total, flows, pressure, curve, operating)
        kept += 1


main()
