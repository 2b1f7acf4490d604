package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/expression"
)

// placeKeys are the keys that say where a thing is and how large, the one that a
// designer would change first in front.
var placeKeys = []string{"from_left", "at", "above_grade", "level", "along", "outline", "from", "to",
	"diameter", "width", "height", "wall", "roof", "surface_below"}

// placeReads tells the keys on which a distance rests: those that the design
// gives for the place of each thing.
func placeReads(_ any, arguments []any) []expression.Read {
	var reads []expression.Read
	for _, argument := range arguments {
		if _, ok := argument.(design.Placed); !ok {
			continue
		}
		ref := design.Refer(argument)
		for _, key := range placeKeys {
			if ref.Given(key) {
				reads = append(reads, expression.Read{Ref: ref, Key: key})
			}
		}
	}
	return reads
}
