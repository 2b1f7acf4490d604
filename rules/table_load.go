package rules

import (
	"fmt"
	"math"
	"reflect"

	"github.com/ventlint/ventlint/checker/quantity"
)

// unit is what a unit symbol of a table stands for; an empty symbol is a plain
// number.
type unit struct {
	kind          reflect.Type
	scale, offset float64
}

func unitOf(symbol string) (unit, error) {
	if symbol == "" {
		return unit{kind: reflect.TypeFor[float64](), scale: 1}, nil
	}
	if u, ok := quantity.UnitOf(symbol); ok {
		return unit{u.Type, u.Scale, u.Offset}, nil
	}
	return unit{}, fmt.Errorf("unknown unit %q", symbol)
}

func unitSymbols() []string {
	var symbols []string
	for _, u := range quantity.Units() {
		symbols = append(symbols, u.Symbol)
	}
	return symbols
}

func rising(edges []float64) bool {
	for i := 1; i < len(edges); i++ {
		if edges[i] <= edges[i-1] {
			return false
		}
	}
	return true
}

func (u unit) si(v float64) float64 { return v*u.scale + u.offset }

// prepare turns a table as written into cells in SI; mistakes go to report.
func (t *Table) prepare(report *mistakes) {
	cells, err := unitOf(t.Unit)
	if err != nil {
		report.add(t.At("value"), t.KeyPath("value"), err.Error(), report.near(t.Unit, unitSymbols()))
		return
	}
	t.result = cells.kind
	before := report.count()
	t.Row.prepare(report)
	t.Column.prepare(report)
	if report.count() > before {
		return // what an axis asks for is not known
	}
	rows := t.rows(report)
	if report.count() > before {
		return
	}
	t.values = make([][]float64, len(rows))
	for i, row := range rows {
		t.values[i] = t.cells(row, cells, report)
	}
}

func (a *Axis) prepare(report *mistakes) {
	if a == nil {
		return
	}
	u, err := unitOf(a.Unit)
	if err != nil {
		report.add(a.At("unit"), a.KeyPath("unit"), err.Error(), report.near(a.Unit, unitSymbols()))
	}
	a.kind = u.kind
	if len(a.Edges) == 0 || !rising(a.Edges) {
		report.add(a.At("edges"), a.KeyPath("edges"), "edges must be rising numbers, at least one", "")
	}
	if a.Open && a.Read != "up-to" {
		report.add(a.At("open"), a.KeyPath("open"), "an open last band needs read = \"up-to\"", "")
	}
	a.edges = make([]float64, len(a.Edges))
	for i, e := range a.Edges {
		a.edges[i] = u.si(e)
	}
}

// rows gives the cells as rows, also when the table has one axis only.
func (t *Table) rows(report *mistakes) [][]any {
	wrong := func(what string, found, wanted int) {
		report.add(t.At("cells"), t.KeyPath("cells"), fmt.Sprintf("found %d %s, expected %d", found, what, wanted), "")
	}
	if len(t.Cells) != t.Row.bands() {
		wrong("rows of cells", len(t.Cells), t.Row.bands())
		return nil
	}
	rows := make([][]any, len(t.Cells))
	for i, c := range t.Cells {
		if t.Column == nil {
			rows[i] = []any{c}
			continue
		}
		row, ok := c.([]any)
		if !ok || len(row) != t.Column.bands() {
			wrong(fmt.Sprintf("cells in row %d", i+1), len(row), t.Column.bands())
			return nil
		}
		rows[i] = row
	}
	return rows
}

func (t *Table) cells(row []any, u unit, report *mistakes) []float64 {
	values := make([]float64, len(row))
	for i, c := range row {
		switch x := c.(type) {
		case int64:
			values[i] = u.si(float64(x))
		case float64:
			values[i] = u.si(x)
		case string:
			values[i] = t.word(x, report)
		default:
			report.add(t.At("cells"), t.KeyPath("cells"), fmt.Sprintf("found a cell %v, expected a number or a cell word", c), "")
		}
		if math.IsNaN(values[i]) {
			report.add(t.At("cells"), t.KeyPath("cells"), "a cell is not a number", "")
		}
	}
	return values
}

func (t *Table) word(w string, report *mistakes) float64 {
	switch {
	case w != "" && w == t.Never:
		return never
	case w != "" && w == t.Unlimited:
		return unlimited
	}
	report.add(t.At("cells"), t.KeyPath("cells"), fmt.Sprintf("unknown cell word %q", w), "never and unlimited name the words of a table")
	return 0
}
