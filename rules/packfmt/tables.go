package packfmt

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/ventlint/ventlint/rules"
)

// tables writes some tables of a pack, with their cells.
func (p *page) tables(e *rules.Effective, names []string) {
	if len(names) == 0 {
		return
	}
	p.line("\n## Tables")
	for _, name := range names {
		t := e.Tables[name]
		p.line("\n### table %s\n", name)
		from := ""
		if len(e.Head.Extends) > 0 {
			from = fmt.Sprintf(" From `%s`.", t.Pack)
		}
		p.line("**%s.**%s", strings.TrimSuffix(cell(t.Part.Title), "."), from)
		p.basis("Basis", t.Part.Basis)
		p.cells(t.Part)
	}
}

// cells writes the bands of a table, one row each.
func (p *page) cells(t *rules.Table) {
	rows, columns := bands(t.Row), []string{unitWords(t.Unit)}
	corner := cell(t.Row.Input)
	if t.Column != nil {
		columns = bands(t.Column)
		corner = fmt.Sprintf("%s, by %s; %s", corner, cell(t.Column.Input), unitWords(t.Unit))
	}
	p.line("\n| %s | %s |\n|---|%s", corner, strings.Join(columns, " | "), strings.Repeat("---|", len(columns)))
	for i, row := range t.Cells {
		list, ok := row.([]any)
		if !ok {
			list = []any{row}
		}
		texts := make([]string, len(list))
		for k, c := range list {
			texts[k] = cellText(t, c)
		}
		p.line("| %s | %s |", rows[i], strings.Join(texts, " | "))
	}
}

func unitWords(unit string) string {
	if unit == "" {
		return "factor"
	}
	return "in " + unit
}

// bands names the rows or columns of an axis.
func bands(a *rules.Axis) []string {
	before := map[rules.Reading]string{"up-to": "up to ", "from": "from ", "linear": "at "}[a.Read]
	var list []string
	for _, edge := range a.Edges {
		list = append(list, strings.TrimSpace(before+strconv.FormatFloat(edge, 'f', -1, 64)+" "+a.Unit))
	}
	if a.Open {
		list = append(list, "more")
	}
	return list
}

func cellText(t *rules.Table, c any) string {
	switch {
	case c == t.Never && t.Never != "":
		return "not permitted"
	case c == t.Unlimited && t.Unlimited != "":
		return "no limit"
	}
	return cell(fmt.Sprint(c))
}
