package design

import (
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// types gives every struct of a design file.
func types() []reflect.Type {
	seen := map[reflect.Type]bool{}
	var list []reflect.Type
	var visit func(t reflect.Type)
	visit = func(t reflect.Type) {
		for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
			t = t.Elem()
		}
		if t.Kind() != reflect.Struct || seen[t] {
			return
		}
		seen[t] = true
		list = append(list, t)
		for i := range t.NumField() {
			if f := t.Field(i); f.Tag.Get("toml") != "-" && f.IsExported() {
				visit(f.Type)
			}
		}
	}
	visit(reflect.TypeFor[Design]())
	return list
}

var plainWord = regexp.MustCompile(`^([a-z]+(-[a-z]+)*|IP|SI)$`)

func TestWordsArePlainAndDifferent(t *testing.T) {
	lists := 0
	for _, structure := range types() {
		for i := range structure.NumField() {
			kind := structure.Field(i).Type
			if kind.Kind() == reflect.Pointer {
				kind = kind.Elem()
			}
			words, ok := reflect.Zero(kind).Interface().(interface{ Values() []string })
			if !ok {
				continue
			}
			lists++
			require.GreaterOrEqual(t, len(words.Values()), 2, kind)
			seen := map[string]bool{}
			for _, w := range words.Values() {
				require.Regexp(t, plainWord, w)
				require.False(t, seen[w], "%s is twice in %s", w, kind)
				seen[w] = true
			}
		}
	}
	require.Greater(t, lists, 25)
}

var plainKey = regexp.MustCompile(`^[a-z][a-z0-9]*(_[a-z0-9]+)*$`)

// Each key belongs to one field of a struct, and each range is one that reads.
func TestKeysAndRangesOfTheModel(t *testing.T) {
	ranges := 0
	for _, structure := range types() {
		seen := map[string]bool{}
		for _, field := range reflect.VisibleFields(structure) {
			key, _, _ := strings.Cut(field.Tag.Get("toml"), ",")
			if key == "" || key == "-" {
				continue
			}
			require.Regexp(t, plainKey, key, "%s.%s", structure, field.Name)
			require.False(t, seen[key], "%s has %s twice", structure, key)
			seen[key] = true
			kind := field.Type
			if kind.Kind() == reflect.Pointer {
				kind = kind.Elem()
			}
			if rule := field.Tag.Get("range"); rule != "" {
				ranges++
				require.Less(t, boundsOf(kind, rule).low, boundsOf(kind, rule).high)
			}
		}
	}
	require.Greater(t, ranges, 40)
}

func TestABrokenRangeIsADefect(t *testing.T) {
	require.Panics(t, func() { boundsOf(reflect.TypeFor[int](), "1..many") })
}
