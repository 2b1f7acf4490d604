package document

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// wrong reports a value of the wrong type.
func (d *decoder) wrong(n *node, want reflect.Type) bool {
	d.report(n, n.at, d.wrongHint(n, want), "found %s, expected %s", d.shown(n), expected(want))
	return false
}

// Shown is a value that UnmarshalTOML gets, for a message.
func Shown(value any) string {
	switch v := value.(type) {
	case map[string]any:
		return "a table"
	case []any:
		return "a list"
	case string:
		return strconv.Quote(excerpt(v))
	}
	return excerpt(fmt.Sprint(value))
}

// shown is a value for a message: scalars as written.
func (d *decoder) shown(n *node) string {
	switch {
	case n.kind == table:
		return "a table"
	case n.origin == repeated:
		return "a list of tables"
	case n.kind == array:
		return "a list"
	}
	return excerpt(d.tree.source[n.at.start:n.at.end])
}

// expected says what a type takes.
func expected(t reflect.Type) string {
	if allowed := wordsOf(t); allowed != nil {
		return "one of " + words(allowed)
	}
	switch t.Kind() {
	case reflect.Struct, reflect.Map:
		return "a table"
	case reflect.Slice:
		return "a list"
	case reflect.Bool:
		return "true or false"
	case reflect.Int, reflect.Int64:
		return "a whole number"
	case reflect.Float64:
		return "a number"
	}
	return "text in quotes"
}

// wrongHint says how to write the value, where that is clear.
func (d *decoder) wrongHint(n *node, want reflect.Type) string {
	plain := fmt.Sprint(d.tree.value(n))
	switch {
	case want.Kind() == reflect.Slice && n.origin == headed:
		return fmt.Sprintf("write [[%s]]", d.tree.name(n))
	case want.Kind() == reflect.Slice && n.kind == table:
		return "put the table in [ ]"
	case want.Kind() == reflect.Slice:
		return fmt.Sprintf("write [%s]", d.shown(n))
	case want.Kind() == reflect.Struct && n.origin == repeated:
		return fmt.Sprintf("write [%s] once", d.tree.name(n))
	case want.Kind() == reflect.String && n.kind != table && n.kind != array && wordsOf(want) == nil:
		return fmt.Sprintf("write %q", plain)
	case n.kind == text && unquoted(plain, want.Kind()):
		return fmt.Sprintf("write %.64s without quotes", plain)
	}
	return ""
}

// unquoted tells whether a text would be right without its quotes.
func unquoted(plain string, want reflect.Kind) bool {
	k, _, err := scalarOf(plain)
	switch {
	case err != nil:
		return false
	case want == reflect.Bool:
		return k == truth
	case want == reflect.Float64:
		return k == whole || k == decimal
	}
	return want == reflect.Int && k == whole
}

// words joins names for a sentence: "a", "b" or "c".
func words(names []string) string {
	var b strings.Builder
	for i, name := range names {
		switch {
		case i > 0 && i == len(names)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(name))
	}
	return b.String()
}

func meant(near string) string { return fmt.Sprintf("did you mean %q?", near) }
