package quantity

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
)

// Format prints a quantity in a unit of the system, and a number, text or
// yes-or-no as it is. Numbers have three significant digits or more, without
// trailing zeros. An infinite value is "no limit" or, below zero, "not
// permitted"; nil is "not given". Equal values print equally on all machines.
func Format(v any, s System) string {
	return format(v, s, style{})
}

// style is how a value is printed among others.
type style struct {
	extra int     // decimals beyond the usual ones
	ruler float64 // the SI size that chooses the unit; zero: the value's own
}

func format(v any, s System, st style) string {
	switch x := v.(type) {
	case nil:
		return "not given"
	case bool:
		if x {
			return "yes"
		}
		return "no"
	}
	r := reflect.ValueOf(v)
	switch r.Kind() {
	case reflect.Float64, reflect.Float32:
		return formatFloat(r.Float(), kindFor(r.Type()), s, st)
	case reflect.Int, reflect.Int64, reflect.Int32:
		return strconv.FormatInt(r.Int(), 10)
	case reflect.String:
		return r.String()
	case reflect.Pointer:
		if r.IsNil() {
			return "not given"
		}
		return format(r.Elem().Interface(), s, st)
	}
	return fmt.Sprintf("a %s", r.Type())
}

// formatFloat prints a value in SI of a kind; a nil kind is a plain number.
func formatFloat(si float64, k *kind, s System, st style) string {
	switch {
	case math.IsNaN(si):
		return "undetermined"
	case math.IsInf(si, 1):
		return "no limit"
	case math.IsInf(si, -1):
		return "not permitted"
	case st.extra == 0 && math.Abs(si) <= nearZero:
		si = 0
	}
	if k == nil {
		return decimals(si, digitsFor(si, 3)+st.extra)
	}
	if st.ruler == 0 {
		st.ruler = si
	}
	if k.typ == reflect.TypeFor[Length]() && s != SI {
		return formatFeet(si, st)
	}
	d := displayOf(k, s, st.ruler)
	x := d.unit.number(si)
	places := d.places
	if k.typ != temperature {
		places = digitsFor(x, places)
	}
	return d.print(decimals(x, places+st.extra))
}
