package quantity

import "strings"

// scanMarked reads "R-8" and "RSI-1.4"; the unit is nil if s is neither.
func scanMarked(s string) (float64, *unit, *slip) {
	symbol, hyphen, value := cutMarked(s)
	if value == "" {
		return 0, nil, nil
	}
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

// cutMarked cuts insulation as it is marked, "R-8", or nearly so: "R8", "r 8". The
// value is empty if s is nothing like that.
func cutMarked(s string) (symbol, hyphen, value string) {
	if s[0] != 'R' && s[0] != 'r' {
		return "", "", "" // as most texts
	}
	for _, mark := range [...]string{"RSI", "R"} {
		if len(s) <= len(mark) || !strings.EqualFold(s[:len(mark)], mark) {
			continue
		}
		symbol, value = s[:len(mark)], s[len(mark):]
		if value[0] == ' ' || value[0] == '-' {
			hyphen, value = value[:1], value[1:]
		}
		if value != "" && (value[0] == '.' || value[0] >= '0' && value[0] <= '9') {
			return symbol, hyphen, value
		}
		return "", "", ""
	}
	return "", "", ""
}
