package quantity

import (
	"fmt"
	"slices"
	"strings"
)

// unknownUnit is the error for a unit that is not in the inventory.
type unknownUnit struct{ symbol string }

func (e *unknownUnit) Error() string { return fmt.Sprintf("has the unknown unit %q", e.symbol) }

// within says which units there are, or which one was probably meant.
func (e *unknownUnit) within(text string, want *kind) error {
	if near := nearUnits(e.symbol, want); len(near) > 0 {
		return fmt.Errorf("%q %w, did you mean %s?", text, e, enumerate(near))
	}
	if want == nil {
		return fmt.Errorf("%q %w, expected %s", text, e, want.describe())
	}
	return fmt.Errorf("%q %w, expected %s in %s", text, e, article(want.name), enumerate(symbolsOf(want)))
}

// symbolsOf lists the units of a kind, each in its printed spelling.
func symbolsOf(k *kind) []string {
	var symbols []string
	for _, u := range inventory {
		if u.canonical && u.kind == k {
			symbols = append(symbols, u.Symbol)
		}
	}
	return symbols
}

// enumerate joins words for a sentence: "a, b or c".
func enumerate(words []string) string {
	last := len(words) - 1
	if last == 0 {
		return words[0]
	}
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// nearUnits proposes at most three units for a spelling that is not known,
// those of the wanted kind before all others.
func nearUnits(symbol string, want *kind) []string {
	folded := fold(symbol)
	if known, ok := foreign[folded]; ok {
		return []string{known}
	}
	for _, near := range []func(*unit) bool{
		func(u *unit) bool { return fold(u.Symbol) == folded },
		func(u *unit) bool { return distance(fold(u.Symbol), folded) <= slips(folded) },
	} {
		if list := matching(want, near); len(list) > 0 {
			return list
		}
	}
	return nil
}

func matching(want *kind, near func(*unit) bool) []string {
	var wanted, others []string
	for _, u := range inventory {
		switch {
		case !u.canonical || !near(u):
		case u.kind == want:
			wanted = append(wanted, u.Symbol)
		default:
			others = append(others, u.Symbol)
		}
	}
	if len(wanted) > 0 {
		others = wanted
	}
	return others[:min(3, len(others))]
}

// slips is how many slips of the hand a spelling of this length may have.
func slips(s string) int {
	if len(s) < 3 {
		return 0
	}
	return 1 + len(s)/6
}

// fold drops what people spell differently: case, blanks, points and "^".
func fold(symbol string) string {
	return strings.ToLower(strings.NewReplacer(" ", "", ".", "", "^", "", "·", "", "²", "2", "³", "3", " per ", "/").Replace(symbol))
}

// foreign holds folded spellings from other habits, and the unit they mean.
var foreign = map[string]string{
	"feet": "ft", "foot": "ft", "inches": "in", "meter": "m", "meters": "m", "metre": "m", "metres": "m", "yards": "yd",
	"sqft": "ft2", "sf": "ft2", "squarefeet": "ft2", "sqin": "in2", "sqm": "m2",
	"cf": "ft3", "cuft": "ft3", "cubicfeet": "ft3", "liter": "L", "liters": "L", "litre": "L", "litres": "L",
	"ft3/min": "cfm", "cf/m": "cfm", "lps": "L/s", "cmh": "m3/h", "m3/hr": "m3/h", "mps": "m/s",
	"wc": "inwc", "wg": "inwc", "inwg": "inwc", "inh2o": "inwc", "iwc": "inwc", "pascal": "Pa", "pascals": "Pa",
	"fahrenheit": "F", "celsius": "C", "deg": `degF" or "degC`, "°": `°F" or "°C`, "kelvin": "K",
	"watt": "W", "watts": "W", "btu": "Btu/h", "btuh": "Btu/h", "btu/hr": "Btu/h", "mbh": "kBtu/h", "kbtuh": "kBtu/h",
	"sec": "s", "second": "s", "seconds": "s", "minute": "min", "minutes": "min", "mins": "min",
	"hr": "h", "hrs": "h", "hour": "h", "hours": "h", "day": "d", "days": "d",
	"ach50": "ACH", "airchanges": "ACH", "airchanges/h": "ACH", "percent": "%", "pct": "%",
	"db": "dBA", "db(a)": "dBA", "deltaf": "dF", "δf": "dF", "deltac": "dC", "δc": "dC", "δk": "K",
	"lbs": "lb", "pound": "lb", "pounds": "lb", "kgs": "kg", "kilograms": "kg",
}

// distance counts the slips that turn one spelling into the other: a letter
// added, dropped or changed, or two neighbours swapped.
func distance(a, b string) int {
	before, above := make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range above {
		above[j] = j
	}
	for i := range len(a) {
		row := slices.Repeat([]int{i + 1}, len(b)+1)
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(above[j+1]+1, row[j]+1, above[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, above = above, row
	}
	return above[len(b)]
}
