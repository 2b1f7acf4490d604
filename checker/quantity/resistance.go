package quantity

import "strings"

// marked is insulation as it is marked, "R-8", or nearly so: "R8", "r 8".
var marked = pattern(`^((?i)R|RSI)([ -]?)([0-9.].*)$`)

// scanMarked reads "R-8" and "RSI-1.4"; the unit is nil if s is neither.
func scanMarked(s string) (float64, *unit, *slip) {
	if s[0] != 'R' && s[0] != 'r' {
		return 0, nil, nil
	}
	parts := marked().FindStringSubmatch(s)
	if parts == nil {
		return 0, nil, nil
	}
	symbol, hyphen, value := parts[1], parts[2], parts[3]
	u := unitBySymbol[strings.ToUpper(symbol)]
	n, rest, wrong := scanNumber(value)
	switch {
	case wrong != nil:
		return 0, u, wrong
	case rest != "":
		return 0, u, slipf("has %q after its number", rest)
	case symbol != u.Symbol || hyphen != "-":
		return 0, u, slipf("is not how insulation is marked").instead(u.Symbol + "-" + value)
	}
	return u.si(n.value), u, nil
}
