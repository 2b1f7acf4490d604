package quantity

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
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

// scanNumber cuts an unsigned number off the start of s, and a blank after it.
func scanNumber(s string) (number, string, *slip) {
	if f, after, ok := cutFraction(s); ok {
		n, wrong := f.number(s[:len(s)-len(after)])
		return n, strings.TrimPrefix(after, " "), wrong
	}
	n, rest, wrong := scanDecimal(s)
	if wrong != nil {
		return number{}, s, wrong
	}
	n.value, wrong = decimalValue(n.text)
	return n, strings.TrimPrefix(rest, " "), wrong
}

func decimalValue(text string) (float64, *slip) {
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || value > largest {
		return 0, slipf("has a number that is too large (%.0f is the most)", largest)
	}
	return value, nil
}

// scanDecimal cuts "12", "12.5" or ".5" off, and refuses spellings of numbers
// that could be misread. The number has no value yet.
func scanDecimal(s string) (n number, rest string, wrong *slip) {
	whole, rest := digits(s)
	decimals, after := "", rest
	if strings.HasPrefix(rest, ".") {
		decimals, after = digits(rest[1:])
	}
	text := s[:len(s)-len(after)]
	switch {
	case whole == "" && decimals == "":
		return number{}, "", noNumber(s)
	case text != whole && decimals == "":
		return number{}, "", slipf("has a point without decimals").instead(whole + after)
	case strings.HasPrefix(after, "."):
		return number{}, "", slipf("has more than one point in its number")
	case strings.HasPrefix(after, ",") && startsNumber(after[1:]):
		return number{}, "", commaSlip(s)
	case strings.HasPrefix(after, "_"):
		return number{}, "", slipf("has a separator in its number").instead(strings.ReplaceAll(s, "_", ""))
	case startsExponent(after):
		return number{}, "", slipf("has an exponent (write the number out)")
	case text == "0" && startsPrefixed(after):
		return number{}, "", slipf("is not a decimal number")
	}
	return number{text: text, whole: text == whole}, after, nil
}

// startsExponent tells whether s starts as "e5" or "E-5" does.
func startsExponent(s string) bool {
	if s == "" || s[0] != 'e' && s[0] != 'E' {
		return false
	}
	s = s[1:]
	if s != "" && (s[0] == '+' || s[0] == '-') {
		s = s[1:]
	}
	power, _ := digits(s)
	return power != ""
}

// startsPrefixed tells whether s starts as "x1F" or "b1" does, which programmers
// write after a zero.
func startsPrefixed(s string) bool {
	return len(s) > 1 && strings.IndexByte("xXbBoO", s[0]) >= 0 && strings.IndexByte("0123456789abcdefABCDEF", s[1]) >= 0
}

// noNumber says why s has no number at its start.
func noNumber(s string) *slip {
	switch {
	case notFinite().MatchString(s):
		return slipf("is not a finite number")
	case unitBySymbol[s] != nil:
		return slipf("has no number before its unit")
	}
	return slipf("does not begin with a number")
}

// The patterns that mistakes are told from.
var (
	notFinite = pattern(`^(?i:nan|inf|∞)`)
	numeral   = pattern(`^[0-9.,]*[0-9]`)
	thousands = pattern(`^[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?$`)
)

// pattern compiles a pattern when it is first asked for.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// commaSlip says how to write a number that has a comma, which is a decimal
// sign to some readers and a separator of thousands to others.
func commaSlip(s string) *slip {
	written := numeral().FindString(s)
	joined := strings.ReplaceAll(s, ",", "")
	pointed := strings.ReplaceAll(s, ",", ".")
	single := strings.Count(written, ",") == 1 && !strings.Contains(written, ".")
	wrong := slipf("has a comma in its number")
	switch {
	case thousands().MatchString(written) && single:
		return wrong.instead(joined, pointed)
	case thousands().MatchString(written):
		return wrong.instead(joined)
	case single:
		return wrong.instead(pointed)
	}
	return wrong
}

// fraction is "3/8", "4 3/8" or "4-3/8", as drawings write inches.
type fraction struct{ whole, top, bottom string }

// cutFraction cuts a fraction off the start of s.
func cutFraction(s string) (f fraction, after string, ok bool) {
	f.top, after = digits(s)
	if f.top != "" && after != "" && (after[0] == ' ' || after[0] == '-') {
		f.whole = f.top
		f.top, after = digits(after[1:])
	}
	after, ok = strings.CutPrefix(after, "/")
	if !ok || f.top == "" {
		return fraction{}, "", false
	}
	f.bottom, after = digits(after)
	return f, after, f.bottom != ""
}

// number gives the value of a fraction that is written as text.
func (f fraction) number(text string) (number, *slip) {
	var part [3]float64
	for i, digits := range []string{f.whole, f.top, f.bottom} {
		if digits == "" {
			continue
		}
		value, wrong := decimalValue(digits)
		if wrong != nil {
			return number{}, wrong
		}
		part[i] = value
	}
	whole, top, bottom := part[0], part[1], part[2]
	if bottom == 0 {
		return number{}, slipf("has a fraction that divides by zero")
	}
	if f.whole != "" && top >= bottom {
		return number{}, slipf("has a fraction %q that is not less than one", f.top+"/"+f.bottom)
	}
	return number{text: text, value: whole + top/bottom, fraction: true}, nil
}
