package airflow

import (
	"cmp"
	"slices"
	"strconv"

	"github.com/ventlint/ventlint/checker/document"
)

const mostNear = 6

// nearFittings ranks the known names by the words they share with the wanted
// ones, misspelled words as the nearest known.
func nearFittings(wanted []string) []string {
	names, vocabulary := fittingWords()
	for i, w := range wanted {
		if near := document.Near(w, vocabulary); near != "" && !isNumber(w) {
			wanted[i] = near
		}
	}
	type rank struct{ name, shared, words int }
	var ranks []rank
	for i, words := range names {
		shared, named := 0, false
		for _, w := range words {
			if slices.Contains(wanted, w) {
				shared, named = shared+1, named || !isNumber(w)
			}
		}
		if named {
			ranks = append(ranks, rank{i, shared, len(words)})
		}
	}
	slices.SortStableFunc(ranks, func(a, b rank) int {
		return cmp.Or(cmp.Compare(b.shared, a.shared), cmp.Compare(a.words, b.words))
	})
	var near []string
	for _, r := range ranks[:min(len(ranks), mostNear)] {
		near = append(near, knownFittings()[r.name].Name)
	}
	return near
}

func isNumber(w string) bool {
	_, err := strconv.ParseFloat(w, 64)
	return err == nil
}
