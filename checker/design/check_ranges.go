package design

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// ranges refuses figures that cannot be, and texts that say nothing.
func (c *checker) ranges() { c.within(reflect.ValueOf(c.design).Elem(), c.design.Ref) }

// within looks at all keys of a struct. of is the table that they stand in.
func (c *checker) within(v reflect.Value, of document.Ref) {
	watches := watchesOf(v.Type())
	for i := range watches {
		c.value(v.FieldByIndex(watches[i].Index), of, &watches[i])
	}
}

// value looks at the value of a key.
func (c *checker) value(v reflect.Value, of document.Ref, w *watch) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			c.value(v.Elem(), of, w)
		}
	case reflect.Slice:
		for i := range v.Len() {
			c.value(v.Index(i), of, w)
		}
	case reflect.Struct:
		c.structure(v, of, w)
	case reflect.String:
		c.blank(v, of, w)
	default:
		c.figure(v, of, w)
	}
}

func (c *checker) structure(v reflect.Value, of document.Ref, w *watch) {
	switch thing := v.Addr().Interface().(type) {
	case *Point:
		c.figure(v.Field(0), of, w)
		c.figure(v.Field(1), of, w)
	case interface{ Self() document.Ref }:
		if ref := thing.Self(); ref != (document.Ref{}) {
			c.within(v, ref)
		}
	}
}

// blank refuses an empty text.
func (c *checker) blank(v reflect.Value, of document.Ref, w *watch) {
	if strings.TrimSpace(v.String()) != "" {
		return
	}
	if _, given := of.Text(w.Key); given {
		c.report(of, w.Key, "", "found an empty text, expected a %s", strings.ReplaceAll(w.Key, "_", " "))
	}
}

// figure refuses a number or quantity outside its bounds.
func (c *checker) figure(v reflect.Value, of document.Ref, w *watch) {
	x, b := number(v), w.bounds
	if math.Abs(x) > farthest && v.Type() == reflect.TypeFor[q.Length]() {
		b = &bounds{low: -farthest, high: farthest, says: fmt.Sprintf("at most %d km", farthest/1000)}
	}
	if x < b.low || x == b.low && b.above || x > b.high {
		c.report(of, w.Key, "", "found %s, expected %s", c.written(of, w.Key, v.Interface()), b.says)
	}
}

func number(v reflect.Value) float64 {
	if v.CanInt() {
		return float64(v.Int())
	}
	return v.Float()
}
