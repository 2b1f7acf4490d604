package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// slipsBetween counts slips by trying each at the start of both words.
func slipsBetween(a, b string) int {
	if a == "" || b == "" {
		return len(a) + len(b)
	}
	changed := 1
	if a[0] == b[0] {
		changed = 0
	}
	fewest := min(
		slipsBetween(a[1:], b)+1, slipsBetween(a, b[1:])+1, slipsBetween(a[1:], b[1:])+changed)
	if len(a) > 1 && len(b) > 1 && a[0] == b[1] && a[1] == b[0] {
		fewest = min(fewest, slipsBetween(a[2:], b[2:])+1)
	}
	return fewest
}

// words lists all words of so many letters at most.
func words(letters string, longest int) []string {
	list, last := []string{""}, []string{""}
	for range longest {
		var next []string
		for _, word := range last {
			for _, letter := range letters {
				next = append(next, word+string(letter))
			}
		}
		list, last = append(list, next...), next
	}
	return list
}

// TestDistanceIsTheFewestSlips compares with a search over all slips, for all pairs
// of short words.
func TestDistanceIsTheFewestSlips(t *testing.T) {
	all := words("abc", 4)
	assert.Len(t, all, 1+3+9+27+81)
	for _, a := range all {
		for _, b := range all {
			if want := slipsBetween(a, b); distance(a, b) != want {
				t.Fatalf("from %q to %q are %d slips, got %d", a, b, want, distance(a, b))
			}
		}
	}
}

// TestDistanceOfWords checks against the distances that textbooks give: kitten and
// sitting (Wikipedia, Levenshtein distance), ca and abc where no part is edited twice
// (Wikipedia, Damerau-Levenshtein distance); both from memory.
func TestDistanceOfWords(t *testing.T) {
	assert.Equal(t, 3, distance("kitten", "sitting"))
	assert.Equal(t, 3, distance("saturday", "sunday"))
	assert.Equal(t, 3, distance("ca", "abc"))
	assert.Equal(t, 1, distance("cfm", "cmf"))
}
