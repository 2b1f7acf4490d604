package checker

import (
	"math"
	"reflect"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
)

// level is the weight of an outcome that asks something of the designer.
func level(rule *rules.Compiled, o rules.Outcome) rules.Level {
	switch {
	case o == rules.Open && rule.OpenLevel != "":
		return rule.OpenLevel
	case o.Problem():
		return rule.Level
	}
	return ""
}

// idOf is the id of a thing; empty for one without, such as a filter.
func idOf(thing any) string {
	id, _ := design.Refer(thing).Text("id")
	return id.Value
}

// limits prints the limits that a rule compares with, each with its basis.
func limits(pack *rules.Effective, rule *rules.Compiled, units quantity.System) []Limit {
	var list []Limit
	for _, name := range rule.LimitsUsed() {
		limit := pack.Limits[name]
		value := "not set"
		if limit.Part.Value != nil {
			value = quantity.Format(limit.Part.Value.V, units)
		}
		list = append(list, Limit{Name: name, Title: limit.Part.Title, Value: value, Pack: limit.Pack, Basis: limit.Part.Basis})
	}
	return list
}

// advice is the rule's remedy for no design in particular: limits are filled in,
// other computed parts keep their names.
func advice(rule *rules.Compiled, limits []Limit) string {
	text := rule.Rule.Remedy
	for _, l := range limits {
		text = strings.ReplaceAll(text, "{limit."+l.Name+"}", l.Value)
	}
	return text
}

// comparisons are those that justify the outcome; a condition that merely holds
// says nothing about the design.
func comparisons(j rules.Judgement, units quantity.System) []Comparison {
	parts := j.Require.Parts
	if j.Outcome == rules.NotApplicable {
		parts = j.When.Parts
	}
	var list []Comparison
	for _, p := range parts {
		list = append(list, comparison(p, units))
	}
	return list
}

func comparison(p expression.Comparison, units quantity.System) Comparison {
	c := Comparison{Text: p.Text, Operator: p.Operator, Holds: p.Truth == expression.True}
	if p.Found != nil && p.Required != nil {
		c.Found, c.Required = pair(p.Found, p.Required, units)
	}
	if p.Difference != nil && p.Truth == expression.False {
		c.Difference = quantity.Format(magnitude(p.Difference), units)
	}
	for i, of := range p.Of {
		if i > 0 {
			c.Of += ", "
		}
		c.Of += design.Label(of)
	}
	return c
}

// magnitude is a value without its sign, of the same type.
func magnitude(v any) any {
	r := reflect.ValueOf(v)
	if r.CanFloat() {
		return reflect.ValueOf(math.Abs(r.Float())).Convert(r.Type()).Interface()
	}
	return v
}

func missing(j rules.Judgement) []MissingInput {
	if j.Outcome != rules.Open {
		return nil
	}
	var list []MissingInput
	seen := map[string]bool{}
	for _, e := range []expression.Explanation{j.When, j.Require} {
		if e.Truth != expression.Unknown {
			continue
		}
		for _, m := range e.Missing {
			key := m.Ref.KeyName(m.Key)
			if !seen[key] {
				seen[key] = true
				list = append(list, MissingInput{key, m.Ref.Position()})
			}
		}
	}
	return list
}

// tellingRead is the key, of all that the comparisons read, that shows best what
// is wrong: one of the subject before one of another thing, a figure before a
// word, which often only picks things, and the first of equals. A word of another
// thing shows nothing.
func tellingRead(j rules.Judgement) (best expression.Read, ok bool) {
	var subject document.Ref // of a rule about the dwelling, everything is a part
	if len(j.Subjects) > 0 {
		subject = design.Refer(j.Subjects[0])
	}
	most := 0
	for _, p := range j.Require.Parts {
		for _, read := range p.Reads {
			if w := telling(subject, read); w > most {
				best, most, ok = read, w, true
			}
		}
	}
	return best, ok
}

// telling weighs a key that was read; 0 where it shows nothing.
func telling(subject document.Ref, read expression.Read) int {
	weight := 0
	switch {
	case !read.Ref.Leaf(read.Key):
		return 0
	case strings.HasPrefix(read.Ref.Pointer()+"/", subject.Pointer()+"/"):
		weight += 2
	}
	if !isWord(read) {
		weight++
	}
	return weight
}

// isWord tells whether a key holds a text that is no quantity.
func isWord(read expression.Read) bool {
	text, isText := read.Ref.Text(read.Key)
	if !isText {
		return false
	}
	_, err := quantity.Parse(text.Value)
	return err != nil
}
