package document

import "strings"

const (
	nearWord  = 64   // characters of a word that are looked at
	nearAmong = 2000 // words that are looked at
)

// Near gives the word of a list that is most likely meant by a misspelled one,
// or "" when none is close.
func Near(word string, among []string) string {
	wanted := []rune(strings.ToLower(word))
	if len(wanted) == 0 || len(wanted) > nearWord {
		return ""
	}
	among = among[:min(len(among), nearAmong)]
	best, allowed := "", max(1, (len(wanted)+2)/4)
	for _, each := range among {
		candidate := []rune(strings.ToLower(each))
		if len(candidate) > len(wanted)+allowed || len(wanted) > len(candidate)+allowed {
			continue
		}
		if d := distance(wanted, candidate); d <= allowed {
			best, allowed = each, d-1
		}
	}
	if best == "" {
		return onlyPart(word, among)
	}
	return best
}

// onlyPart gives the one word of a list that the word is a part of, as "steel"
// is of "galvanized-steel".
func onlyPart(word string, among []string) string {
	found := ""
	for _, each := range among {
		if len(word) < 3 || !strings.Contains(strings.ToLower(each), strings.ToLower(word)) {
			continue
		}
		if found != "" {
			return ""
		}
		found = each
	}
	return found
}

// distance counts the letters to add, drop, change, or swap with a neighbour
// that turn a into b (optimal string alignment).
func distance(a, b []rune) int {
	before, above, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		before, above, row = above, row, before
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := 1
			if a[i-1] == b[j-1] {
				change = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+change)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(b)]
}
