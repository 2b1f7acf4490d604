#!/usr/bin/python3
# Friction factors and pressure gradients on a grid, by the Colebrook solver of the
# general-purpose library "fluids" (Debian package python3-fluids). Writes
# friction.json beside this file.
import json, math, pathlib
import fluids
from fluids.friction import Colebrook

cases = []
rho, mu = 1.204, 1.204e-3 / 66.4
for d in (0.100, 0.125, 0.150, 0.203, 0.400):
    for eps in (0.046e-3, 0.09e-3, 0.9e-3):
        for v in (0.7, 1.5, 3.0, 5.0, 9.0):
            re = rho * v * d / mu
            if re < 4000:
                continue
            f = Colebrook(re, eps / d)
            cases.append({"diameter_m": d, "roughness_m": eps, "velocity_m_s": v, "reynolds": re,
                          "factor": f, "gradient_pa_m": f / d * rho * v * v / 2})
out = {"source": "python3-fluids " + fluids.__version__ + ", Colebrook", "density": rho, "viscosity": mu, "cases": cases}
pathlib.Path(__file__).with_name("friction.json").write_text(json.dumps(out, indent=1) + "\n")
