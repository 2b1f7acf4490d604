package quantity

import (
	"slices"
	"strconv"
	"strings"
)

// whyUnknown tells a second number, or words after the unit, from a unit that
// is not known.
func whyUnknown(n number, rest string, want *kind) *slip {
	if startsNumber(strings.TrimLeft(rest, "+-")) {
		return slipf("has more than one number")
	}
	if same := sameUnits(rest); len(same) > 0 {
		return unknownUnit(rest, same, want)
	}
	for i := strings.LastIndex(rest, " "); i > 0; i = strings.LastIndex(rest[:i], " ") {
		if unitBySymbol[rest[:i]] != nil {
			return slipf("has %q after %q", rest[i+1:], n.text+" "+rest[:i])
		}
	}
	return unknownUnit(rest, nearUnits(rest, want), want)
}

// unknownUnit says which units there are, or which one was probably meant.
func unknownUnit(symbol string, near []string, want *kind) *slip {
	wrong := slipf("has the unknown unit %q", symbol)
	switch {
	case len(near) > 0:
		wrong.fix = "did you mean " + quoted(near) + "?"
	case want != nil:
		wrong.fix = "expected " + article(want.name) + " in " + quoted(symbolsOf(want))
	}
	return wrong
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

// quoted joins texts for a sentence: "a", "b" or "c".
func quoted(texts []string) string {
	var b strings.Builder
	for i, text := range texts {
		switch {
		case i > 0 && i == len(texts)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(text))
	}
	return b.String()
}

// sameUnits gives the units that a spelling stands for, differently written.
func sameUnits(symbol string) []string {
	folded := fold(symbol)
	if known, ok := foreign()[folded]; ok {
		return strings.Fields(known)
	}
	return matching(func(u *unit) bool { return fold(u.Symbol) == folded })
}

// nearUnits gives the units that a slip of the hand may have missed: those of
// the wanted kind, if there is one.
func nearUnits(symbol string, want *kind) []string {
	folded := fold(symbol)
	return matching(func(u *unit) bool {
		return (want == nil || u.kind == want) && distance(fold(u.Symbol), folded) <= slips(folded)
	})
}

// matching lists at most three units in their printed spelling.
func matching(near func(*unit) bool) []string {
	var symbols []string
	for i := range inventory {
		if u := &inventory[i]; u.canonical && near(u) {
			symbols = append(symbols, u.Symbol)
		}
	}
	return symbols[:min(3, len(symbols))]
}

// slips is how many slips of the hand a spelling of this length may have.
func slips(s string) int {
	if len(s) < 3 {
		return 0
	}
	return 1 + len(s)/6
}

var unpunctuated = strings.NewReplacer(" per ", "/", " ", "", ".", "", "^", "", "·", "", "²", "2", "³", "3")

// fold drops what people spell differently: case, blanks, points and "^".
func fold(symbol string) string {
	return strings.ToLower(unpunctuated.Replace(symbol))
}

// distance counts the slips that turn one spelling into the other: a letter
// added, dropped or changed, or two neighbours swapped.
func distance(a, b string) int {
	var before []int
	above := make([]int, len(b)+1)
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
