package quantity

import (
	"math"
	"reflect"
	"strconv"
	"strings"
)

// display is one way to print a kind: in a unit, with so many decimals at
// least, for sizes from so many SI units up.
type display struct {
	unit   *unit
	from   float64
	places int
}

// displays holds, for each kind, the ways to print in IP and in SI, the one for
// the largest sizes first. Lengths in IP are feet and inches instead.
var displays = map[reflect.Type][2][]display{
	reflect.TypeFor[Length](): {
		nil,
		{show("m", 9.99995, 3), show("mm", 0, 1)}, // 9999.95 mm would round to 10000 mm
	},
	reflect.TypeFor[Area](): {
		{show("ft2", 2*foot*foot, 1), show("in2", 0, 1)},
		{show("m2", 0.1, 1), show("cm2", 0, 1)},
	},
	reflect.TypeFor[Volume](): both(show("ft3", 0, 1), show("m3", 0, 1)),
	reflect.TypeFor[Flow]():   both(show("cfm", 0, 1), show("L/s", 0, 1)),
	// air never moves this slowly in ducts: these are flows per floor area
	reflect.TypeFor[Velocity](): {
		{show("fpm", 5*foot/minute, 1), show("cfm/ft2", nearZero, 2), show("fpm", 0, 1)},
		{show("m/s", 0.025, 2), show("L/s/m2", nearZero, 2), show("m/s", 0, 2)},
	},
	reflect.TypeFor[Pressure](): {
		{show("psi", psi, 2), show("inwc", 0, 3)},
		{show("kPa", 10000, 2), show("Pa", 0, 1)},
	},
	reflect.TypeFor[Temperature]():           both(show("F", 0, 1), show("C", 0, 1)),
	reflect.TypeFor[TemperatureDifference](): both(show("dF", 0, 1), show("K", 0, 1)),
	// fans are rated in watts, burners in Btu/h
	reflect.TypeFor[Power](): {
		{show("Btu/h", 2000, 0), show("W", 0, 1)},
		{show("kW", 10000, 2), show("W", 0, 1)},
	},
	reflect.TypeFor[Duration](): {
		{show("d", 2*day, 1), show("h", 2*hour, 1), show("min", minute, 1), show("s", 0, 1)},
		{show("d", 2*day, 1), show("h", 2*hour, 1), show("min", minute, 1), show("s", 0, 1)},
	},
	reflect.TypeFor[AirChange]():         both(show("ACH", 0, 2), show("ACH", 0, 2)),
	reflect.TypeFor[Efficacy]():          both(show("cfm/W", 0, 2), show("L/s/W", 0, 2)),
	reflect.TypeFor[Ratio]():             both(show("%", 0, 1), show("%", 0, 1)),
	reflect.TypeFor[ThermalResistance](): both(show("R", 0, 1), show("RSI", 0, 2)),
	reflect.TypeFor[Loudness]():          both(show("sone", 0, 1), show("sone", 0, 1)),
	reflect.TypeFor[SoundLevel]():        both(show("dBA", 0, 1), show("dBA", 0, 1)),
	reflect.TypeFor[Slope]():             both(show("in/ft", 0, 3), show("mm/m", 0, 1)),
	reflect.TypeFor[Mass]():              both(show("lb", 0, 1), show("kg", 0, 1)),
}

func show(symbol string, from float64, places int) display {
	return display{unitBySymbol[symbol], from, places}
}

func both(ip, si display) [2][]display {
	return [2][]display{{ip}, {si}}
}

// displayOf chooses how to print a value of the given SI size. The last display
// of each kind is from zero up.
func displayOf(k *kind, s System, size float64) display {
	if s == house {
		s = IP
		if k.typ == reflect.TypeFor[Pressure]() {
			s = SI
		}
	}
	list, i := displays[k.typ][s], 0
	for math.Abs(size) < list[i].from {
		i++
	}
	return list[i]
}

// print puts number and unit together; insulation is written "R-8".
func (d display) print(number string) string {
	if d.unit.kind.typ == reflect.TypeFor[ThermalResistance]() && !strings.HasPrefix(number, "-") {
		return d.unit.Symbol + "-" + number
	}
	return number + " " + d.unit.Symbol
}

// mostPlaces bounds the decimals of any number, and mostDigits the digits that
// rounding noise cannot reach.
const (
	mostPlaces = 40
	mostDigits = 13
)

// digitsFor gives the decimals that show three significant digits of x, and
// places at least.
func digitsFor(x float64, places int) int {
	return min(mostPlaces, max(places, 2-magnitude(x)))
}

// magnitude is the power of ten of the first digit of x; that of zero is 0.
func magnitude(x float64) int {
	if x == 0 {
		return 0
	}
	return int(math.Floor(math.Log10(math.Abs(x))))
}

// upward is a nudge away from zero, below the last digit that is ever printed,
// that makes ties round alike whichever unit the value came from.
const upward = 1 + 1e-14

// decimals prints x rounded half away from zero, without trailing zeros.
func decimals(x float64, places int) string {
	if math.Abs(x) >= largest {
		return strconv.FormatFloat(x, 'g', min(6+places, 17), 64)
	}
	places = min(places, mostDigits-1-magnitude(x))
	text := strconv.FormatFloat(x*upward, 'f', places, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		return "0"
	}
	return text
}
