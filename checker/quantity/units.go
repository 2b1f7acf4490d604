package quantity

import (
	"reflect"
	"slices"
)

// Unit is one spelling of a unit: a number of them is number*Scale + Offset in
// coherent SI. Offset is zero except on the two temperature scales.
type Unit struct {
	Symbol string
	Type   reflect.Type
	Scale  float64
	Offset float64
}

// The defined sizes that the other units follow from. Foot and pound are those
// of the international yard and pound agreement of 1959, Btu is the one of the
// International Steam Table, an inch of water is that of water of 1000 kg/m3
// under standard gravity.
const (
	foot    = 0.3048
	inch    = foot / 12
	pound   = 0.45359237
	btu     = 1055.05585262
	gravity = 9.80665

	minute = 60
	hour   = 3600
	day    = 24 * hour

	litre       = 0.001
	cfm         = foot * foot * foot / minute
	inchOfWater = inch * 1000 * gravity
	psi         = pound * gravity / (inch * inch)
	fahrenheit  = 5.0 / 9.0
	iceCelsius  = 273.15
	zeroF       = 459.67 * fahrenheit
	rValue      = foot * foot * fahrenheit * hour / btu
)

// inventory holds every spelling that is read; the first spelling of each unit
// is the one that is printed. Foot and inch marks are read in lengths only.
var inventory = slices.Concat(
	units[Length](by(foot, "ft"), by(inch, "in", "inch"), by(3*foot, "yd"), by(1, "m"), by(0.01, "cm"), by(0.001, "mm")),
	units[Area](by(foot*foot, "ft2", "ft²"), by(inch*inch, "in2", "in²"),
		by(1, "m2", "m²"), by(1e-4, "cm2", "cm²"), by(1e-6, "mm2", "mm²")),
	units[Volume](by(foot*foot*foot, "ft3", "ft³"), by(1, "m3", "m³"), by(litre, "L")),
	units[Flow](by(cfm, "cfm"), by(litre, "L/s"), by(1.0/hour, "m3/h", "m³/h"), by(1, "m3/s", "m³/s")),
	units[Velocity](by(foot/minute, "fpm", "ft/min"), by(1, "m/s"),
		by(foot/minute, "cfm/ft2", "cfm/ft²", "cfm per ft2", "cfm per ft²"),
		by(litre, "L/s/m2", "L/s/m²", "L/s per m2", "L/s per m²")),
	units[Pressure](by(inchOfWater, "inwc", "in. w.c.", "in w.c.", "in. wc", "in wc"), by(1, "Pa"), by(1000, "kPa"), by(psi, "psi")),
	units[Temperature](from(zeroF, fahrenheit, "F", "degF", "°F"), from(iceCelsius, 1, "C", "degC", "°C")),
	units[TemperatureDifference](by(1, "K"), by(1, "dC"), by(fahrenheit, "dF")),
	units[Power](by(1, "W"), by(1000, "kW"), by(btu/hour, "Btu/h"), by(1000*btu/hour, "kBtu/h")),
	units[Duration](by(1, "s"), by(minute, "min"), by(hour, "h"), by(day, "d")),
	units[AirChange](by(1.0/hour, "ACH", "1/h")),
	units[Efficacy](by(cfm, "cfm/W", "cfm per W"), by(litre, "L/s/W", "L/s per W")),
	units[Ratio](by(0.01, "%")),
	units[ThermalResistance](by(rValue, "R"), by(1, "RSI", "m2K/W", "m²K/W", "m2·K/W", "m²·K/W")),
	units[Loudness](by(1, "sone", "sones")),
	units[SoundLevel](by(1, "dBA")),
	units[Slope](by(inch/foot, "in/ft"), by(0.001, "mm/m")),
	units[Mass](by(pound, "lb"), by(1, "kg")),
)

// unit is a spelling with what parsing needs to know of it.
type unit struct {
	Unit
	kind      *kind
	canonical bool // the spelling that is printed and proposed
}

type definition struct {
	scale, offset float64
	spellings     []string
}

func by(scale float64, spellings ...string) definition {
	return definition{scale, 0, spellings}
}

func from(offset, scale float64, spellings ...string) definition {
	return definition{scale, offset, spellings}
}

func units[T Quantity](definitions ...definition) []unit {
	k := kindFor(reflect.TypeFor[T]())
	count := 0
	for _, d := range definitions {
		count += len(d.spellings)
	}
	list := make([]unit, 0, count)
	for _, d := range definitions {
		for i, s := range d.spellings {
			list = append(list, unit{Unit{s, k.typ, d.scale, d.offset}, k, i == 0})
		}
	}
	return list
}

var unitBySymbol = func() map[string]*unit {
	bySymbol := make(map[string]*unit, len(inventory))
	for i := range inventory {
		bySymbol[inventory[i].Symbol] = &inventory[i]
	}
	return bySymbol
}()

// percentSlope is "%" where a slope is expected; elsewhere "%" is a ratio.
var percentSlope = &unit{Unit{"%", reflect.TypeFor[Slope](), 0.01, 0}, kindFor(reflect.TypeFor[Slope]()), false}

// Units lists every spelling of every unit, grouped by type, the printed
// spelling of a unit first. Foot and inch marks are not among them: they are
// read in lengths only.
func Units() []Unit {
	list := make([]Unit, len(inventory))
	for i, u := range inventory {
		list[i] = u.Unit
	}
	return list
}

// UnitOf finds the unit of a spelling; ok is false when there is none.
func UnitOf(symbol string) (u Unit, ok bool) {
	if found := unitBySymbol[symbol]; found != nil {
		return found.Unit, true
	}
	return Unit{}, false
}

// lookup finds the unit of a spelling; want may be nil.
func lookup(symbol string, want *kind) *unit {
	if symbol == "%" && want == percentSlope.kind {
		return percentSlope
	}
	return unitBySymbol[symbol]
}

// si turns a number of the unit into SI. The conversion of the product keeps
// compilers from fusing it with the sum, so all machines agree to the last bit.
func (u *unit) si(number float64) float64 {
	return float64(number*u.Scale) + u.Offset
}

func (u *unit) number(si float64) float64 {
	return (si - u.Offset) / u.Scale
}
