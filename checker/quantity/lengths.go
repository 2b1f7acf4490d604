package quantity

import (
	"math"
	"strings"
)

// afterFeet is what may stand between a number of feet and the inches: a blank, or
// the hyphen of drawings, or nothing after a foot mark.
var afterFeet = [...]string{"ft ", "ft-", "ft - ", "'", "' ", "'-", "' - "}

// cutFeet gives the inches in `ft 4 in`, `' 4"` or `'-4"`; ok is false unless a
// number follows the feet.
func cutFeet(rest string) (inches string, ok bool) {
	if rest == "" || rest[0] != 'f' && rest[0] != '\'' {
		return "", false
	}
	for _, between := range afterFeet {
		if inches, ok := strings.CutPrefix(rest, between); ok && startsNumber(inches) {
			return inches, true
		}
	}
	return "", false
}

// feetAndInches gives the length of feet and of the inches after them.
func feetAndInches(feet number, text string) (float64, *slip) {
	inches, rest, wrong := scanNumber(text)
	switch {
	case wrong != nil:
		return 0, wrong
	case rest == "":
		return 0, slipf("has no unit after %q", inches.text)
	case rest != "in" && rest != "inch" && rest != `"`:
		return 0, slipf("has %q after its feet, where only inches may stand", text)
	case !feet.whole:
		return 0, slipf("has inches after a part of a foot")
	case inches.value >= 12:
		return 0, slipf("has %s inches after its feet, where fewer than 12 may stand", inches.text)
	}
	return feet.value*foot + inches.value*inch, nil
}

// farthest is the number of inches beyond which a length is printed in feet
// alone: its inches could not be told exactly any more.
const farthest = 1e7

// formatFeet prints a length as "9 ft 11.9 in", with two decimals of an inch
// or, where it is a whole number of eighths, three.
func formatFeet(si float64, st style) string {
	inches := math.Abs(si) / inch
	sign := ""
	if si < 0 {
		sign = "-"
	}
	if inches > farthest {
		return sign + decimals(inches/12, 2+st.extra) + " ft"
	}
	places := 2
	if eighths := inches * 8; Compare(eighths, math.Round(eighths)) == 0 {
		places = 3
	}
	if inches < 12 {
		places = digitsFor(inches, places)
	}
	return sign + splitFeet(inches, places+st.extra)
}

// splitFeet rounds first and splits then, so that 11.999 in is 1 ft and never
// 12 in.
func splitFeet(inches float64, places int) string {
	unit := math.Pow10(places)
	rounded := math.Round(inches * upward * unit)
	feet := math.Floor(rounded / (12 * unit))
	rest := decimals((rounded-feet*12*unit)/unit, places)
	switch {
	case feet == 0:
		return rest + " in"
	case rest == "0":
		return decimals(feet, 0) + " ft"
	}
	return decimals(feet, 0) + " ft " + rest + " in"
}
