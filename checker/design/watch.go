package design

import (
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// watch is a key whose value may be out of range, or holds others that may.
type watch struct {
	*document.Field
	bounds *bounds // of a figure
}

var watches sync.Map // reflect.Type of a struct: []watch

// watchesOf lists the keys of a struct type to look at. It reads the tags of each
// type once.
func watchesOf(t reflect.Type) []watch {
	if known, ok := watches.Load(t); ok {
		return known.([]watch)
	}
	fields := document.Fields(t)
	list := make([]watch, 0, len(fields))
	for i := range fields {
		if b, ok := watched(&fields[i]); ok {
			list = append(list, watch{&fields[i], b})
		}
	}
	watches.Store(t, list)
	return list
}

// watched tells whether a field is one to look at, and the bounds of a figure.
// Where a word from a list is empty, the decoder has reported it.
func watched(f *document.Field) (b *bounds, ok bool) {
	t := f.Type()
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	switch {
	case t == reflect.TypeFor[Point]():
		return free, true
	case t.Kind() == reflect.Struct:
		return nil, reflect.PointerTo(t).Implements(reflect.TypeFor[interface{ Self() document.Ref }]())
	case t.Kind() == reflect.Int, t.Kind() == reflect.Float64:
		return boundsOf(t, f.Tag.Get("range")), true
	}
	return nil, t == reflect.TypeFor[string]() && f.Required && f.Key != "id"
}

// bounds are the least and the greatest figure, and the words for them.
type bounds struct {
	low, high float64
	above     bool // more than low, not low itself
	says      string
}

// farthest is longer than any length that a dwelling has to do with, in metres.
const farthest = 10_000

// The bounds of most figures.
var (
	zeroOrMore = &bounds{high: math.Inf(1), says: "zero or more"}
	positive   = &bounds{high: math.Inf(1), above: true, says: "more than zero"}
	free       = &bounds{low: math.Inf(-1), high: math.Inf(1)}
	share      = &bounds{high: 1, says: "0 % to 100 %"}
)

// boundsOf reads the tag range of a field of a type.
func boundsOf(t reflect.Type, rule string) *bounds {
	switch {
	case rule == "positive":
		return positive
	case rule == "any":
		return free
	case rule != "":
		low, high, _ := strings.Cut(rule, "..")
		return &bounds{low: bound(low), high: bound(high), says: low + " to " + high}
	case t == reflect.TypeFor[q.Temperature](), t == reflect.TypeFor[q.TemperatureDifference]():
		return free
	case t == reflect.TypeFor[q.Ratio]():
		return share
	}
	return zeroOrMore
}

// bound reads one end of a tag range: a number, or a quantity. Tags are part of
// the program; a broken one is a defect that every test finds.
func bound(text string) float64 {
	if x, err := strconv.ParseFloat(text, 64); err == nil {
		return x
	}
	x, err := q.Parse(text)
	if err != nil {
		panic("design: broken range: " + err.Error())
	}
	return reflect.ValueOf(x).Float()
}
