package document

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/BurntSushi/toml"
)

// agree reads the document with a second, independent reader: a slip of one
// reader must not become a wrong verdict. Any difference is a problem. The
// document has passed the limits and has no key twice, both of which the second
// reader would not notice.
//
// It takes several times as long as all else of reading, and a plain document, as
// nearly every design is, leaves readers nothing to differ over: keys without
// quotes or dots, headers of them, texts on one line without escapes, numbers such
// as 12 or -0.5, true and false, lists, and tables on one line. So only other
// documents are read again. Tests read plain ones again too, shipped, generated and
// found by fuzzing.
func (t *Tree) agree() []Problem {
	var again map[string]any
	if _, err := toml.Decode(t.source, &again); err != nil {
		return []Problem{t.refused(err)}
	}
	if n := t.differs(t.root(), again); n != nil {
		return []Problem{{Position: t.lines.position(n.at), Path: t.path(n),
			Message: "the value cannot be read for certain, expected a plainer way to write it"}}
	}
	return nil
}

// refused turns an error of the second reader into a problem at its place.
func (t *Tree) refused(err error) Problem {
	at := begin(t.source)
	message := err.Error()
	var parse toml.ParseError
	if errors.As(err, &parse) {
		at = min(at+parse.Position.Start, len(t.source))
		message = parse.Message
	}
	return Problem{Position: t.lines.position(spanOf(at, at)), Message: "not valid TOML: " + strings.ToLower(message[:1]) + message[1:]}
}

// differs finds the first value that the second reader gives otherwise.
func (t *Tree) differs(n *node, again any) *node {
	switch n.kind {
	case table:
		return t.tableDiffers(n, again)
	case array:
		return t.arrayDiffers(n, again)
	case moment:
		if _, ok := again.(fmt.Stringer); ok {
			return nil
		}
	case text:
		if s, ok := again.(string); ok && unixLines(s) == unixLines(t.word(n)) {
			return nil
		}
	case decimal:
		f, ok := again.(float64)
		x := t.value(n).(float64)
		if ok && (f == x || math.IsNaN(f) && math.IsNaN(x)) {
			return nil
		}
	default:
		if again == t.value(n) {
			return nil
		}
	}
	return n
}

func (t *Tree) tableDiffers(n *node, again any) *node {
	values, ok := again.(map[string]any)
	if !ok || len(values) != t.size(n) {
		return n
	}
	for c := range t.children(n) {
		value, ok := values[t.name(c)]
		if !ok {
			return c
		}
		if d := t.differs(c, value); d != nil {
			return d
		}
	}
	return nil
}

func (t *Tree) arrayDiffers(n *node, again any) *node {
	var elements []any
	switch list := again.(type) {
	case []any:
		elements = list
	case []map[string]any:
		for _, e := range list {
			elements = append(elements, e)
		}
	default:
		return n
	}
	if len(elements) != t.size(n) {
		return n
	}
	for c := range t.children(n) {
		if d := t.differs(c, elements[c.index]); d != nil {
			return d
		}
	}
	return nil
}

// unixLines drops a difference between the readers that is no mistake of either.
func unixLines(s string) string { return strings.ReplaceAll(s, "\r\n", "\n") }
