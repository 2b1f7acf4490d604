package quantity

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// largest is far beyond any figure of a dwelling, and far below overflow.
const largest = 1e12

var (
	errNoNumber = errors.New("does not begin with a number")
	errTooLarge = fmt.Errorf("has a number that is too large, expected at most %.0f", largest)
)

// number is what stands before a unit: "12", ".25", "3/8" or "4 1/2".
type number struct {
	text     string // as written
	value    float64
	fraction bool
	whole    bool // written without a point and without a fraction
}

// scanNumber cuts an unsigned number off the start of s. The error completes a
// sentence that begins with the text.
func scanNumber(s string) (number, string, error) {
	if m := fractionText.FindStringSubmatch(s); m != nil {
		n, err := fraction(m)
		return n, strings.TrimSpace(s[len(m[0]):]), err
	}
	text, rest, err := scanDecimal(s)
	if err != nil {
		return number{}, s, err
	}
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || value > largest {
		return number{}, s, errTooLarge
	}
	return number{text: text, value: value, whole: !strings.Contains(text, ".")}, strings.TrimSpace(rest), nil
}

// scanDecimal cuts "12", "12.5" or ".5" off, and refuses spellings of numbers
// that could be misread.
func scanDecimal(s string) (text, rest string, err error) {
	whole, rest := digits(s)
	decimals, after := "", rest
	if strings.HasPrefix(rest, ".") {
		decimals, after = digits(rest[1:])
	}
	text = s[:len(s)-len(after)]
	switch {
	case whole == "" && decimals == "":
		return "", "", errNoNumber
	case text != whole && decimals == "":
		return "", "", fmt.Errorf("has a point without decimals, write %q", whole)
	case strings.HasPrefix(after, ".") && startsNumber(after):
		return "", "", errors.New("has more than one point in its number")
	case strings.HasPrefix(after, ",") && startsNumber(after[1:]):
		return "", "", commaError(s)
	case strings.HasPrefix(after, "_"):
		return "", "", errors.New("has a separator in its number, write the digits without it")
	case exponent.MatchString(after):
		return "", "", errors.New("has an exponent, write the number out in full")
	case text == "0" && prefixed.MatchString(after):
		return "", "", errors.New("is not a decimal number")
	}
	return text, after, nil
}

var (
	exponent  = regexp.MustCompile(`^[eE][+-]?[0-9]`)
	prefixed  = regexp.MustCompile(`^[xXbBoO][0-9a-fA-F]`)
	numeral   = regexp.MustCompile(`^[0-9.,]*[0-9]`)
	thousands = regexp.MustCompile(`^[1-9][0-9]{0,2}(,[0-9]{3})+(\.[0-9]+)?$`)
)

// commaError says how to write a number that has a comma, which is a decimal
// sign to some readers and a separator of thousands to others.
func commaError(s string) error {
	written := numeral.FindString(s)
	commas := strings.Count(written, ",")
	joined := strings.ReplaceAll(written, ",", "")
	pointed := strings.ReplaceAll(written, ",", ".")
	single := commas == 1 && !strings.Contains(written, ".")
	switch {
	case thousands.MatchString(written) && single:
		return fmt.Errorf("has a comma in its number, write %q, or %q if it is a decimal comma", joined, pointed)
	case thousands.MatchString(written):
		return fmt.Errorf("has a comma in its number, write %q", joined)
	case single:
		return fmt.Errorf("has a decimal comma, write %q", pointed)
	}
	return errors.New("has a comma in its number, write a decimal point and no separators")
}

// fractionText is "3/8", "4 3/8" or "4-3/8", as drawings write inches.
var fractionText = regexp.MustCompile(`^(?:([0-9]+)[ -])?([0-9]+)/([0-9]+)`)

// fraction reads the parts of fractionText.
func fraction(parts []string) (number, error) {
	var part [3]float64
	for i, digits := range parts[1:] {
		if digits == "" {
			continue
		}
		value, err := strconv.ParseFloat(digits, 64)
		if err != nil || value > largest {
			return number{}, errTooLarge
		}
		part[i] = value
	}
	whole, top, bottom := part[0], part[1], part[2]
	if bottom == 0 {
		return number{}, errors.New("has a fraction that divides by zero")
	}
	if parts[1] != "" && top >= bottom {
		return number{}, fmt.Errorf("has a fraction %q that is not less than one", parts[2]+"/"+parts[3])
	}
	return number{text: parts[0], value: whole + top/bottom, fraction: true}, nil
}
