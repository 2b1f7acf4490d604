"""Reference lengths of strings over roof edges, made with scipy: over_roof.json.

Run with python3-scipy 1.10 and python3-shapely 1.8 or later:
python3 over_roof.py > over_roof.json
The building is its footprint up to the lowest wall top, and each wall as a plate
up to its own top. A string bends only at upright edges at corners and at the tops
of walls. Both are sampled, all pairs of samples that see each other in space are
linked, and the shortest chain is found; then its places are moved along their
edges by SLSQP until its length is least. A chain of the sample that is almost as
short as the shortest counts as well, by its own edges. Ends are points. All
lengths are in metres; a footprint runs counter-clockwise from its first corner.
"""

import json
import math
import random

import numpy as np
from scipy.optimize import minimize
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra
from shapely.geometry import LineString, Point, Polygon
from shapely.prepared import prep

TINY = 1e-7
PER_WALL, PER_CORNER = 24, 16


class House:
    def __init__(self, corners, tops):
        self.corners, self.tops, self.low = corners, tops, min(tops)
        self.poly = Polygon(corners)
        self.shrunk = self.poly.buffer(-TINY, join_style=2)
        self.prepared = prep(self.shrunk)
        n = len(corners)
        self.walls = [LineString([corners[i], corners[(i + 1) % n]]) for i in range(n)]
        self.edges = []  # two ends in space each
        for i in range(n):
            a, b = corners[i], corners[(i + 1) % n]
            self.edges.append((np.array([*a, tops[i]]), np.array([*b, tops[i]])))
        for i in range(n):
            self.edges.append((np.array([*corners[i], -2.0]), np.array([*corners[i], max(tops[i - 1], tops[i])])))

    def stops(self, p, q):
        """Whether the building stands between two points in space."""
        line = LineString([p[:2], q[:2]])
        if line.length < 1e-9 or not self.prepared.intersects(line):
            return False
        inside = line.intersection(self.shrunk)
        for part in getattr(inside, "geoms", [inside]):
            if part.geom_type != "LineString":
                continue
            for c in (part.coords[0], part.coords[-1]):
                t = line.project(Point(c)) / line.length
                z = p[2] + t * (q[2] - p[2])
                need = [self.tops[i] for i, w in enumerate(self.walls) if w.distance(Point(c)) < 5 * TINY]
                if z < max(self.low, min(need, default=self.low)) - 1e-6:
                    return True
        return False

    def string(self, a, b):
        if not self.stops(a, b):
            return math.dist(a, b)
        nodes, on = [np.array(a), np.array(b)], [None, None]
        for k, (p, q) in enumerate(self.edges):
            n = PER_WALL if k < len(self.corners) else PER_CORNER
            for i in range(n + 1):
                nodes.append(p + (q - p) * i / n)
                on.append(k)
        points = np.array(nodes)
        rows, cols, lengths = [], [], []
        for i in range(len(nodes)):
            for k in range(i):
                if not self.stops(points[i], points[k]):
                    rows.append(i)
                    cols.append(k)
                    lengths.append(max(1e-12, float(np.linalg.norm(points[i] - points[k]))))
        graph = csr_matrix((lengths, (rows, cols)), (len(nodes), len(nodes)))
        from_a = dijkstra(graph, directed=False, indices=0, return_predecessors=True)
        from_b = dijkstra(graph, directed=False, indices=1, return_predecessors=True)
        best = math.inf
        tried = set()
        # chains by way of each sample, the shortest first
        for via in np.argsort(from_a[0] + from_b[0]):
            whole = from_a[0][via] + from_b[0][via]
            if whole > from_a[0][1] + 0.3 or len(tried) > 12:
                break
            edges = self.chain(on, from_a[1], via)[::-1] + self.chain(on, from_b[1], via)[1:]
            edges = tuple(e for i, e in enumerate(edges) if e is not None and (i == 0 or edges[i - 1] != e))
            if edges and edges not in tried:
                tried.add(edges)
                best = min(best, self.tightened(np.array(a), np.array(b), edges))
        return best

    @staticmethod
    def chain(on, before, at):
        list_ = []
        while at >= 0:
            list_.append(on[at])
            at = before[at]
        return list_

    def tightened(self, a, b, edges):
        """The least length of a string that touches some edges in order."""
        starts = np.array([self.edges[e][0] for e in edges])
        ways = np.array([self.edges[e][1] - self.edges[e][0] for e in edges])

        def places(t):
            return np.vstack([a, starts + ways * t[:, None], b])

        def length(t):
            steps = np.diff(places(t), axis=0)
            norms = np.sqrt((steps**2).sum(axis=1) + 1e-24)
            units = steps / norms[:, None]
            return norms.sum(), ((units[:-1] - units[1:]) * ways).sum(axis=1)

        best, at = math.inf, None
        for start in (0.5, 0.2, 0.8):
            found = minimize(length, np.full(len(edges), start), jac=True, bounds=[(0, 1)] * len(edges),
                             method="SLSQP", options={"ftol": 1e-15, "maxiter": 2000})
            if found.fun < best:
                best, at = found.fun, places(found.x)
        clear = all(not self.stops(p, q) for p, q in zip(at, at[1:]))
        return best if clear else math.inf


def box(rng):
    x, y = rng.uniform(4, 12), rng.uniform(4, 12)
    return [[0.0, 0.0], [x, 0.0], [x, y], [0.0, y]]


def ell(rng):
    x, y, u, v = rng.uniform(7, 12), rng.uniform(7, 12), rng.uniform(3, 5), rng.uniform(3, 5)
    return [[0.0, 0.0], [x, 0.0], [x, v], [u, v], [u, y], [0.0, y]]


def slanted(rng):
    while True:
        corners = [[rng.uniform(5, 8) * math.cos(t), rng.uniform(4, 6) * math.sin(t)] for t in (0.2, 1.4, 2.6, 3.9, 5.2)]
        poly = Polygon(corners)
        if poly.convex_hull.area - poly.area < 1e-9:
            return corners


def end(rng, house):
    if rng.random() < 0.3:
        while True:
            minx, miny, maxx, maxy = house.poly.bounds
            p = (rng.uniform(minx, maxx), rng.uniform(miny, maxy))
            if house.poly.buffer(-0.2).contains(Point(p)):
                z = house.low + rng.choice([0.0, rng.uniform(0, 2)])
                return {"roof": True, "at": list(p), "level": z}, (*p, z)
    if rng.random() < 0.15:
        while True:
            p = (rng.uniform(-4, 15), rng.uniform(-4, 15))
            if not house.poly.buffer(0.1).contains(Point(p)):
                z = rng.uniform(-0.5, house.low)
                return {"at": list(p), "level": z}, (*p, z)
    i = rng.randrange(len(house.corners))
    w = house.walls[i]
    left = rng.uniform(0.1, 0.9) * w.length
    z = rng.uniform(0.2, house.tops[i] - 0.05)
    c = w.interpolate(left)
    return {"wall": i, "from_left": left, "level": z}, (c.x, c.y, z)


def main():
    rng = random.Random(20260202)
    cases = []
    while len(cases) < 60:
        kind = rng.choice([box, box, ell, slanted])
        corners = kind(rng)
        top = rng.uniform(2.2, 4)
        tops = [top] * len(corners)
        if kind is not ell and rng.random() < 0.5:
            tops = [rng.uniform(2.2, 6) for _ in corners]
        house = House(corners, tops)
        a, p = end(rng, house)
        b, q = end(rng, house)
        if not house.stops(p, q) or a.get("roof") and b.get("roof"):
            continue
        cases.append({"corners": corners, "tops": tops, "a": a, "b": b, "string": house.string(p, q)})
    lines = ",\n".join(json.dumps(c) for c in cases)
    print('{"source": "scipy and shapely, by over_roof.py", "cases": [\n' + lines + "\n]}")


main()
