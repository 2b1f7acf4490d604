package quantity

import (
	"regexp"
	"strconv"
	"strings"
)

// largest is far beyond any figure of a dwelling, and far below overflow.
const largest = 1e12

// number is what stands before a unit: "12", ".25", "3/8" or "4 1/2".
type number struct {
	text     string // as written
	value    float64
	fraction bool
	whole    bool // written without a point and without a fraction
}

// scanNumber cuts an unsigned number off the start of s.
func scanNumber(s string) (number, string, *slip) {
	if m := fractionText.FindStringSubmatch(s); m != nil {
		n, wrong := fraction(m)
		return n, strings.TrimSpace(s[len(m[0]):]), wrong
	}
	text, rest, wrong := scanDecimal(s)
	if wrong != nil {
		return number{}, s, wrong
	}
	value, wrong := decimalValue(text)
	return number{text: text, value: value, whole: !strings.Contains(text, ".")}, strings.TrimSpace(rest), wrong
}

func decimalValue(text string) (float64, *slip) {
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || value > largest {
		return 0, slipf("has a number that is too large (%.0f is the most)", largest)
	}
	return value, nil
}

var (
	exponent  = regexp.MustCompile(`^[eE][+-]?[0-9]`)
	prefixed  = regexp.MustCompile(`^[xXbBoO][0-9a-fA-F]`)
	notFinite = regexp.MustCompile(`^(?i:nan|inf|∞)`)
)

// scanDecimal cuts "12", "12.5" or ".5" off, and refuses spellings of numbers
// that could be misread.
func scanDecimal(s string) (text, rest string, wrong *slip) {
	whole, rest := digits(s)
	decimals, after := "", rest
	if strings.HasPrefix(rest, ".") {
		decimals, after = digits(rest[1:])
	}
	text = s[:len(s)-len(after)]
	switch {
	case whole == "" && decimals == "":
		return "", "", noNumber(s)
	case text != whole && decimals == "":
		return "", "", slipf("has a point without decimals").instead(whole + after)
	case strings.HasPrefix(after, "."):
		return "", "", slipf("has more than one point in its number")
	case strings.HasPrefix(after, ",") && startsNumber(after[1:]):
		return "", "", commaSlip(s)
	case strings.HasPrefix(after, "_"):
		return "", "", slipf("has a separator in its number").instead(strings.ReplaceAll(s, "_", ""))
	case exponent.MatchString(after):
		return "", "", slipf("has an exponent (write the number out)")
	case text == "0" && prefixed.MatchString(after):
		return "", "", slipf("is not a decimal number")
	}
	return text, after, nil
}

// noNumber says why s has no number at its start.
func noNumber(s string) *slip {
	switch {
	case notFinite.MatchString(s):
		return slipf("is not a finite number")
	case unitBySymbol[s] != nil:
		return slipf("has no number before its unit")
	}
	return slipf("does not begin with a number")
}

var (
	numeral   = regexp.MustCompile(`^[0-9.,]*[0-9]`)
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?$`)
)

// commaSlip says how to write a number that has a comma, which is a decimal
// sign to some readers and a separator of thousands to others.
func commaSlip(s string) *slip {
	written := numeral.FindString(s)
	joined := strings.ReplaceAll(s, ",", "")
	pointed := strings.ReplaceAll(s, ",", ".")
	single := strings.Count(written, ",") == 1 && !strings.Contains(written, ".")
	wrong := slipf("has a comma in its number")
	switch {
	case thousands.MatchString(written) && single:
		return wrong.instead(joined, pointed)
	case thousands.MatchString(written):
		return wrong.instead(joined)
	case single:
		return wrong.instead(pointed)
	}
	return wrong
}

// fractionText is "3/8", "4 3/8" or "4-3/8", as drawings write inches.
var fractionText = regexp.MustCompile(`^(?:([0-9]+)[ -])?([0-9]+)/([0-9]+)`)

// fraction reads the parts of fractionText.
func fraction(parts []string) (number, *slip) {
	var part [3]float64
	for i, text := range parts[1:] {
		if text == "" {
			continue
		}
		value, wrong := decimalValue(text)
		if wrong != nil {
			return number{}, wrong
		}
		part[i] = value
	}
	whole, top, bottom := part[0], part[1], part[2]
	if bottom == 0 {
		return number{}, slipf("has a fraction that divides by zero")
	}
	if parts[1] != "" && top >= bottom {
		return number{}, slipf("has a fraction %q that is not less than one", parts[2]+"/"+parts[3])
	}
	return number{text: parts[0], value: whole + top/bottom, fraction: true}, nil
}
