"""Write ok/alder-court-si.vent.toml: the house of ok/alder-court.vent.toml with
every quantity in SI units.

Run it in this folder after a change of that file. The sizes of the units are
those that define them: the international foot and pound (1959), the Btu of the
International Steam Table, and the inch of water of 1000 kg/m3 under standard
gravity. Fractions keep the products exact; what does not end is cut after twelve
digits.
"""
import re
from fractions import Fraction as F

FOOT = F("0.3048")
INCH = FOOT / 12
GRAVITY = F("9.80665")
POUND = F("0.45359237")
BTU = F("1055.05585262")

# IP unit: SI unit and the number of SI units in one IP unit
UNITS = {
    "ft2": ("m2", FOOT**2),
    "in2": ("cm2", INCH**2 * 10000),
    "ft3": ("m3", FOOT**3),
    "cfm": ("L/s", FOOT**3 / 60 * 1000),
    "inwc": ("Pa", INCH * 1000 * GRAVITY),
    "psi": ("kPa", POUND * GRAVITY / INCH**2 / 1000),
    "Btu/h": ("kW", BTU / 3600 / 1000),
    "in/ft": ("mm/m", INCH / FOOT * 1000),
}
SAME = {"ACH", "%", "W", "sone", "d", "min"}
NUMBER = r"-?[0-9.]+(?:/[0-9]+)?"

HEAD = """\
#:schema ../../../rules/schema/design.schema.json
# House at Alder Court in SI units, all of it invented: alder-court.vent.toml with
# every quantity turned exactly into SI. It must get the same outcomes.
"""


def digits(x):
    """x as a decimal of twelve digits, less the zeros at its end."""
    text = f"{float(x):.{12 - len(str(int(abs(x))))}f}"
    return text.rstrip("0").rstrip(".")


def length(metres):
    if abs(metres) >= 3:
        return digits(metres) + " m"
    return digits(metres * 1000) + " mm"


def convert(text):
    """The quantity in SI; None when the text is not a quantity."""
    if m := re.fullmatch(rf"(?:({NUMBER}) ft)? ?(?:({NUMBER}) in)?", text):
        feet, inches = (F(g or 0) for g in m.groups())
        return length(feet * FOOT + inches * INCH)
    if m := re.fullmatch(rf"({NUMBER}) F", text):
        return digits((F(m[1]) - 32) * 5 / 9) + " C"
    if m := re.fullmatch(rf"R-({NUMBER})", text):
        return "RSI-" + digits(F(m[1]) * FOOT**2 * F(5, 9) * 3600 / BTU)
    if m := re.fullmatch(rf"({NUMBER}) (\S+)", text):
        if m[2] in SAME:
            return text
        if m[2] in UNITS:
            unit, size = UNITS[m[2]]
            return f"{digits(F(m[1]) * size)} {unit}"
    return None


def twin(line):
    if line.startswith("#"):
        return line
    if line.startswith("units ="):
        return 'units = "SI"'
    code, mark, comment = line.partition("#")
    converted = re.sub(r'"([^"]*)"', lambda m: f'"{(m[1] and convert(m[1])) or m[1]}"', code.rstrip())
    if not mark:
        return converted
    return f"{converted:<29} {mark}{comment}"


with open("ok/alder-court.vent.toml") as file:
    lines = file.read().splitlines()
while lines[0].startswith("#"):
    del lines[0]
with open("ok/alder-court-si.vent.toml", "w") as file:
    file.write(HEAD + "\n".join(map(twin, lines)) + "\n")
