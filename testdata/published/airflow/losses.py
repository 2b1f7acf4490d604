"""Reference values of friction, pressure drop and fittings: losses.toml.

Run with Debian's python3-fluids (1.0.22 here): python3 losses.py > losses.toml
All numbers are coherent SI. The library's values for bends and miters are for
pipe fittings of other measurements, so they check the size of the tables only.
"""

import math

import fluids
from fluids.fittings import bend_miter, bend_rounded, change_K_basis, diffuser_sharp, entrance_sharp, exit_normal
from fluids.friction import Colebrook, friction_laminar, one_phase_dP

AREA = math.pi / 4


def table(name, columns, rows):
    print(f"\n[{name}]")
    print("columns = [" + ", ".join(f'"{c}"' for c in columns) + "]")
    print("rows = [")
    for row in rows:
        print("  [" + ", ".join(repr(float(x)) for x in row) + "],")
    print("]")


def friction():
    for exponent in range(0, 20):
        reynolds = 4000 * 10 ** (exponent / 4)
        for roughness in [0, 1e-6, 1e-5, 1e-4, 5e-4, 1e-3, 3e-3, 6e-3, 0.01, 0.02, 0.03, 0.05]:
            yield reynolds, roughness, Colebrook(reynolds, roughness, tol=1e-14)


def laminar():
    for reynolds in [0.01, 1, 10, 100, 500, 1000, 1500, 2000]:
        yield reynolds, friction_laminar(reynolds)


def drops():
    for density, viscosity in [(1.204, 1.813e-5), (0.978, 1.82e-5), (1.42, 1.6e-5)]:
        for diameter in [0.075, 0.1, 0.125, 0.15, 0.2, 0.25, 0.4]:
            for velocity in [1.2, 2.5, 4, 8, 15]:
                for roughness in [4.6e-5, 9e-5, 9e-4, 3e-3]:
                    flow = velocity * AREA * diameter**2
                    if density * velocity * diameter / viscosity < 4000:
                        continue
                    loss = one_phase_dP(m=density * flow, rho=density, mu=viscosity, D=diameter, roughness=roughness, L=10)
                    yield density, viscosity, diameter, flow, roughness, loss


def with_fittings():
    for coefficient in [0, 0.15, 0.22, 1.2, 3.4]:
        for velocity in [0.5, 2, 5, 12]:
            yield coefficient, velocity, 1.204, fluids.dP_from_K(coefficient, 1.204, velocity)


def equivalents():
    for factor in [0.015, 0.02, 0.03, 0.05]:
        for diameters in [5, 12, 30, 60]:
            yield factor, diameters, fluids.K_from_L_equiv(diameters, factor)


def enlargements():
    for before in [0.1, 0.125, 0.15]:
        for after in [0.15, 0.2, 0.3, 0.6]:
            coefficient = diffuser_sharp(Di1=before, Di2=after)
            yield before, after, coefficient, change_K_basis(coefficient, before, after)


def bends():
    """Rennels, without the friction of the bend's own length, which the tables leave out."""
    for angle in [45, 60, 90]:
        for radius in [0.5, 0.75, 1, 1.5, 2, 2.5]:
            factor = Colebrook(1e5, 0)
            whole = bend_rounded(Di=0.15, angle=angle, bend_diameters=radius, Re=1e5, roughness=0, method="Rennels")
            yield angle, radius, whole - factor * radius * math.radians(angle)


def miters():
    for angle in [20, 30, 45, 60, 75, 90]:
        yield angle, bend_miter(angle=angle, method="Rennels")


def airs():
    for elevation in [0, 250, 500, 1000, 1655, 2500, 4000]:
        air = fluids.ATMOSPHERE_1976(elevation)
        yield elevation, air.T, air.rho, air.mu


print(f"# Written by losses.py with python3-fluids {fluids.__version__}; do not edit.")
table("colebrook", ["reynolds", "roughness", "factor"], friction())
table("laminar", ["reynolds", "factor"], laminar())
table("drop", ["density", "viscosity", "diameter", "flow", "roughness", "loss_of_10_m"], drops())
table("fitting", ["coefficient", "velocity", "density", "loss"], with_fittings())
table("equivalent", ["factor", "diameters", "coefficient"], equivalents())
table("enlargement", ["before", "after", "coefficient", "on_velocity_after"], enlargements())
table("bend", ["angle", "radius", "coefficient"], bends())
table("miter", ["angle", "coefficient"], miters())
table("end", ["entry", "exit"], [(entrance_sharp(), exit_normal())])
table("air", ["elevation", "temperature", "density", "viscosity"], airs())
