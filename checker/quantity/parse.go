package quantity

import (
	"errors"
	"fmt"
	"reflect"
	"strings"
)

// Parse reads a text such as "12 ft 4 in" or "80 cfm" into the type of its
// unit. The error quotes the text, says what is wrong and what was expected.
func Parse(text string) (any, error) {
	si, k, err := parse(text, nil)
	if err != nil {
		return nil, err
	}
	return k.wrap(si), nil
}

// ParseAs reads a text that must be of type T: a unit of another dimension is
// an error. "%" is a slope where a slope is expected, and else a ratio.
func ParseAs[T Quantity](text string) (T, error) {
	want := kindByType[reflect.TypeFor[T]()]
	si, got, err := parse(text, want)
	if err != nil {
		return 0, err
	}
	if got != want {
		return 0, fmt.Errorf("%q is %s, expected %s", text, article(got.name), want.describe())
	}
	return T(si), nil
}

// parse reads a text; want is the expected kind, or nil if any will do.
func parse(text string, want *kind) (float64, *kind, error) {
	if len(text) > maxText {
		return 0, nil, fmt.Errorf("%.20q... is too long, expected %s", text, want.describe())
	}
	si, u, err := scan(clean(text), want)
	if err != nil {
		return 0, nil, problem(text, err, want)
	}
	if u.Type == temperature && si < 0 {
		return 0, nil, fmt.Errorf("%q is below absolute zero", text)
	}
	return si + 0, u.kind, nil // no negative zero
}

var temperature = reflect.TypeFor[Temperature]()

// problem turns what scan found into a message about the whole text.
func problem(text string, err error, want *kind) error {
	var unknown *unknownUnit
	if errors.As(err, &unknown) {
		return unknown.within(text, want)
	}
	return fmt.Errorf("%q %w, expected %s", text, err, want.describe())
}

// scan reads a clean text: an optional sign, then one of the forms.
func scan(s string, want *kind) (float64, *unit, error) {
	if s == "" {
		return 0, nil, errors.New("is empty")
	}
	if u, value, ok := cutResistance(s); ok {
		n, err := only(value)
		return u.si(n.value), u, err
	}
	sign := 1.0
	if strings.HasPrefix(s, "-") {
		sign = -1
	}
	n, rest, err := scanNumber(strings.TrimLeft(s[:1], "+-") + s[1:])
	if err != nil {
		return 0, nil, err
	}
	if inches, ok := cutFeet(rest); ok {
		length, err := feetAndInches(n, inches)
		return sign * length, unitBySymbol["ft"], err
	}
	u, err := unitOf(n, rest, want)
	if err != nil {
		return 0, nil, err
	}
	return u.si(sign * n.value), u, nil
}

// unitOf finds the unit that follows a number.
func unitOf(n number, rest string, want *kind) (*unit, error) {
	if rest == "" {
		return nil, errors.New("has no unit")
	}
	if symbol, ok := marks[rest]; ok {
		rest = symbol
	}
	u := lookup(rest, want)
	if u == nil {
		return nil, whyUnknown(n, rest)
	}
	if n.fraction && !takesFractions[u.Symbol] {
		return nil, fmt.Errorf("has a fraction, which only feet and inches take; write %q", decimals(n.value, 4)+" "+u.Symbol)
	}
	return u, nil
}

var (
	marks          = map[string]string{"'": "ft", `"`: "in"}
	takesFractions = map[string]bool{"ft": true, "in": true, "inch": true, "in/ft": true}
)

// whyUnknown tells a second number, or words after the unit, from a unit that
// is not known.
func whyUnknown(n number, rest string) error {
	if startsNumber(strings.TrimLeft(rest, "+-")) {
		return errors.New("has more than one number")
	}
	for i := strings.LastIndex(rest, " "); i > 0; i = strings.LastIndex(rest[:i], " ") {
		if unitBySymbol[rest[:i]] != nil {
			return fmt.Errorf("has %q after %q", rest[i+1:], n.text+" "+rest[:i])
		}
	}
	return &unknownUnit{rest}
}

// cutResistance cuts the "R-" or "RSI-" off "R-8", as insulation is marked.
func cutResistance(s string) (u *unit, value string, ok bool) {
	for _, symbol := range []string{"R", "RSI"} {
		if value, ok := strings.CutPrefix(s, symbol+"-"); ok {
			return unitBySymbol[symbol], value, true
		}
	}
	return nil, "", false
}

// only reads a number that nothing may follow.
func only(s string) (number, error) {
	n, rest, err := scanNumber(s)
	if err == nil && rest != "" {
		err = fmt.Errorf("has %q after its number", rest)
	}
	return n, err
}
