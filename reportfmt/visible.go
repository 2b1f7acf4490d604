package reportfmt

import (
	"fmt"
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Visible shows what would steer a terminal or hide on a page instead of being
// read: control characters, marks that turn the writing direction, characters
// without width, separators of lines, what is no character at all, and bytes that
// are not UTF-8. An escape
// character becomes \x1b. Line feeds and tabs stay, other line ends become line
// feeds; the two joiners that scripts need stay as well.
func Visible(s string) string {
	s = strings.ReplaceAll(s, "\r\n", "\n")
	if !strings.ContainsFunc(s, hidden) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case hidden(r):
			b.WriteString(spelled(r))
		default:
			b.WriteRune(r)
		}
		i += size
	}
	return b.String()
}

// hidden also holds for the replacement character: a byte that is not UTF-8
// decodes to it.
func hidden(r rune) bool {
	switch {
	case r >= ' ' && r <= '~', r == '\n', r == '\t', r == '\u200c', r == '\u200d':
		return false
	case r == utf8.RuneError:
		return true
	}
	return unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp, unicode.Noncharacter_Code_Point)
}

func spelled(r rune) string {
	switch {
	case r == utf8.RuneError:
		return string(r)
	case r < 0x100:
		return fmt.Sprintf(`\x%02x`, r)
	case r < 0x10000:
		return fmt.Sprintf(`\u%04x`, r)
	}
	return fmt.Sprintf(`\U%08x`, r)
}

// oneLine is Visible with every run of white space made one space.
func oneLine(s string) string {
	if tidy(s) {
		return s
	}
	return strings.Join(strings.Fields(Visible(s)), " ")
}

// tidy tells whether a text is plain letters and signs with single spaces between
// words, as most texts are.
func tidy(s string) bool {
	before := byte(' ')
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' || s[i] == ' ' && before == ' ' {
			return false
		}
		before = s[i]
	}
	return before != ' ' || s == ""
}

// makeVisible applies Visible to every string that a pointer leads to. Formats
// that are written from a tree of structs run it last, so that no field can be
// forgotten.
func makeVisible(tree any) { walk(reflect.ValueOf(tree)) }

func walk(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			walk(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			walk(v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			walk(v.Index(i))
		}
	case reflect.String:
		v.SetString(Visible(v.String()))
	}
}
