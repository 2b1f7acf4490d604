"""Reference distances in space, made with scipy and by sampling: space.json.

Run with python3-scipy 1.10 or later: python3 space.py > space.json
Each piece is a map from a few bounded parameters to points. The square of the
distance is minimised over the parameters of both pieces by SLSQP, from several
starts, and must agree with the least distance of a dense sample. All lengths
are in metres; a disc has a centre, a normal of any length and a radius; a
rectangle has a centre and two half sides square to each other.
"""

import json
import random

import numpy as np
from scipy.optimize import minimize


def unit(v):
    return v / np.linalg.norm(v)


def square_to(n):
    return unit(np.cross(n, [1.0, 0, 0] if abs(unit(n)[0]) < 0.9 else [0, 1.0, 0]))


class Disc:
    def __init__(self, d):
        n = unit(np.array(d["normal"]))
        self.centre, self.radius = np.array(d["centre"]), d["radius"]
        self.u = square_to(n)
        self.v = np.cross(n, self.u)

    bounds = [(-1, 1), (-1, 1)]

    def at(self, p):
        return self.centre + self.radius * (p[0] * self.u + p[1] * self.v)

    def inside(self, p):
        return 1 - p[0] ** 2 - p[1] ** 2

    def sample(self, n):
        r, t = np.meshgrid(np.sqrt(np.linspace(0, 1, n)), np.linspace(0, 2 * np.pi, 4 * n))
        x, y = (r * np.cos(t)).ravel(), (r * np.sin(t)).ravel()
        return self.centre + self.radius * (np.outer(x, self.u) + np.outer(y, self.v))


class Rectangle:
    def __init__(self, d):
        self.centre = np.array(d["centre"])
        self.u, self.v = np.array(d["across"]), np.array(d["along"])

    bounds = [(-1, 1), (-1, 1)]

    def at(self, p):
        return self.centre + p[0] * self.u + p[1] * self.v

    def inside(self, p):
        return 1.0

    def sample(self, n):
        x, y = np.meshgrid(np.linspace(-1, 1, 2 * n), np.linspace(-1, 1, 2 * n))
        return self.centre + np.outer(x.ravel(), self.u) + np.outer(y.ravel(), self.v)


class Segment:
    def __init__(self, d):
        self.a, self.b = np.array(d["from"]), np.array(d["to"])

    bounds = [(0, 1), (0, 0)]

    def at(self, p):
        return self.a + p[0] * (self.b - self.a)

    def inside(self, p):
        return 1.0

    def sample(self, n):
        return self.a + np.outer(np.linspace(0, 1, 4 * n * n), self.b - self.a)


KINDS = {"disc": Disc, "rectangle": Rectangle, "segment": Segment}


def piece(d):
    return KINDS[d["kind"]](d)


def sampled(a, b, n=24):
    first, second = a.sample(n), b.sample(n)
    best = np.inf
    for p in first:
        best = min(best, np.sqrt(((second - p) ** 2).sum(axis=1)).min())
    return best


def minimised(a, b, rng):
    def square(p):
        d = a.at(p[:2]) - b.at(p[2:])
        return float(d @ d)

    limits = [
        {"type": "ineq", "fun": lambda p: a.inside(p[:2])},
        {"type": "ineq", "fun": lambda p: b.inside(p[2:])},
    ]
    best = np.inf
    for _ in range(6):
        start = [rng.uniform(low / 2, high / 2) for low, high in a.bounds + b.bounds]
        found = minimize(square, start, bounds=a.bounds + b.bounds, constraints=limits, method="SLSQP",
                         options={"ftol": 1e-15, "maxiter": 1000})
        p = found.x
        if min(a.inside(p[:2]), b.inside(p[2:])) > -1e-9:
            best = min(best, np.sqrt(max(0.0, found.fun)))
    return best


def random_piece(rng):
    def point(span):
        return [rng.uniform(-span, span) for _ in range(3)]

    kind = rng.choice(["disc", "disc", "rectangle", "segment"])
    if kind == "disc":
        return {"kind": kind, "centre": point(4), "normal": point(1), "radius": rng.uniform(0.05, 2)}
    if kind == "segment":
        return {"kind": kind, "from": point(4), "to": point(4)}
    across = unit(np.array(point(1)))
    along = square_to(across)
    return {"kind": kind, "centre": point(4), "across": list(across * rng.uniform(0.05, 2)),
            "along": list(along * rng.uniform(0.05, 2))}


def main():
    rng = random.Random(20260102)
    cases = []
    while len(cases) < 150:
        a, b = random_piece(rng), random_piece(rng)
        first, second = piece(a), piece(b)
        found, coarse = minimised(first, second, rng), sampled(first, second)
        assert found <= coarse + 1e-6 and coarse - found < 0.35, (a, b, found, coarse)
        if found > 1e-3:  # near zero the square has no slope left to follow
            cases.append({"a": a, "b": b, "distance": found, "sampled": coarse})
    lines = ",\n".join(json.dumps(c) for c in cases)
    print('{"source": "scipy SLSQP and sampling, by space.py", "cases": [\n' + lines + "\n]}")


main()
