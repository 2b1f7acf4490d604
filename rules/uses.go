package rules

import "strings"

// uses is what a rule names in its texts: found once, since reports ask for each
// result.
type uses struct {
	limits, tables []string // decisive or printed
	distances      []string // functions that measure on the site, of when and require
}

// named is what stands before a name of one kind in a text of a rule.
type named string

const (
	limitName named = "limit."
	tableName named = "table."
)

var measuring = []string{"clear_height", "distance", "horizontal", "rise", "taut"}

func (c *Compiled) findUses() {
	c.uses = uses{limits: namesIn(limitName, c.texts()...), tables: namesIn(tableName, c.texts()...)}
	for _, function := range measuring {
		if calls(function, c.When) || calls(function, c.Require) {
			c.uses.distances = append(c.uses.distances, function)
		}
	}
}

// namesIn lists the names of a kind that texts use, sorted.
func namesIn(kind named, texts ...string) []string {
	seen := map[string]bool{}
	for _, text := range texts {
		for rest := range beginnings(string(kind), text) {
			if name := word(rest); name != "" && !isDigit(name[0]) {
				seen[name] = true
			}
		}
	}
	return sortedKeys(seen)
}

// calls tells whether a text calls a function.
func calls(function, text string) bool {
	for range beginnings(function+"(", text) {
		return true
	}
	return false
}

// beginnings gives what follows each place where a mark stands and is not the
// end of a longer word.
func beginnings(mark, text string) func(yield func(rest string) bool) {
	return func(yield func(string) bool) {
		for at := 0; ; {
			next := strings.Index(text[at:], mark)
			if next < 0 {
				return
			}
			at += next
			part := at > 0 && isWordByte(text[at-1])
			if at += len(mark); !part && !yield(text[at:]) {
				return
			}
		}
	}
}

// word is what a text begins with that expressions take as a name or number.
func word(text string) string {
	length := 0
	for length < len(text) && isWordByte(text[length]) {
		length++
	}
	return text[:length]
}

func isWordByte(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || isDigit(c) || c == '_'
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
