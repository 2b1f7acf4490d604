package rules

import (
	"fmt"
	"math"
	"reflect"
	"sort"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/expression"
)

// Table is a lookup table of a pack: one axis or two, and cells.
type Table struct {
	document.Ref `toml:"-"`

	Title     string  `toml:"title,required"`
	Unit      string  `toml:"value,required"` // of the cells; empty for plain numbers
	Row       *Axis   `toml:"row,required"`
	Column    *Axis   `toml:"column"`
	Cells     []any   `toml:"cells,required"`
	Never     string  `toml:"never"`     // cell word: not permitted
	Unlimited string  `toml:"unlimited"` // cell word: no limit
	Basis     []Basis `toml:"basis,required"`

	result reflect.Type
	values [][]float64 // SI
}

// Axis is one input of a table and how its bands are read.
type Axis struct {
	document.Ref `toml:"-"`

	Input string    `toml:"input,required"` // what it is, for people
	Unit  string    `toml:"unit,required"`  // empty for plain numbers
	Read  Reading   `toml:"read,required"`
	Edges []float64 `toml:"edges,required"`
	Open  bool      `toml:"open"` // up-to: one more band beyond the last edge

	kind  reflect.Type
	edges []float64 // SI
}

// Reading is how a value finds its band.
type Reading string

// Values lists the readings: the first edge at or above the value (edges are
// tops of bands), the last edge at or below it (edges are the sizes themselves),
// or a straight line between edges. None reads beyond the table.
func (Reading) Values() []string { return []string{"up-to", "from", "linear"} }

// Inputs gives the types that a lookup takes.
func (t *Table) Inputs() []reflect.Type {
	if t.Column == nil {
		return []reflect.Type{t.Row.kind}
	}
	return []reflect.Type{t.Row.kind, t.Column.kind}
}

// Result gives the type of the cells.
func (t *Table) Result() reflect.Type { return t.result }

// Look finds the cell for the inputs, converted to the result type. A value
// that the table does not reach is for a person to judge.
func (t *Table) Look(args []any) (any, error) {
	row, err := t.Row.place(number(args[0]))
	if err != nil {
		return nil, t.beyond(err)
	}
	column := place{}
	if t.Column != nil {
		if column, err = t.Column.place(number(args[1])); err != nil {
			return nil, t.beyond(err)
		}
	}
	low := column.blend(t.values[row.low])
	high := column.blend(t.values[row.high])
	return reflect.ValueOf(mix(low, high, row.share)).Convert(t.result).Interface(), nil
}

func (t *Table) beyond(err error) error {
	return &expression.Undetermined{Reason: fmt.Sprintf("table %q %v", t.Title, err)}
}

// place is where a value lies between two neighbouring bands.
type place struct {
	low, high int
	share     float64 // of the way from low to high
}

func (p place) blend(cells []float64) float64 { return mix(cells[p.low], cells[p.high], p.share) }

func mix(a, b, share float64) float64 {
	if share == 0 {
		return a
	}
	return a + (b-a)*share
}

func (a *Axis) place(v float64) (place, error) {
	n := len(a.edges)
	// first edge at or above v, with the tolerance of every comparison
	at := sort.Search(n, func(i int) bool { return quantity.Compare(a.edges[i], v) >= 0 })
	exact := at < n && quantity.Compare(a.edges[at], v) == 0
	switch a.Read {
	case "up-to":
		if at < n || a.Open {
			return place{low: at, high: at}, nil
		}
	case "from":
		if exact {
			return place{low: at, high: at}, nil
		}
		if at > 0 {
			return place{low: at - 1, high: at - 1}, nil
		}
	case "linear":
		if exact {
			return place{low: at, high: at}, nil
		}
		if at > 0 && at < n {
			return place{at - 1, at, (v - a.edges[at-1]) / (a.edges[at] - a.edges[at-1])}, nil
		}
	}
	if at == 0 {
		return place{}, fmt.Errorf("begins at a %s of %s", a.Input, a.print(0))
	}
	return place{}, fmt.Errorf("ends at a %s of %s", a.Input, a.print(n-1))
}

// print gives an edge as the pack writes it.
func (a *Axis) print(i int) string {
	if a.Unit == "" {
		return fmt.Sprintf("%g", a.Edges[i])
	}
	return fmt.Sprintf("%g %s", a.Edges[i], a.Unit)
}

// bands is the number of rows or columns of cells that the axis asks for.
func (a *Axis) bands() int {
	if a == nil {
		return 1
	}
	if a.Open {
		return len(a.Edges) + 1
	}
	return len(a.Edges)
}

func number(v any) float64 {
	rv := reflect.ValueOf(v)
	if rv.CanInt() {
		return float64(rv.Int())
	}
	return rv.Float()
}

// The words of a table are kept as infinities: a longest length that is never
// permitted lies below every length.
var (
	never     = math.Inf(-1)
	unlimited = math.Inf(1)
)
