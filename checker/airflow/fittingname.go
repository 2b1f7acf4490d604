package airflow

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

// UnknownFitting is a name without a published coefficient.
type UnknownFitting struct {
	Name string
	Near []string // known names that share words with it, nearest first
}

// Error asks for a figure and names near fittings.
func (e *UnknownFitting) Error() string {
	ask := fmt.Sprintf("fitting %q has no known loss, expected its loss coefficient or equivalent length", e.Name)
	if len(e.Near) == 0 {
		return ask
	}
	return ask + ", or a name such as " + quoted(e.Near)
}

const mostName = 200 // bytes of a name that are read

// FittingNamed gives a fitting of the table by its name. Order of words, case and
// punctuation do not matter, nor do "degrees", "of", "with" and the like: "Elbow,
// 90 degrees, smooth, r/D 1.5" is known. Any other name is an *UnknownFitting.
func FittingNamed(name string) (KnownFitting, error) {
	words := wordsOf(name)
	known, _ := fittingWords()
	for i, k := range knownFittings() {
		if slices.Equal(words, known[i]) {
			return k, nil
		}
	}
	return KnownFitting{}, &UnknownFitting{name, nearFittings(words)}
}

// fittingWords are the words of each known name, and all of them once.
var fittingWords = sync.OnceValues(func() (names [][]string, all []string) {
	for _, k := range knownFittings() {
		words := wordsOf(k.Name)
		names = append(names, words)
		all = append(all, words...)
	}
	slices.Sort(all)
	return names, slices.Compact(all)
})

var (
	filler = []string{"a", "an", "and", "by", "deg", "degree", "degrees", "duct", "in", "into", "of", "the", "to", "with"}
	alike  = map[string]string{"mitred": "mitered", "miter": "mitered", "mitre": "mitered", "vaned": "vanes", "vane": "vanes",
		"piece": "pieces", "entrance": "entry", "bend": "elbow", "rd": "r/d", "hw": "h/w"}
)

// wordsOf gives the words and numbers of a name in sorted order, each in one
// spelling.
func wordsOf(name string) []string {
	name = strings.ToLower(name[:min(len(name), mostName)])
	var words []string
	for _, w := range strings.FieldsFunc(apart(name), func(r rune) bool { return !letterOf(r) && !digitOf(r) }) {
		if same, ok := alike[w]; ok {
			w = same
		}
		if x, err := strconv.ParseFloat(w, 64); err == nil {
			w = strconv.FormatFloat(x, 'g', -1, 64)
		}
		if !slices.Contains(filler, w) {
			words = append(words, w)
		}
	}
	slices.Sort(words)
	return words
}

// apart puts a blank where a number meets a word, as in "90deg".
func apart(name string) string {
	var b strings.Builder
	var before rune
	for _, r := range name {
		if digitOf(before) && letterOf(r) || letterOf(before) && digitOf(r) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		before = r
	}
	return b.String()
}

func digitOf(r rune) bool  { return r >= '0' && r <= '9' || r == '.' }
func letterOf(r rune) bool { return unicode.IsLetter(r) || r == '/' }
