package facts

import (
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/expression"
)

// placeKeys are the keys that say where a thing is and how large, the one that a
// designer would change first in front.
var placeKeys = []string{"from_left", "at", "above_grade", "level", "along", "outline", "from", "to",
	"diameter", "width", "height", "wall", "roof", "surface_below"}

// placeReads tells the keys on which a distance rests: those that the design
// gives for the place of each thing.
func placeReads(facts any, arguments []any) []expression.Read {
	var room [2][]expression.Read
	ofEach := room[:0]
	for _, argument := range arguments {
		if thing, ok := argument.(design.Placed); ok {
			ofEach = append(ofEach, facts.(*Facts).placeReads(thing))
		}
	}
	return slices.Concat(ofEach...)
}

// placeReads are those of one thing.
func (f *Facts) placeReads(thing design.Placed) []expression.Read {
	reads, known := f.reads[thing]
	if !known {
		ref := design.Refer(thing)
		for _, key := range placeKeys {
			if ref.Given(key) {
				reads = append(reads, expression.Read{Ref: ref, Key: key})
			}
		}
		f.reads[thing] = reads
	}
	return reads
}
