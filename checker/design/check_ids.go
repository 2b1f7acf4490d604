package design

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"github.com/ventlint/ventlint/checker/document"
)

// ids refuses an id that is given twice or could not be part of a path.
func (c *checker) ids() {
	things := inFileOrder(c.design.Things())
	c.byID = make(map[string]any, len(things))
	for _, t := range things {
		id := t.thing.(named).thing().ID
		first := c.byID[id]
		switch {
		case !isID(id):
			if _, ok := t.ref.Text("id"); ok {
				c.report(t.ref, "id", "", "found the id %.64q, expected letters, digits, - and _, at most %d", id, longestID)
			}
		case first != nil:
			c.report(t.ref, "id", "", "id %q is given twice, first on line %d", id, Refer(first).At("id").Line)
		default:
			c.byID[id] = t.thing
		}
	}
}

// identified is a thing and where its id stands.
type identified struct {
	at    int
	ref   document.Ref
	thing any
}

// inFileOrder leaves things without an id out, which the decoder has reported.
func inFileOrder(things []any) []identified {
	list := make([]identified, 0, len(things))
	for _, t := range things {
		if ref := Refer(t); ref.Given("id") {
			list = append(list, identified{ref.Offset("id"), ref, t})
		}
	}
	slices.SortFunc(list, func(a, b identified) int { return cmp.Compare(a.at, b.at) })
	return list
}

// longestID is in bytes: ids stand in paths and in one line of a report.
const longestID = 64

func isID(id string) bool {
	return id != "" && len(id) <= longestID && strings.IndexFunc(id, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' && r != '_'
	}) < 0
}
