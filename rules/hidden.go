package rules

import (
	"fmt"
	"reflect"
	"strings"
	"unicode"

	"github.com/ventlint/ventlint/checker/document"
)

// checkHidden refuses characters in the texts of a pack that would steer a
// terminal or hide on a page instead of being read.
func (p *Pack) checkHidden(report *mistakes) {
	hiding{report}.table(reflect.ValueOf(p).Elem(), p.Ref)
}

type hiding struct{ report *mistakes }

// table looks at all keys of a struct; of is the table that they stand in.
func (h hiding) table(v reflect.Value, of document.Ref) {
	for i := range v.NumField() {
		field := v.Type().Field(i)
		key, _, _ := strings.Cut(field.Tag.Get("toml"), ",")
		switch {
		case field.Anonymous && key == "":
			h.table(v.Field(i), of)
		case key != "" && key != "-":
			h.value(v.Field(i), of, key)
		}
	}
}

func (h hiding) value(v reflect.Value, of document.Ref, key string) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			h.value(v.Elem(), of, key)
		}
	case reflect.Slice:
		for i := range v.Len() {
			h.value(v.Index(i), of, key)
		}
	case reflect.Map:
		for _, name := range v.MapKeys() {
			h.value(v.MapIndex(name), of, key)
		}
	case reflect.Struct:
		h.inner(v, of, key)
	case reflect.String:
		h.text(v.String(), of, key)
	}
}

func (h hiding) text(s string, of document.Ref, key string) {
	if at := strings.IndexFunc(s, hidden); at >= 0 {
		r := []rune(s[at:])[0]
		h.report.add(of.At(key), of.KeyPath(key), fmt.Sprintf("found the character U+%04X in %s, expected text that can be seen", r, key), "")
	}
}

// inner looks at a struct that a key holds. One that stands nowhere by itself, as
// a basis does, is placed by the key.
func (h hiding) inner(v reflect.Value, of document.Ref, key string) {
	if pair, ok := v.Interface().(document.Pair); ok {
		h.text(pair.Text, of, key)
	}
	if own, ok := v.Interface().(interface{ Self() document.Ref }); ok && own.Self() != (document.Ref{}) {
		h.table(v, own.Self())
		return
	}
	for i := range v.NumField() {
		if v.Type().Field(i).Tag.Get("toml") != "" {
			h.value(v.Field(i), of, key)
		}
	}
}

// hidden also holds for the replacement character, which bytes that are no text
// become. The two joiners that scripts need are text.
func hidden(r rune) bool {
	switch r {
	case '\n', '\t', '\u200c', '\u200d':
		return false
	case unicode.ReplacementChar:
		return true
	}
	return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Noncharacter_Code_Point)
}
