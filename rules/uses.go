package rules

import (
	"slices"
	"strings"
	"sync"
)

// uses is what a rule names in its texts: found when it is first asked for, and
// once, since reports ask for each result.
type uses struct {
	once           sync.Once
	limits, tables []string // decisive or printed
	distances      []string // functions that measure on the site, of when and require
}

// named is the word before the names of one kind in a text of a rule.
type named string

const (
	limitName named = "limit"
	tableName named = "table"
)

var measuring = []string{"clear_height", "distance", "horizontal", "rise", "taut"}

func (c *Compiled) used() *uses {
	c.uses.once.Do(func() { c.uses.find(c) })
	return c.uses
}

func (u *uses) find(c *Compiled) {
	texts := c.texts()
	u.limits, u.tables = namesIn(limitName, texts...), namesIn(tableName, texts...)
	for _, text := range []string{c.When, c.Require} {
		for before := range parts(text, '(') {
			if function := wordBefore(before); slices.Contains(measuring, function) {
				u.distances = gather(u.distances, function)
			}
		}
	}
}

// namesIn lists the names of a kind that texts use, sorted.
func namesIn(kind named, texts ...string) []string {
	names := []string{}
	for _, text := range texts {
		for before, after := range parts(text, '.') {
			if wordBefore(before) != string(kind) {
				continue
			}
			if name := wordAt(after); name != "" && !isDigit(name[0]) {
				names = gather(names, name)
			}
		}
	}
	return names
}

// gather adds a name to a sorted list that holds each once.
func gather(names []string, name string) []string {
	at, known := slices.BinarySearch(names, name)
	if known {
		return names
	}
	return slices.Insert(names, at, name)
}

// parts gives what stands before and after each place of a mark in a text.
func parts(text string, mark byte) func(yield func(before, after string) bool) {
	return func(yield func(before, after string) bool) {
		for at := 0; ; at++ {
			next := strings.IndexByte(text[at:], mark)
			if at += next; next < 0 || !yield(text[:at], text[at+1:]) {
				return
			}
		}
	}
}

// wordBefore is what a text ends with that expressions take as a name or number.
func wordBefore(text string) string {
	from := len(text)
	for from > 0 && isWordByte(text[from-1]) {
		from--
	}
	return text[from:]
}

// wordAt is what a text begins with that expressions take as a name or number.
func wordAt(text string) string {
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
