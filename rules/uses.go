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
	u.limits, u.tables = []string{}, []string{}
	for _, text := range c.texts() {
		for word, rest := range words(text) {
			u.limits = limitName.gather(u.limits, word, rest)
			u.tables = tableName.gather(u.tables, word, rest)
		}
	}
	for _, text := range []string{c.When, c.Require} {
		for word, rest := range words(text) {
			if strings.HasPrefix(rest, "(") && slices.Contains(measuring, word) {
				u.distances = gather(u.distances, word)
			}
		}
	}
}

// namesIn lists the names of a kind that texts use, sorted.
func namesIn(kind named, texts ...string) []string {
	var names []string
	for _, text := range texts {
		for word, rest := range words(text) {
			names = kind.gather(names, word, rest)
		}
	}
	return names
}

// gather adds the name that stands behind the word of its kind.
func (n named) gather(names []string, word, rest string) []string {
	if word != string(n) || !strings.HasPrefix(rest, ".") {
		return names
	}
	name := wordAt(rest[1:])
	if name == "" || isDigit(name[0]) {
		return names
	}
	return gather(names, name)
}

// gather adds a name to a sorted list that holds each once.
func gather(names []string, name string) []string {
	at, known := slices.BinarySearch(names, name)
	if known {
		return names
	}
	return slices.Insert(names, at, name)
}

// words gives what expressions may take as a name or number in a text, each with
// what follows it.
func words(text string) func(yield func(word, rest string) bool) {
	return func(yield func(word, rest string) bool) {
		for at := 0; at < len(text); at++ {
			if !isWordByte(text[at]) {
				continue
			}
			word := wordAt(text[at:])
			if at += len(word); !yield(word, text[at:]) {
				return
			}
		}
	}
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
