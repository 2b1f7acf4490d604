package quantity

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParse(t *testing.T) {
	for text, want := range map[string]any{
		"12 ft":              Length(12 * foot),
		"12ft":               Length(12 * foot),
		"  12   ft ":         Length(12 * foot),
		"12\u00a0ft":         Length(12 * foot),
		"12 ft 4 in":         Length(148 * inch),
		"12 ft 4 1/2 in":     Length(148.5 * inch),
		"12 ft 4-1/2 in":     Length(148.5 * inch),
		"12 ft-4 in":         Length(148 * inch),
		`12' 4"`:             Length(148 * inch),
		`12'4"`:              Length(148 * inch),
		`12'-4"`:             Length(148 * inch),
		`12' - 4 1/2"`:       Length(148.5 * inch),
		`12′ 4½″`:            Length(148.5 * inch),
		`12’ 4”`:             Length(148 * inch),
		`12' 4''`:            Length(148 * inch),
		`12'`:                Length(12 * foot),
		`4"`:                 Length(4 * inch),
		"12' .5 in":          Length(144.5 * inch),
		"-1 ft 6 in":         Length(-18 * inch),
		"0 ft 6 in":          Length(6 * inch),
		"1/2 ft":             Length(6 * inch),
		"3/8 in":             Length(0.375 * inch),
		"3⁄8 in":             Length(0.375 * inch),
		"9/8 in":             Length(1.125 * inch),
		"4 inch":             Length(4 * inch),
		"1.5 ft":             Length(1.5 * foot),
		".25 in":             Length(0.25 * inch),
		"-0 ft":              Length(0),
		"-0 ft 0 in":         Length(0),
		"+3 m":               Length(3),
		"−3 m":               Length(-3),
		"2150 ft2":           Area(2150 * foot * foot),
		"10 m²":              Area(10),
		"3 m³":               Volume(3),
		"80 cfm":             Flow(80 * cfm),
		"36 m³/h":            Flow(0.01),
		"0.15 L/s per m2":    Velocity(0.00015),
		"0.15 L/s per m²":    Velocity(0.00015),
		"5.08 cfm per ft2":   Velocity(5.08 * foot / minute),
		"0.25 in. w.c.":      Pressure(0.25 * inchOfWater),
		"0.25 in w.c.":       Pressure(0.25 * inchOfWater),
		"20 °C":              Temperature(293.15),
		"-40 degF":           Temperature(233.15),
		"-273.15 C":          Temperature(0),
		"10 K":               TemperatureDifference(10),
		"9 dF":               TemperatureDifference(5),
		"1 kW":               Power(1000),
		"90 d":               Duration(90 * day),
		"7.2 1/h":            AirChange(0.002),
		"2 L/s per W":        Efficacy(0.002),
		"65 %":               Ratio(0.65),
		"65%":                Ratio(0.65),
		"R-8":                ThermalResistance(8 * rValue),
		"R-.5":               ThermalResistance(0.5 * rValue),
		"8 R":                ThermalResistance(8 * rValue),
		"RSI-1.4":            ThermalResistance(1.4),
		"1.4 RSI":            ThermalResistance(1.4),
		"1.4 m²·K/W":         ThermalResistance(1.4),
		"1 sone":             Loudness(1),
		"1.5 sones":          Loudness(1.5),
		"45 dBA":             SoundLevel(45),
		"1/4 in/ft":          Slope(1.0 / 48),
		"60 lb":              Mass(60 * pound),
		"1000000000000 mm":   Length(1e9),
		"0.0000000000001 ft": Length(1e-13 * foot),
	} {
		got, err := Parse(text)
		require.NoError(t, err)
		require.IsType(t, want, got, text)
		a, _ := size(want)
		b, _ := size(got)
		assert.InDelta(t, a, b, 1e-14*max(1, a), text)
	}
}

func TestLongestTextThatIsRead(t *testing.T) {
	longest := strings.Repeat("0", maxText-len("7 ft")) + "7 ft"
	got, err := Parse(longest)
	require.NoError(t, err)
	assert.InDelta(t, 7*foot, float64Of(got), 1e-15)
	_, err = Parse("0" + longest)
	assert.ErrorContains(t, err, "is too long")
}

func TestParseHasNoNegativeZero(t *testing.T) {
	for _, text := range []string{"-0 ft", "-0 ft 0 in", "-0 cfm"} {
		v, err := Parse(text)
		require.NoError(t, err)
		x, _ := size(v)
		assert.False(t, math.Signbit(x), text)
	}
}

func TestParseAsOfSlope(t *testing.T) {
	for text, want := range map[string]Slope{"2 %": 0.02, "1/4 in/ft": 1.0 / 48, "20 mm/m": 0.02} {
		got, err := ParseAs[Slope](text)
		require.NoError(t, err)
		assert.InDelta(t, float64(want), float64(got), 1e-15)
	}
	ratio, err := ParseAs[Ratio]("2 %")
	require.NoError(t, err)
	assert.Equal(t, Ratio(0.02), ratio)
}

// TestExamplesParse holds the package to its own advice.
func TestExamplesParse(t *testing.T) {
	for _, k := range kinds {
		si, got, err := parse(k.example, k)
		require.NoError(t, err)
		assert.Same(t, k, got)
		assert.Equal(t, k.typ, reflect.TypeOf(k.wrap(si)))
	}
}
