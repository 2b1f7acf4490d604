package quantity

import (
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		v      any
		ip, si string
	}{
		{Length(0), "0 in", "0 mm"},
		{Length(12 * foot), "12 ft", "3657.6 mm"},
		{Length(119.9 * inch), "9 ft 11.9 in", "3045.5 mm"},
		{Length(4 * inch), "4 in", "101.6 mm"},
		{Length(-30 * inch), "-2 ft 6 in", "-762 mm"},
		{Length(11.999 * inch), "1 ft", "304.8 mm"},
		{Length(11.99 * inch), "11.99 in", "304.5 mm"},
		{Length(119.996 * inch), "10 ft", "3047.9 mm"},
		{Length(143.994 * inch), "11 ft 11.99 in", "3657.4 mm"},
		{Length(0.375 * inch), "0.375 in", "9.53 mm"},
		{Length(4.625 * inch), "4.625 in", "117.5 mm"},
		{Length(52.125 * inch), "4 ft 4.125 in", "1324 mm"},
		{Length(52.126 * inch), "4 ft 4.13 in", "1324 mm"},
		{Length(0.0005 * foot), "0.006 in", "0.152 mm"},
		{Length(1.799), "5 ft 10.83 in", "1799 mm"},
		{Length(9.9999), "32 ft 9.7 in", "9999.9 mm"},
		{Length(9.99996), "32 ft 9.7 in", "10 m"},
		{Length(10), "32 ft 9.7 in", "10 m"},
		{Length(12.3456), "40 ft 6.05 in", "12.346 m"},
		{Length(1609.344), "5280 ft", "1609.344 m"},
		{Length(1e7 * inch), "833333 ft 4 in", "254000 m"},
		{Length((1e7 + 1) * inch), "833333.42 ft", "254000.025 m"},
		{Length(1e7), "32808398.95 ft", "10000000 m"},
		{Length(-1e7), "-32808398.95 ft", "-10000000 m"},
		{Length(1e-13), "0 in", "0 mm"},
		{Area(2150 * foot * foot), "2150 ft2", "199.7 m2"},
		{Area(50 * inch * inch), "50 in2", "322.6 cm2"},
		{Area(0), "0 in2", "0 cm2"},
		{Volume(17200 * foot * foot * foot), "17200 ft3", "487 m3"},
		{Flow(80 * cfm), "80 cfm", "37.8 L/s"},
		{Flow(7.5 * cfm), "7.5 cfm", "3.54 L/s"},
		{Flow(1234.5678 * cfm), "1234.6 cfm", "582.7 L/s"},
		{Velocity(600 * foot / minute), "600 fpm", "3.05 m/s"},
		{Velocity(20 * foot / minute), "20 fpm", "0.102 m/s"},
		{Velocity(0.03 * foot / minute), "0.03 cfm/ft2", "0.152 L/s/m2"},
		{Velocity(0), "0 fpm", "0 m/s"},
		{Pressure(0.25 * inchOfWater), "0.25 inwc", "62.3 Pa"},
		{Pressure(-5), "-0.0201 inwc", "-5 Pa"},
		{Pressure(27 * inchOfWater), "27 inwc", "6725.4 Pa"},
		{Pressure(2 * psi), "2 psi", "13.79 kPa"},
		{Pressure(101325), "14.7 psi", "101.33 kPa"},
		{Temperature(zeroF - 5*fahrenheit), "-5 F", "-20.6 C"},
		{Temperature(iceCelsius), "32 F", "0 C"},
		{Temperature(zeroF), "0 F", "-17.8 C"},
		{TemperatureDifference(10), "18 dF", "10 K"},
		{Power(60), "60 W", "60 W"},
		{Power(60000 * btu / hour), "60000 Btu/h", "17.58 kW"},
		{Power(0), "0 W", "0 W"},
		{Duration(0), "0 s", "0 s"},
		{Duration(45), "45 s", "45 s"},
		{Duration(60), "1 min", "1 min"},
		{Duration(hour), "60 min", "60 min"},
		{Duration(3 * hour), "3 h", "3 h"},
		{Duration(90 * day), "90 d", "90 d"},
		{AirChange(3.0 / hour), "3 ACH", "3 ACH"},
		{Efficacy(1.2 * cfm), "1.2 cfm/W", "0.566 L/s/W"},
		{Ratio(0.65), "65 %", "65 %"},
		{Ratio(2.0 / 3), "66.7 %", "66.7 %"},
		{ThermalResistance(8 * rValue), "R-8", "RSI-1.41"},
		{ThermalResistance(-rValue), "-1 R", "-0.176 RSI"},
		{Loudness(1), "1 sone", "1 sone"},
		{SoundLevel(45), "45 dBA", "45 dBA"},
		{Slope(1.0 / 48), "0.25 in/ft", "20.8 mm/m"},
		{Mass(60 * pound), "60 lb", "27.2 kg"},
	} {
		assert.Equal(t, c.ip, Format(c.v, IP), "%T %v", c.v, float64Of(c.v))
		assert.Equal(t, c.si, Format(c.v, SI), "%T %v", c.v, float64Of(c.v))
	}
}

func float64Of(v any) float64 {
	x, _ := size(v)
	return x
}

func TestFormatOfWhatHasNoUnit(t *testing.T) {
	flow := Flow(80 * cfm)
	pointer := &flow
	var none *Flow
	type word string
	for _, c := range []struct {
		v    any
		want string
	}{
		{nil, "not given"}, {none, "not given"}, {pointer, "80 cfm"}, {&pointer, "80 cfm"},
		{true, "yes"}, {false, "no"}, {"hrv", "hrv"}, {word("erv"), "erv"},
		{3, "3"}, {int64(-3), "-3"}, {int32(3), "3"},
		{0.0, "0"}, {0.65, "0.65"}, {1.0 / 3, "0.333"}, {0.00123, "0.00123"}, {1234.5678, "1234.568"},
		{-2.0, "-2"}, {float32(0.5), "0.5"}, {-1e-13, "0"}, {1e-12, "0"}, {1e21, "1e+21"}, {1234567890123.0, "1.23456789e+12"}, {1e12, "1e+12"}, {999999999999.0, "999999999999"},
		{[]int{1}, "a []int"},
	} {
		assert.Equal(t, c.want, Format(c.v, IP))
	}
}

func TestFormatOfWhatIsNotFinite(t *testing.T) {
	for _, k := range kinds {
		for _, s := range []System{IP, SI} {
			assert.Equal(t, "no limit", Format(k.wrap(math.Inf(1)), s))
			assert.Equal(t, "not permitted", Format(k.wrap(math.Inf(-1)), s))
			assert.Equal(t, "undetermined", Format(k.wrap(math.NaN()), s))
		}
	}
	assert.Equal(t, "no limit", Format(math.Inf(1), SI))
}

// TestFormatRoundsAlike takes the same value by way of two units: their last
// bits differ, and ties must not show it.
func TestFormatRoundsAlike(t *testing.T) {
	for i := range 2000 {
		half := float64(i) + 0.005
		a, b := unitBySymbol["in"].si(half), unitBySymbol["ft"].si(half/12)
		assert.Equal(t, Format(Length(a), IP), Format(Length(b), IP))
		half = float64(i) + 0.05
		a, b = unitBySymbol["L/s"].si(half), unitBySymbol["m3/h"].si(half*3.6)
		assert.Equal(t, Format(Flow(a), SI), Format(Flow(b), SI))
		a, b = unitBySymbol["C"].si(half), unitBySymbol["F"].si(half*1.8+32)
		assert.Equal(t, Format(Temperature(a), SI), Format(Temperature(b), SI))
	}
}

// TestPressuresOfAHouseAreInPascals in both systems; what else is told beside them
// stays as it is.
func TestPressuresOfAHouseAreInPascals(t *testing.T) {
	for v, want := range map[any][2]string{
		Pressure(50):     {"50 Pa", "50 Pa"},
		Flow(80 * cfm):   {"80 cfm", "37.8 L/s"},
		Length(3 * foot): {"3 ft", "914.4 mm"},
	} {
		assert.Equal(t, want, [2]string{Format(v, IP.House()), Format(v, SI.House())})
	}
}

// TestTiesRoundAwayFromZero prints values half way between two last digits.
func TestTiesRoundAwayFromZero(t *testing.T) {
	for v, want := range map[any]string{
		Length(13.005 * inch):  "1 ft 1.01 in",
		Length(-13.005 * inch): "-1 ft 1.01 in",
		Flow(80.05 * cfm):      "80.1 cfm",
		Flow(-80.05 * cfm):     "-80.1 cfm",
		1.0005:                 "1.001",
	} {
		assert.Equal(t, want, Format(v, IP))
	}
}

// TestEveryKindHasDisplays holds that a unit is found for every size, and that
// it is a unit of the kind.
func TestEveryKindHasDisplays(t *testing.T) {
	for _, k := range kinds {
		for s, list := range displays[k.typ] {
			if k.typ == reflect.TypeFor[Length]() && System(s) == IP {
				continue // feet and inches
			}
			assert.Zero(t, list[len(list)-1].from, k.name)
			for i, d := range list {
				assert.Same(t, k, d.unit.kind)
				assert.True(t, d.unit.canonical)
				assert.True(t, i == 0 || d.from < list[i-1].from, k.name)
			}
		}
	}
}

func TestFormatPair(t *testing.T) {
	found := Length(3)
	for _, c := range []struct {
		a, b        any
		s           System
		left, right string
	}{
		{Length(3.0), Length(3.048), SI, "3000 mm", "3048 mm"},
		{&found, Length(3.048), SI, "3000 mm", "3048 mm"},
		{Length(119.9 * inch), Length(10 * foot), IP, "9 ft 11.9 in", "10 ft"},
		{Length(119.999 * inch), Length(10 * foot), IP, "9 ft 11.999 in", "10 ft"},
		{Length(119.99999 * inch), Length(10 * foot), IP, "9 ft 11.99999 in", "10 ft"},
		{Length(10 * foot), Length(3.048), IP, "10 ft", "10 ft"},
		{Length(900000 * foot), Length(900000.001 * foot), IP, "900000 ft", "900000.001 ft"},
		{Length(3.04798), Length(3.048), SI, "3047.98 mm", "3048 mm"},
		{Length(2), Length(12), SI, "2 m", "12 m"},
		{Length(2), Length(math.Inf(1)), SI, "2000 mm", "no limit"},
		{Length(math.Inf(-1)), Length(12), SI, "not permitted", "12 m"},
		{Area(100 * inch * inch), Area(3 * foot * foot), IP, "0.694 ft2", "3 ft2"},
		{Velocity(0), Velocity(0.03 * foot / minute), IP, "0 cfm/ft2", "0.03 cfm/ft2"},
		{Flow(79.99 * cfm), Flow(80 * cfm), IP, "79.99 cfm", "80 cfm"},
		{Flow(80.04 * cfm), Flow(80.0401 * cfm), IP, "80.04 cfm", "80.0401 cfm"},
		{Temperature(zeroF), Temperature(zeroF + 0.01*fahrenheit), IP, "0 F", "0.01 F"},
		{Ratio(0.64999), Ratio(0.65), IP, "64.999 %", "65 %"},
		{ThermalResistance(7.99 * rValue), ThermalResistance(8 * rValue), IP, "R-7.99", "R-8"},
		{4.9999, 5, IP, "4.9999", "5"},
		{0.65, 0.65, IP, "0.65", "0.65"},
		{3, 4, IP, "3", "4"},
		{"hrv", "erv", IP, "hrv", "erv"},
		{"0.333", 1.0 / 3, IP, "0.333", "0.333"}, // a text has no more digits to show
		{nil, Length(1), SI, "not given", "1000 mm"},
		{true, false, IP, "yes", "no"},
		{math.NaN(), math.NaN(), IP, "undetermined", "undetermined"},
	} {
		left, right := FormatPair(c.a, c.b, c.s)
		assert.Equal(t, c.left, left)
		assert.Equal(t, c.right, right)
	}
}
