package packfmt

import (
	"fmt"
	"strconv"
	"strings"
)

// value writes a value as TOML: a text, a number, or a list.
func value(v any) string {
	switch v := v.(type) {
	case string:
		return quoted(v)
	case []string:
		return list(v)
	case []float64:
		return list(v)
	case []any:
		return list(v)
	case float64:
		return decimal(v)
	}
	return fmt.Sprint(v) // a whole number
}

func list[T any](of []T) string {
	texts := make([]string, len(of))
	for i, v := range of {
		texts[i] = value(v)
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

// decimal never looks like a whole number where it is none, nor the reverse: a
// limit of 5.0 is another kind of number than one of 5 to a reader.
func decimal(v float64) string {
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text
}

// quoted picks the quotes under which a text reads best.
func quoted(s string) string {
	switch {
	case strings.Contains(s, "\n") && !strings.Contains(s, "'''") && !strings.HasSuffix(s, "'"):
		return "'''\n" + s + "'''"
	case strings.ContainsAny(s, "\"\\") && !strings.ContainsAny(s, "'\n\t"):
		return "'" + s + "'"
	}
	return `"` + escapes.Replace(s) + `"`
}

// escapes are all that a pack can hold: other control characters are refused when
// it is loaded.
var escapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`)

// key writes a key, bare where TOML takes it.
func key(name string) string {
	bare := func(r rune) bool {
		return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '_' || r == '-'
	}
	if name != "" && strings.IndexFunc(name, func(r rune) bool { return !bare(r) }) < 0 {
		return name
	}
	return `"` + escapes.Replace(name) + `"`
}
