"""Reference distances on the plan, made with shapely (GEOS): flat.json.

Run with python3-shapely 1.8 or later: python3 flat.py > flat.json
Points, lines and areas are exact in shapely. A disc is a point there, and the
distance from its edge is the distance from its centre less its radius, never
below zero. All lengths are in metres.
"""

import json
import math
import random

from shapely.geometry import LineString, Point, Polygon


def star(rng, centre, reach):
    """A simple outline, hollow or not, around its centre."""
    n = rng.randint(3, 12)
    corners = []
    for i in range(n):
        turn = 2 * math.pi * i / n
        r = rng.uniform(0.2, 1.0) * reach
        corners.append([centre[0] + r * math.cos(turn), centre[1] + r * math.sin(turn)])
    return corners


def random_thing(rng):
    centre = [rng.uniform(-20, 20), rng.uniform(-20, 20)]
    kind = rng.choice(["point", "disc", "rectangle", "along", "outline"])
    if kind == "point":
        return {"at": centre}
    if kind == "disc":
        return {"at": centre, "diameter": rng.uniform(0.1, 8)}
    if kind == "rectangle":
        return {"at": centre, "width": rng.uniform(0.1, 8), "height": rng.uniform(0.1, 8)}
    if kind == "along":
        n = rng.randint(2, 6)
        return {"along": [[centre[0] + rng.uniform(-9, 9), centre[1] + rng.uniform(-9, 9)] for _ in range(n)]}
    return {"outline": star(rng, centre, 12)}


def shape(thing):
    """The shapely shape, and what its edge adds to it."""
    if "outline" in thing:
        return Polygon(thing["outline"]), 0.0
    if "along" in thing:
        return LineString(thing["along"]), 0.0
    x, y = thing["at"]
    if "width" in thing:
        w, h = thing["width"] / 2, thing["height"] / 2
        return Polygon([(x - w, y - h), (x + w, y - h), (x + w, y + h), (x - w, y + h)]), 0.0
    return Point(x, y), thing.get("diameter", 0.0) / 2


def distance(a, b):
    first, edge = shape(a)
    second, other_edge = shape(b)
    return max(0.0, first.distance(second) - edge - other_edge)


def main():
    rng = random.Random(20260101)
    cases = []
    for _ in range(300):
        a, b = random_thing(rng), random_thing(rng)
        cases.append({"a": a, "b": b, "distance": distance(a, b)})
    lines = ",\n".join(json.dumps(c) for c in cases)
    print('{"source": "shapely, by flat.py", "cases": [\n' + lines + "\n]}")


main()
