package design

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
)

// ids refuses an id that is given twice or could not be part of a path.
func (c *checker) ids() {
	things := c.design.Things()
	slices.SortStableFunc(things, func(a, b any) int {
		p, q := Refer(a).At("id"), Refer(b).At("id")
		return cmp.Or(cmp.Compare(p.Line, q.Line), cmp.Compare(p.Column, q.Column))
	})
	for _, t := range things {
		id, ref := t.(named).thing().ID, Refer(t)
		first := c.byID[id]
		switch {
		case !ref.Given("id"): // a mistake that the decoder reports
		case !isID(id):
			if _, ok := ref.Text("id"); ok {
				c.report(ref, "id", "", "found the id %.64q, expected letters, digits, - and _, at most %d", id, longestID)
			}
		case first != nil:
			c.report(ref, "id", "", "id %q is given twice, first on line %d", id, Refer(first).At("id").Line)
		default:
			c.byID[id] = t
		}
	}
}

// longestID is in bytes: ids stand in paths and in one line of a report.
const longestID = 64

func isID(id string) bool {
	return id != "" && len(id) <= longestID && strings.IndexFunc(id, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' && r != '_'
	}) < 0
}
