package quantity

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const anyQuantity = `expected a quantity such as "80 cfm" or "12 ft 4 in"`

func TestParseMistakes(t *testing.T) {
	for text, want := range map[string]string{
		// no number, no unit
		"":          `"" is empty, ` + anyQuantity,
		"   ":       `"   " is empty, ` + anyQuantity,
		"80":        `"80" has no unit, ` + anyQuantity,
		"cfm":       `"cfm" has no number before its unit, ` + anyQuantity,
		"ft 4 in":   `"ft 4 in" does not begin with a number, ` + anyQuantity,
		"about 4 m": `"about 4 m" does not begin with a number, ` + anyQuantity,
		"-":         `"-" does not begin with a number, ` + anyQuantity,
		"- 5 F":     `"- 5 F" does not begin with a number, ` + anyQuantity,
		"--5 F":     `"--5 F" does not begin with a number, ` + anyQuantity,
		"–5 F":      `"–5 F" does not begin with a number, ` + anyQuantity,
		"/8 in":     `"/8 in" does not begin with a number, ` + anyQuantity,
		"R":         `"R" has no number before its unit, ` + anyQuantity,
		"RSI":       `"RSI" has no number before its unit, ` + anyQuantity,
		"R-":        `"R-" does not begin with a number, ` + anyQuantity,
		"R-x":       `"R-x" does not begin with a number, ` + anyQuantity,
		"\xff\x00":  `"\xff\x00" does not begin with a number, ` + anyQuantity,
		// numbers of programs
		"NaN ft":                `"NaN ft" is not a finite number, ` + anyQuantity,
		"inf ft":                `"inf ft" is not a finite number, ` + anyQuantity,
		"-∞ ft":                 `"-∞ ft" is not a finite number, ` + anyQuantity,
		"0x10 ft":               `"0x10 ft" is not a decimal number, ` + anyQuantity,
		"0b0 ft":                `"0b0 ft" is not a decimal number, ` + anyQuantity,
		"0x":                    `"0x" has the unknown unit "x", ` + anyQuantity,
		"1e3 ft":                `"1e3 ft" has an exponent (write the number out), ` + anyQuantity,
		"1E-3 ft":               `"1E-3 ft" has an exponent (write the number out), ` + anyQuantity,
		"1000000000001 ft":      `"1000000000001 ft" has a number that is too large (1000000000000 is the most), ` + anyQuantity,
		"9000000000000/2 ft":    `"9000000000000/2 ft" has a number that is too large (1000000000000 is the most), ` + anyQuantity,
		"2_150 ft2":             `"2_150 ft2" has a separator in its number, write "2150 ft2"`,
		"5. ft":                 `"5. ft" has a point without decimals, write "5 ft"`,
		"1.2.3 ft":              `"1.2.3 ft" has more than one point in its number, ` + anyQuantity,
		". ft":                  `". ft" does not begin with a number, ` + anyQuantity,
		strings.Repeat("9", 81): `"99999999999999999999" and so on is too long, ` + anyQuantity,
		// commas
		"2,150 ft2":       `"2,150 ft2" has a comma in its number, write "2150 ft2" or "2.150 ft2"`,
		"1,5 m":           `"1,5 m" has a comma in its number, write "1.5 m"`,
		"0,125 in":        `"0,125 in" has a comma in its number, write "0.125 in"`,
		"1,234,567 Btu/h": `"1,234,567 Btu/h" has a comma in its number, write "1234567 Btu/h"`,
		"2,150.5 ft2":     `"2,150.5 ft2" has a comma in its number, write "2150.5 ft2"`,
		"1.234,5 m":       `"1.234,5 m" has a comma in its number, ` + anyQuantity,
		// more than one number
		"2 150 ft2":           `"2 150 ft2" has more than one number, ` + anyQuantity,
		"⅜12 ft":              `"⅜12 ft" has more than one number, ` + anyQuantity,
		"80-100 cfm":          `"80-100 cfm" has more than one number, ` + anyQuantity,
		"1 m 20 cm":           `"1 m 20 cm" has "20 cm" after "1 m", ` + anyQuantity,
		"1 h 30 min":          `"1 h 30 min" has "30 min" after "1 h", ` + anyQuantity,
		"80 cfm at 0.25 inwc": `"80 cfm at 0.25 inwc" has "at 0.25 inwc" after "80 cfm", ` + anyQuantity,
		"5 ft2 m":             `"5 ft2 m" has "m" after "5 ft2", ` + anyQuantity,
		// feet and inches
		"5 ft 4":       `"5 ft 4" has no unit after "4", ` + anyQuantity,
		"5'4":          `"5'4" has no unit after "4", ` + anyQuantity,
		"5' 4 cm":      `"5' 4 cm" has "4 cm" after its feet, where only inches may stand, ` + anyQuantity,
		"5 ft 12 in":   `"5 ft 12 in" has 12 inches after its feet, where fewer than 12 may stand, ` + anyQuantity,
		"1.5 ft 3 in":  `"1.5 ft 3 in" has inches after a part of a foot, ` + anyQuantity,
		"1/2 ft 3 in":  `"1/2 ft 3 in" has inches after a part of a foot, ` + anyQuantity,
		"12 ft -4 in":  `"12 ft -4 in" has "-4 in" after "12 ft", ` + anyQuantity,
		"12 ft 1e1 in": `"12 ft 1e1 in" has an exponent (write the number out), ` + anyQuantity,
		"4 in 2 ft":    `"4 in 2 ft" has "2 ft" after "4 in", ` + anyQuantity,
		// fractions
		"1/2 cfm":  `"1/2 cfm" has a fraction, which only feet and inches take, write "0.5 cfm"`,
		"1/0 in":   `"1/0 in" has a fraction that divides by zero, ` + anyQuantity,
		"4 9/8 in": `"4 9/8 in" has a fraction "9/8" that is not less than one, ` + anyQuantity,
		"12.5. ft": `"12.5. ft" has more than one point in its number, ` + anyQuantity,
		"4 8/8 in": `"4 8/8 in" has a fraction "8/8" that is not less than one, ` + anyQuantity,
		"1/h":      `"1/h" has the unknown unit "/h", ` + anyQuantity,
		// insulation
		"R8":         `"R8" is not how insulation is marked, write "R-8"`,
		"r-8":        `"r-8" is not how insulation is marked, write "R-8"`,
		"rsi 1.4":    `"rsi 1.4" is not how insulation is marked, write "RSI-1.4"`,
		"R-8 ft":     `"R-8 ft" has "ft" after its number, ` + anyQuantity,
		"R-8,5":      `"R-8,5" has a comma in its number, write "8.5"`,
		"R--8":       `"R--8" does not begin with a number, ` + anyQuantity,
		"-460 F":     `"-460 F" is below absolute zero, expected a temperature such as "-5 F"`,
		"-273.16 C":  `"-273.16 C" is below absolute zero, expected a temperature such as "-5 F"`,
		"90 parsecs": `"90 parsecs" has the unknown unit "parsecs", ` + anyQuantity,
	} {
		v, err := Parse(text)
		assert.Nil(t, v, text)
		assert.EqualError(t, err, want)
	}
}

func TestUnitsThatWereMeant(t *testing.T) {
	for text, want := range map[string]string{
		"80 CFM":      `"cfm"`,
		"80 cmf":      `"cm", "cm2" or "cfm"`,
		"38 l/s":      `"L/s"`,
		"38 lps":      `"L/s"`,
		"2 Ft":        `"ft"`,
		"3 feet":      `"ft"`,
		"4 in.":       `"in"`,
		"10 m^2":      `"m2"`,
		"2150 sq ft":  `"ft2"`,
		"0.2 in. wg":  `"inwc"`,
		"0.2 in wg":   `"inwc"`,
		"70 °":        `"F" or "C"`,
		"70 deg F":    `"F"`,
		"60000 Btu":   `"Btu/h"`,
		"60000 BTU/H": `"Btu/h"`,
		"60 KW":       `"kW"`,
		"90 days":     `"d"`,
		"2 hr":        `"h"`,
		"3 ACH50":     `"ACH"`,
		"45 dB(A)":    `"dBA"`,
		"10 ΔF":       `"dF"`,
		"60 lbs":      `"lb"`,
		"65 percent":  `"%"`,
		"6 fmp":       `"fpm"`,
		"6 btu/hh":    `"Btu/h" or "kBtu/h"`,
	} {
		_, err := Parse(text)
		assert.ErrorContains(t, err, `has the unknown unit "`)
		assert.ErrorContains(t, err, ", did you mean "+want+"?")
	}
}

func TestParseAsMistakes(t *testing.T) {
	as := func(_ any, err error) error { return err }
	for _, c := range []struct {
		err  error
		want string
	}{
		{as(ParseAs[Flow]("12 ft")), `"12 ft" is a length, expected a flow such as "80 cfm"`},
		{as(ParseAs[Flow]("80")), `"80" has no unit, expected a flow such as "80 cfm"`},
		{as(ParseAs[Ratio]("0.65")), `"0.65" has no unit, expected a ratio such as "65 %"`},
		{as(ParseAs[Area]("12 ft")), `"12 ft" is a length, expected an area such as "2150 ft2"`},
		{as(ParseAs[Length]("12 ft2")), `"12 ft2" is an area, expected a length such as "12 ft 4 in"`},
		{as(ParseAs[Pressure]("0.25 in")), `"0.25 in" is a length, expected a pressure such as "0.25 inwc"`},
		{as(ParseAs[Temperature]("290 K")), `"290 K" is a temperature difference, expected a temperature such as "-5 F"`},
		{as(ParseAs[TemperatureDifference]("10 F")), `"10 F" is a temperature, expected a temperature difference such as "10 K"`},
		{as(ParseAs[Length]("2 %")), `"2 %" is a ratio, expected a length such as "12 ft 4 in"`},
		{as(ParseAs[Flow]("80 parsecs")), `"80 parsecs" has the unknown unit "parsecs", expected a flow in "cfm", "L/s", "m3/h" or "m3/s"`},
		{as(ParseAs[Flow]("80 gpm")), `"80 gpm" has the unknown unit "gpm", expected a flow in "cfm", "L/s", "m3/h" or "m3/s"`},
		{as(ParseAs[Flow]("80 cmf")), `"80 cmf" has the unknown unit "cmf", did you mean "cfm"?`},
		{as(ParseAs[Duration]("3 months")), `"3 months" has the unknown unit "months", expected a duration in "s", "min", "h" or "d"`},
		{as(ParseAs[SoundLevel]("3 bels")), `"3 bels" has the unknown unit "bels", expected a sound level in "dBA"`},
		{as(ParseAs[Flow](strings.Repeat("8", 99))), `"88888888888888888888" and so on is too long, expected a flow such as "80 cfm"`},
	} {
		assert.EqualError(t, c.err, c.want)
	}
}

// TestForeignUnits holds that what is proposed for other habits' spellings is
// read, and that those spellings are not read themselves.
func TestForeignUnits(t *testing.T) {
	for spelling, meant := range foreign() {
		assert.Equal(t, spelling, fold(spelling), "spellings are looked up folded")
		for _, symbol := range strings.Fields(meant) {
			assert.True(t, unitBySymbol[symbol] != nil && unitBySymbol[symbol].canonical, symbol)
		}
	}
}
