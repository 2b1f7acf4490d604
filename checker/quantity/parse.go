package quantity

import (
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
	want := kindFor(reflect.TypeFor[T]())
	si, got, err := parse(text, want)
	if err != nil {
		return 0, err
	}
	if got != want {
		return 0, fmt.Errorf("%q is %s, expected %s", text, article(got.name), want.describe())
	}
	return T(si), nil
}

// maxText is the length in bytes up to which a text is looked at.
const maxText = 80

var temperature = reflect.TypeFor[Temperature]()

// parse reads a text; want is the expected kind, or nil if any will do.
func parse(text string, want *kind) (float64, *kind, error) {
	if len(text) > maxText {
		return 0, nil, fmt.Errorf("%.20q and so on is too long, expected %s", text, want.describe())
	}
	si, u, wrong := scan(clean(text), want)
	if wrong != nil {
		return 0, nil, wrong.within(text, want)
	}
	if u.Type == temperature && Compare(si, 0) < 0 {
		return 0, nil, fmt.Errorf("%q is below absolute zero, expected %s", text, u.kind.describe())
	}
	return si + 0, u.kind, nil // no negative zero
}

// scan reads a clean text: an optional sign, then one of the forms.
func scan(s string, want *kind) (float64, *unit, *slip) {
	if s == "" {
		return 0, nil, slipf("is empty")
	}
	if si, u, wrong := scanMarked(s); u != nil {
		return si, u, wrong
	}
	sign, unsigned := 1.0, strings.TrimPrefix(s, "+")
	if after, minus := strings.CutPrefix(s, "-"); minus {
		sign, unsigned = -1, after
	}
	n, rest, wrong := scanNumber(unsigned)
	if wrong != nil {
		return 0, nil, wrong
	}
	if inches, ok := cutFeet(rest); ok {
		length, wrong := feetAndInches(n, inches)
		return sign * length, unitBySymbol["ft"], wrong
	}
	u, wrong := unitOf(n, rest, want)
	if wrong != nil {
		return 0, nil, wrong
	}
	return u.si(sign * n.value), u, nil
}

// unmarked is the symbol of a mark that stands for a unit, or the symbol itself.
func unmarked(symbol string) string {
	switch symbol {
	case "'":
		return "ft"
	case `"`:
		return "in"
	}
	return symbol
}

func takesFractions(symbol string) bool {
	switch symbol {
	case "ft", "in", "inch", "in/ft":
		return true
	}
	return false
}

// unitOf finds the unit that follows a number.
func unitOf(n number, rest string, want *kind) (*unit, *slip) {
	if rest == "" {
		return nil, slipf("has no unit")
	}
	rest = unmarked(rest)
	u := lookup(rest, want)
	if u == nil {
		return nil, whyUnknown(n, rest, want)
	}
	if n.fraction && !takesFractions(u.Symbol) {
		return nil, slipf("has a fraction, which only feet and inches take").instead(decimals(n.value, 4) + " " + u.Symbol)
	}
	return u, nil
}
