"""Reference lengths of strings around footprints, made with shapely: around.json.

Run with python3-shapely 1.8 or later: python3 around.py > around.json
The walls are taken as endlessly high, so that a string keeps to the plan: it is
the shortest way in the graph of all corners and both ends that see each other,
as long as the plan tells one way and as high as it climbs the other. What is not
a point is tried at many places along it, which can only be too long, by the square
of the spacing. All lengths are in metres; a footprint runs counter-clockwise.
"""

import heapq
import json
import math
import random

from shapely.geometry import LineString, Point, Polygon
from shapely.prepared import prep

TINY = 1e-7  # what a string may cut into the footprint, for the sake of rounding


def star(rng):
    n = rng.randint(3, 11)
    corners = []
    for i in range(n):
        turn = 2 * math.pi * (i + rng.uniform(-0.3, 0.3)) / n
        r = rng.uniform(3, 12)
        corners.append([r * math.cos(turn), r * math.sin(turn)])
    return corners


def stairs(rng):
    """Walls at right angles: an L, a U, a T, or a row of them."""
    corners = [[0.0, 0.0], [12.0, 0.0]]
    x = 12.0
    for _ in range(rng.randint(1, 4)):
        y = rng.uniform(2, 12)
        corners.append([x, y])
        x -= rng.uniform(2, 2.9)
        corners.append([x, y])
    y = rng.uniform(2, 12)
    return corners + [[x, y], [0.0, y]]


def sees(shrunk, a, b):
    return a == b or not shrunk.intersects(LineString([a, b]))


def way(corners, shrunk, starts, goals):
    """The shortest way from one of some points to one of others."""
    nodes = [tuple(c) for c in corners]
    links = {i: [] for i in range(len(nodes))}
    for i in range(len(nodes)):
        for k in range(i):
            if sees(shrunk, nodes[i], nodes[k]):
                d = math.dist(nodes[i], nodes[k])
                links[i].append((k, d))
                links[k].append((i, d))
    best = min([math.dist(a, b) for a in starts for b in goals if sees(shrunk, a, b)], default=math.inf)
    first = [min([math.dist(a, n) for a in starts if sees(shrunk, a, n)], default=math.inf) for n in nodes]
    last = [min([math.dist(b, n) for b in goals if sees(shrunk, b, n)], default=math.inf) for n in nodes]
    queue = [(d, i) for i, d in enumerate(first) if d < math.inf]
    heapq.heapify(queue)
    done = set()
    while queue:
        d, i = heapq.heappop(queue)
        if i in done:
            continue
        done.add(i)
        best = min(best, d + last[i])
        for k, step in links[i]:
            heapq.heappush(queue, (d + step, k))
    return best


def on_wall(rng, corners):
    i = rng.randrange(len(corners))
    a, b = corners[i], corners[(i + 1) % len(corners)]
    length = math.dist(a, b)
    width = rng.choice([0.0, rng.uniform(0, 0.6) * min(length, 2)])
    left = rng.uniform(width / 2, length - width / 2)
    z, height = rng.uniform(0, 5), rng.choice([0.0, rng.uniform(0.1, 1)])
    n = 1 if width == 0 else 41
    places = []
    for k in range(n):
        t = (left + (width * (k / (n - 1) - 0.5) if n > 1 else 0)) / length
        places.append((a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])))
    return {"wall": i, "from_left": left, "level": z, "width": width, "height": height}, places, z, height


def on_ground(rng, poly):
    while True:
        p = (rng.uniform(-15, 15), rng.uniform(-15, 15))
        if not poly.buffer(0.1).contains(Point(p)):
            z = rng.uniform(-1, 6)
            return {"at": list(p), "level": z}, [p], z, 0.0


def lot_line(rng):
    turn, far = rng.uniform(0, 2 * math.pi), rng.uniform(13, 18)
    c = (far * math.cos(turn), far * math.sin(turn))
    way = (-9 * math.sin(turn), 9 * math.cos(turn))
    a, b = (c[0] - way[0], c[1] - way[1]), (c[0] + way[0], c[1] + way[1])
    n = 2001
    places = [(a[0] + (b[0] - a[0]) * i / (n - 1), a[1] + (b[1] - a[1]) * i / (n - 1)) for i in range(n)]
    return {"from": list(a), "to": list(b)}, places, None, None


def main():
    rng = random.Random(20260201)
    cases = []
    while len(cases) < 250:
        corners = rng.choice([star, stairs])(rng)
        poly = Polygon(corners)
        if not poly.is_valid or min(math.dist(a, b) for a, b in zip(corners, corners[1:] + corners[:1])) < 0.3:
            continue
        shrunk = prep(poly.buffer(-TINY, join_style=2))
        a, from_, za, ha = on_wall(rng, corners)
        kind = rng.random()
        b, to, zb, hb = on_wall(rng, corners) if kind < 0.6 else on_ground(rng, poly) if kind < 0.85 else lot_line(rng)
        plan = way(corners, shrunk, from_, to)
        climb = 0.0 if zb is None else max(0.0, abs(za - zb) - (ha + hb) / 2)
        cases.append({"corners": corners, "a": a, "b": b, "string": math.hypot(plan, climb)})
    lines = ",\n".join(json.dumps(c) for c in cases)
    print('{"source": "shapely, by around.py", "cases": [\n' + lines + "\n]}")


main()
