package design

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// ranges refuses figures that cannot be, and texts that say nothing.
func (c *checker) ranges() { c.within(reflect.ValueOf(c.design).Elem(), c.design.Ref) }

// within looks at all keys of a struct. of is the table that they stand in.
func (c *checker) within(v reflect.Value, of document.Ref) {
	for i := range v.NumField() {
		field, key := v.Type().Field(i), ""
		key, _, _ = strings.Cut(field.Tag.Get("toml"), ",")
		switch {
		case field.Anonymous && key == "":
			c.within(v.Field(i), of)
		case key != "" && key != "-":
			c.value(v.Field(i), of, key, field.Tag)
		}
	}
}

// value looks at the value of a key.
func (c *checker) value(v reflect.Value, of document.Ref, key string, tag reflect.StructTag) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			c.value(v.Elem(), of, key, tag)
		}
	case reflect.Slice:
		for i := range v.Len() {
			c.value(v.Index(i), of, key, tag)
		}
	case reflect.Struct:
		c.structure(v, of, key)
	case reflect.String:
		required := strings.HasSuffix(tag.Get("toml"), ",required")
		if _, given := of.Text(key); required && given && strings.TrimSpace(v.String()) == "" && key != "id" {
			c.blank(of, key, v)
		}
	case reflect.Int, reflect.Float64:
		c.figure(v, of, key, tag.Get("range"))
	}
}

func (c *checker) structure(v reflect.Value, of document.Ref, key string) {
	if point, ok := v.Interface().(Point); ok {
		c.figure(reflect.ValueOf(point.X), of, key, "any")
		c.figure(reflect.ValueOf(point.Y), of, key, "any")
		return
	}
	if ref := Refer(v.Addr().Interface()); ref != (document.Ref{}) {
		c.within(v, ref)
	}
}

// blank refuses an empty text. A word from a list cannot be empty: where it
// is, the decoder has reported it.
func (c *checker) blank(of document.Ref, key string, v reflect.Value) {
	if v.Type() == reflect.TypeFor[string]() {
		c.report(of, key, "", "found an empty text, expected a %s", strings.ReplaceAll(key, "_", " "))
	}
}

// figure refuses a number or quantity outside its bounds.
func (c *checker) figure(v reflect.Value, of document.Ref, key, rule string) {
	x, b := number(v), boundsOf(v.Type(), rule)
	if v.Type() == reflect.TypeFor[q.Length]() && math.Abs(x) > farthest {
		b = bounds{low: -farthest, high: farthest, says: fmt.Sprintf("at most %d km", farthest/1000)}
	}
	if x < b.low || x == b.low && b.above || x > b.high {
		c.report(of, key, "", "found %s, expected %s", c.written(of, key, v.Interface()), b.says)
	}
}

func number(v reflect.Value) float64 {
	if v.CanInt() {
		return float64(v.Int())
	}
	return v.Float()
}

// bounds are the least and the greatest figure, and the words for them.
type bounds struct {
	low, high float64
	above     bool // more than low, not low itself
	says      string
}

// farthest is longer than any length that a dwelling has to do with, in metres.
const farthest = 10_000

// boundsOf reads the tag range of a field of a type.
func boundsOf(t reflect.Type, rule string) bounds {
	free := t == reflect.TypeFor[q.Temperature]() || t == reflect.TypeFor[q.TemperatureDifference]()
	b := bounds{high: math.Inf(1), says: "zero or more"}
	switch {
	case rule == "positive":
		b.above, b.says = true, "more than zero"
	case rule == "any" || rule == "" && free:
		b.low = math.Inf(-1)
	case rule == "" && t == reflect.TypeFor[q.Ratio]():
		b.high, b.says = 1, "0 % to 100 %"
	case rule != "":
		low, high, _ := strings.Cut(rule, "..")
		b.low, b.high, b.says = bound(low), bound(high), low+" to "+high
	}
	return b
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
