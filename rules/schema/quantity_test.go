package schema

import (
	"reflect"
	"regexp"
	"strings"

	"github.com/ventlint/ventlint/checker/quantity"
)

// The patterns of quantities accept every text that the parser accepts: no valid
// file is refused. They accept a little more, since no pattern can compute: fewer
// than twelve inches, a fraction below one, a temperature above absolute zero.
// They use what the regular expressions of all common languages share.

// longest is in bytes, and so no valid text has more characters.
const longest = 80

const (
	space    = "[\\t-\\r \u0085\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]"
	blanks   = space + "*"
	gap      = space + "+"
	sign     = `[+−-]?`
	hyphen   = `[−-]`
	decimal  = `([0-9]+(\.[0-9]+)?|\.[0-9]+)`
	vulgar   = `[½¼¾⅛⅜⅝⅞]`
	slashed  = `[0-9]+[/⁄]0*[1-9][0-9]*`
	fraction = `(([0-9]+(` + gap + `|` + hyphen + `))?` + slashed + `|([0-9]+` + blanks + `)?` + vulgar + `)`
	number   = `(` + fraction + `|` + decimal + `)`
	footMark = `['′’]`
	inchMark = `(["″”]|′′|'')`
	inchUnit = `(in|inch|` + inchMark + `)`
	// what stands between feet and inches: a blank, or the hyphen of drawings
	afterMark = `(` + blanks + `|` + hyphen + `|` + gap + hyphen + gap + `)`
	afterFeet = `(` + gap + `|` + hyphen + `|` + gap + hyphen + gap + `)`
	// a fraction sign brings a blank of its own
	signed   = `(` + footMark + `|ft)(` + gap + hyphen + `)?` + blanks + vulgar
	compound = `[0-9]+` + blanks + `((` + footMark + afterMark + `|ft` + afterFeet + `)` + number + `|` + signed + `)` + blanks + inchUnit
)

// takesFractions are the units that may follow a fraction.
var takesFractions = []string{"ft", "in", "inch", "in/ft"}

func quantitySchema(t reflect.Type) object {
	return object{
		"type": "string", "pattern": whole(forms(t)), "maxLength": longest,
		"description": "a " + quantity.NameOf(t) + " with its unit: " + strings.Join(symbols(t), ", "),
		"examples":    []any{quantity.ExampleOf(t)},
	}
}

// whole makes a pattern of alternatives, for a whole text.
func whole(forms []string) string {
	return "^" + blanks + "(" + strings.Join(forms, "|") + ")" + blanks + "$"
}

// anyPattern accepts a quantity of any kind.
func anyPattern() string {
	var all []string
	for _, t := range kinds() {
		all = append(all, forms(t)...)
	}
	return whole(all)
}

// kinds lists the types of quantities in the order of their units.
func kinds() []reflect.Type {
	var list []reflect.Type
	for _, u := range quantity.Units() {
		if len(list) == 0 || list[len(list)-1] != u.Type {
			list = append(list, u.Type)
		}
	}
	return list
}

// symbols lists the spellings of the units of a type.
func symbols(t reflect.Type) []string {
	var list []string
	for _, u := range quantity.Units() {
		if u.Type == t {
			list = append(list, u.Symbol)
		}
	}
	if t == reflect.TypeFor[quantity.Slope]() {
		list = append(list, "%")
	}
	return list
}

// forms are the ways to write a quantity of a type.
func forms(t reflect.Type) []string {
	var plain, broken []string
	for _, symbol := range symbols(t) {
		spelled := strings.ReplaceAll(regexp.QuoteMeta(symbol), " ", gap)
		plain = append(plain, spelled)
		for _, takes := range takesFractions {
			if symbol == takes {
				broken = append(broken, spelled)
			}
		}
	}
	if t == reflect.TypeFor[quantity.Length]() {
		marks := []string{footMark, inchMark}
		plain, broken = append(plain, marks...), append(broken, marks...)
	}
	list := []string{sign + decimal + blanks + "(" + strings.Join(plain, "|") + ")"}
	if broken != nil {
		list = append(list, sign+fraction+blanks+"("+strings.Join(broken, "|")+")")
	}
	switch t {
	case reflect.TypeFor[quantity.Length]():
		list = append(list, sign+compound)
	case reflect.TypeFor[quantity.ThermalResistance]():
		list = append(list, "(R|RSI)"+hyphen+number)
	}
	return list
}
