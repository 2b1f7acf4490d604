package document

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
	"github.com/stretchr/testify/require"
)

// somewhere is the end of a list or table inside another value, which the oracle
// does not give.
const somewhere = int32(-1)

// place is where the oracle sees a key and its value. An element of a list has no
// key.
type place struct{ key, value span }

// oracle collects the places of a document from another parser, which shares no
// code with the reader. Paths are those of nodes.
type oracle struct {
	parser  unstable.Parser
	offset  int // of a byte order mark
	section string
	lists   map[string]int // tables of each [[list]] so far
	places  map[string]place
}

// placesOf reads a whole document.
func placesOf(source []byte) (map[string]place, error) {
	text := bytes.TrimPrefix(source, []byte(byteOrderMark))
	o := &oracle{offset: len(source) - len(text), lists: map[string]int{}, places: map[string]place{}}
	o.parser.Reset(text)
	for o.parser.NextExpression() {
		switch e := o.parser.Expression(); e.Kind {
		case unstable.KeyValue:
			o.pair(o.section, e)
		default:
			o.header(e)
		}
	}
	return o.places, o.parser.Error()
}

func (o *oracle) span(r unstable.Range) span {
	start := int(r.Offset) + o.offset
	return spanOf(start, start+int(r.Length))
}

// header enters the table that a header names.
func (o *oracle) header(e *unstable.Node) {
	path, first, last := "", unstable.Range{}, unstable.Range{}
	for keys := e.Key(); keys.Next(); {
		path = join(o.latest(path), string(keys.Node().Data))
		if last = keys.Node().Raw; first == (unstable.Range{}) {
			first = last
		}
	}
	at := o.brackets(first, last)
	if e.Kind == unstable.ArrayTable {
		if o.lists[path]++; o.lists[path] == 1 {
			o.places[path] = place{o.span(last), at}
		}
		path = o.latest(path)
		o.places[path] = place{value: at}
	} else {
		o.places[path] = place{o.span(last), at}
	}
	o.section = path
}

// latest is the path of the table that a header continues.
func (o *oracle) latest(path string) string {
	if n := o.lists[path]; n > 0 {
		return fmt.Sprintf("%s[%d]", path, n)
	}
	return path
}

// brackets is a header from its first bracket to its last.
func (o *oracle) brackets(first, last unstable.Range) span {
	data := string(o.parser.Data())
	before := strings.TrimRight(data[:first.Offset], " \t")
	after := data[last.Offset+last.Length:]
	start := len(strings.TrimRight(before, "["))
	rest := strings.TrimLeft(after, " \t")
	end := len(data) - len(strings.TrimLeft(rest, "]"))
	return spanOf(start+o.offset, end+o.offset)
}

// pair notes a key and its value, and the tables that a dotted key leads through.
func (o *oracle) pair(path string, e *unstable.Node) {
	var key unstable.Range
	for keys := e.Key(); keys.Next(); {
		if key != (unstable.Range{}) {
			if _, known := o.places[path]; !known {
				o.places[path] = place{o.span(key), o.span(key)}
			}
		}
		key = keys.Node().Raw
		path = join(path, string(keys.Node().Data))
	}
	data := o.parser.Data()
	between := data[key.Offset+key.Length : e.Raw.Offset+e.Raw.Length]
	value := bytes.TrimLeft(bytes.TrimLeft(between, " \t")[1:], " \t")
	end := int(o.span(e.Raw).end)
	o.value(path, place{o.span(key), spanOf(end-len(value), end)}, e.Value())
}

// value notes a value, and what is in it.
func (o *oracle) value(path string, at place, e *unstable.Node) {
	if e.Kind != unstable.Array && e.Kind != unstable.InlineTable {
		at.value = o.span(e.Raw)
	}
	o.places[path] = at
	for index, children := 1, e.Children(); children.Next(); index++ {
		child := children.Node()
		if e.Kind == unstable.InlineTable {
			o.pair(path, child)
			continue
		}
		within := place{value: span{somewhere, somewhere}}
		if child.Kind == unstable.InlineTable {
			within.value.start = o.span(child.Raw).start
		}
		o.value(fmt.Sprintf("%s[%d]", path, index), within, child)
	}
}

// requireAsOracle holds that the oracle reads a document that the reader took
// alike: every value, and the place of every key and value.
func requireAsOracle(t testing.TB, source []byte, tree *Tree) (places int) {
	t.Helper()
	var again map[string]any
	require.NoError(t, toml.Unmarshal(bytes.TrimPrefix(source, []byte(byteOrderMark)), &again))
	if other := tree.differs(tree.root(), again); other != nil {
		require.Fail(t, "another value", "%s: %v", tree.path(other), tree.value(other))
	}
	seen, err := placesOf(source)
	require.NoError(t, err)
	return requirePlaces(t, tree.Ref(), seen)
}

// requirePlaces compares the children of a node with what the oracle saw.
func requirePlaces(t testing.TB, of Ref, seen map[string]place) (places int) {
	t.Helper()
	for c := range of.tree.children(of.node) {
		path := of.tree.path(c)
		places += 1 + requirePlaces(t, Ref{of.tree, c}, seen)
		p, ok := seen[path]
		if c.origin == implied {
			continue // it has a place only as a part of longer headers
		}
		require.True(t, ok, path)
		if !c.element {
			require.Equal(t, p.key, c.key, "key %s", path)
		}
		if p.value.start != somewhere {
			require.Equal(t, p.value.start, c.at.start, "begin of %s", path)
		}
		if p.value.end != somewhere {
			require.Equal(t, p.value.end, c.at.end, "end of %s", path)
		}
	}
	return places
}
