package design

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// checker looks for values that cannot be, alone or together. A key that is not
// given is never a mistake here: rules ask for what they need. It takes designs
// that have other mistakes, whose values are then not given.
type checker struct {
	design   *Design
	placed   []place
	byID     map[string]any
	byNoun   map[string][]string // ids of the things that a noun stands for
	units    q.System
	problems []document.Problem
}

// check resolves the links of a design and reports what cannot be.
func check(d *Design) []document.Problem {
	c := &checker{design: d, byID: map[string]any{}, byNoun: map[string][]string{}, units: q.IP}
	if d.Project != nil && d.Project.Units == "SI" {
		c.units = q.SI
	}
	c.placed = placed(d)
	for _, each := range checks {
		each(c)
	}
	d.byID = c.byID
	return c.problems
}

// checks stand in the order in which later ones need what earlier ones found.
var checks = [...]func(*checker){
	(*checker).format, (*checker).crowds, (*checker).ids, (*checker).links, (*checker).references, (*checker).ranges,
	(*checker).walls, (*checker).lines, (*checker).places, (*checker).fittings, (*checker).fans, (*checker).running,
	(*checker).ducts, (*checker).vents, (*checker).measured, (*checker).climate, (*checker).statedDistances, (*checker).dates,
}

// report adds a mistake in the value of a key.
func (c *checker) report(of document.Ref, key, hint, format string, args ...any) {
	if len(c.problems) > document.MaxProblems {
		return
	}
	c.problems = append(c.problems, document.Problem{
		Position: of.At(key),
		Path:     of.KeyPath(key),
		Message:  fmt.Sprintf(format, args...),
		Hint:     hint,
	})
}

// print gives a quantity in the units of the design's reports.
func (c *checker) print(quantity any) string { return q.Format(quantity, c.units) }

// written is the value of a key as the file writes it.
func (c *checker) written(of document.Ref, key string, value any) string {
	if text, ok := of.Text(key); ok {
		return strconv.Quote(text.Value)
	}
	return c.print(value)
}

// near names the id that was probably meant. It gives up where a file has more
// mistakes than are listed.
func (c *checker) near(id string, among []string) string {
	const few = 8
	if len(c.problems) > document.MaxProblems {
		return ""
	}
	if near := document.Near(id, among); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	if len(among) == 0 || len(among) > few {
		return ""
	}
	return "it may be " + quoted(among)
}

func (c *checker) format() {
	if d := c.design; d.Given("format") && d.Format != 1 && d.Format != 0 {
		c.report(d.Ref, "format", "", "found format %d, expected 1", d.Format)
	}
}

// quoted joins ids for a sentence: "a", "b".
func quoted(ids []string) string {
	return `"` + strings.Join(ids, `", "`) + `"`
}
