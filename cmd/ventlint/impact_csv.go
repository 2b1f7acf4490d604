package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/ventlint/ventlint/checker/impact"
	"github.com/ventlint/ventlint/reportfmt"
)

// impactCSV writes one table for spreadsheets: what a row is about, its name, the
// states, how many designs, and more words. Every cell is quoted.
func impactCSV(w writer, d *impact.Document) error {
	row(w, "about", "name", "from", "to", "designs", "detail")
	for _, c := range d.Designs {
		row(w, "designs", "", string(c.From), string(c.To), strconv.Itoa(c.Designs), "")
	}
	for _, r := range d.Rules {
		for _, c := range r.Cases {
			row(w, "rule", r.Rule, string(c.From), string(c.To), strconv.Itoa(c.Designs), r.Title)
		}
		if n := r.Nearest; n != nil {
			row(w, "narrow pass", r.Rule, "", "", strconv.Itoa(r.Near),
				fmt.Sprintf("nearest: %s, %s: %s %s %s", n.Design, n.Subjects, n.Found, n.Operator, n.Required))
		}
	}
	for _, c := range d.Changed.Listed {
		var rules []string
		for _, r := range c.Rules {
			rules = append(rules, fmt.Sprintf("%s: %s -> %s", r.Rule, r.From, r.To))
		}
		row(w, "changed design", c.Design, string(c.From), string(c.To), "1", strings.Join(rules, "; "))
	}
	for _, f := range d.Failed.Listed {
		row(w, "not judged", f.Design, "", "", "1", f.Problem)
	}
	more(w, "changed design", d.Changed.Count-len(d.Changed.Listed))
	more(w, "not judged", d.Failed.Count-len(d.Failed.Listed))
	return nil
}

func more(w writer, about string, n int) {
	if n > 0 {
		row(w, about, "", "", "", strconv.Itoa(n), "not listed")
	}
}

// row quotes all cells. A text that a spreadsheet would compute has an apostrophe
// before it.
func row(w writer, cells ...string) {
	for i, cell := range cells {
		cell = strings.Join(strings.Fields(reportfmt.Visible(cell)), " ")
		if cell != "" && strings.ContainsAny(string([]rune(cell)[:1]), "=+-@\uff1d\uff0b\uff0d\uff20") {
			cell = "'" + cell
		}
		cells[i] = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
	}
	fmt.Fprintln(w, strings.Join(cells, ","))
}
