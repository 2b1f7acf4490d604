#!/usr/bin/python3
# Flows of trees without balancing dampers, solved as one system of equations by
# scipy's general root finder (Debian package python3-scipy); every path from the fan
# loses the same pressure. Writes network.json beside this file.
import json, math, pathlib, random
import scipy
from scipy.optimize import brentq, fsolve

rho, mu = 1.204, 1.204e-3 / 66.4

def factor(re, rel):
    if re <= 0: return 0.0
    cole = lambda re: brentq(lambda x: x + 2 * math.log10(rel / 3.7 + 2.51 * x / re), 0.1, 60, xtol=1e-14) ** -2
    if re <= 2300: return 64 / re
    if re >= 4000: return cole(re)
    s = (re - 2300) / 1700
    return 64 / 2300 * (1 - s) + cole(4000) * s

def loss(sec, q):
    d, length, eps, c = sec
    v = q / (math.pi * d * d / 4)
    f = factor(rho * v * d / mu, eps / d)
    return (f * length / d + c) * rho * v * v / 2

random.seed(7)
cases = []
for _ in range(12):
    trunk = (round(random.uniform(0.12, 0.2), 3), round(random.uniform(1, 8), 2), 0.09e-3, round(random.uniform(0, 1), 2))
    arms = [(round(random.uniform(0.09, 0.13), 3), round(random.uniform(2, 15), 2), random.choice([0.09e-3, 0.9e-3]), round(random.uniform(0.5, 3), 2))
            for _ in range(random.randint(2, 4))]
    p = round(random.uniform(20, 150), 1)
    def residual(x):
        q = [abs(v) / 100 for v in x]
        t = loss(trunk, sum(q))
        return [t + loss(a, qi) - p for a, qi in zip(arms, q)]
    x, info, ok, msg = fsolve(residual, [2.0] * len(arms), xtol=1e-13, full_output=True)
    assert ok == 1 or max(abs(r) for r in info["fvec"]) < 1e-8, msg
    cases.append({"pressure_pa": p, "trunk": trunk, "arms": arms, "flows_m3_s": [abs(v) / 100 for v in x]})
out = {"source": "python3-scipy " + scipy.__version__ + ", fsolve and brentq", "section": "diameter m, length m, roughness m, loss coefficient", "cases": cases}
pathlib.Path(__file__).with_name("network.json").write_text(json.dumps(out, indent=1) + "\n")
