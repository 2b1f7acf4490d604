package document

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const places = `title = "x"
[[opening]]
kind = "intake"
id = "fresh"
size = { w = 1, "h/~" = [{ id = "in" }, { b = 2 }] }

[[opening]]
kind = "exhaust"
[opening.part]
a.b = 1
`

// parsed gives the Ref of a table by the way to it: keys and indexes.
func parsed(t *testing.T, source string, way ...any) Ref {
	tree, problems := Parse("test", []byte(source))
	require.Empty(t, problems)
	r := tree.Ref()
	for _, step := range way {
		switch s := step.(type) {
		case string:
			r.node = tree.child(r.node, s)
		case int:
			r.node = tree.element(r.node, s)
		}
	}
	return r
}

func TestPlacesOfTables(t *testing.T) {
	for _, c := range []struct {
		way      []any
		position Position
		path     string
		pointer  string
		name     string
	}{
		{nil, Position{1, 1, 1}, "", "", ""},
		{[]any{"opening", 0}, Position{4, 6, 13}, "opening[1]", "/opening/0", "opening.fresh"},
		{[]any{"opening", 1}, Position{7, 1, 12}, "opening[2]", "/opening/1", "opening[2]"},
		{[]any{"opening", 0, "size"}, Position{5, 1, 5}, "opening[1].size", "/opening/0/size", "opening.fresh.size"},
		{[]any{"opening", 0, "size", "h/~", 0}, Position{5, 33, 37}, `opening[1].size."h/~"[1]`, "/opening/0/size/h~1~0/0", `opening.fresh.size."h/~".in`},
		{[]any{"opening", 0, "size", "h/~", 1}, Position{5, 41, 50}, `opening[1].size."h/~"[2]`, "/opening/0/size/h~1~0/1", `opening.fresh.size."h/~"[2]`},
		{[]any{"opening", 1, "part"}, Position{9, 1, 15}, "opening[2].part", "/opening/1/part", "opening[2].part"},
		{[]any{"opening", 1, "part", "a"}, Position{10, 1, 2}, "opening[2].part.a", "/opening/1/part/a", "opening[2].part.a"},
	} {
		r := parsed(t, places, c.way...)
		require.Equal(t, c.position, r.Position(), c.path)
		require.Equal(t, c.path, r.Path())
		require.Equal(t, c.pointer, r.Pointer())
		require.Equal(t, c.name, r.Name())
	}
}

func TestPlacesOfKeys(t *testing.T) {
	r := parsed(t, places, "opening", 0)
	require.Equal(t, Position{3, 8, 16}, r.At("kind"))
	require.Equal(t, Position{3, 1, 5}, r.KeyAt("kind"))
	require.Equal(t, Position{5, 8, 53}, r.At("size"))
	require.True(t, r.Given("size"))
	require.Equal(t, []string{"kind", "id", "size"}, r.Keys())
	require.Equal(t, "opening[1].kind", r.KeyPath("kind"))
	require.Equal(t, "opening.fresh.kind", r.KeyName("kind"))

	require.Equal(t, strings.Index(places, `"intake"`), r.Offset("kind"))
	require.Equal(t, strings.Index(places, "[[opening]]"), r.Offset("flow"))
	require.Zero(t, Ref{}.Offset("flow"))

	require.False(t, r.Given("flow"))
	require.Equal(t, r.Position(), r.At("flow"), "a key that is not given has the place of its table")
	require.Equal(t, r.Position(), r.KeyAt("flow"))
}

func TestChildTables(t *testing.T) {
	r := parsed(t, places, "opening", 0)
	require.Equal(t, []string{"w", "h/~"}, r.Child("size").Keys())
	require.Equal(t, Ref{}, r.Child("kind"), "no table")
	require.Equal(t, Ref{}, r.Child("flow"), "not given")
	require.Equal(t, r, r.Self())
}

func TestTheZeroRefStandsNowhere(t *testing.T) {
	var r Ref
	require.Zero(t, r.Position())
	require.Zero(t, r.At("x"))
	require.Zero(t, r.KeyAt("x"))
	require.False(t, r.Given("x"))
	require.Empty(t, r.Keys())
	require.Empty(t, r.Path())
	require.Empty(t, r.Pointer())
	require.Empty(t, r.Name())
	require.Equal(t, "x", r.KeyPath("x"))
	_, ok := r.Text("x")
	require.False(t, ok)
}

func TestMissing(t *testing.T) {
	r := parsed(t, places, "opening", 1)
	m := Missing{Ref: r, Key: "flow"}
	require.EqualError(t, &m, "needs opening[2].flow")
	named := Missing{Ref: r, Key: "flow", Thing: `exhaust "stale"`}
	require.EqualError(t, &named, `needs flow of exhaust "stale"`)
	require.EqualError(t, MissingAll{m, named}, `needs opening[2].flow, flow of exhaust "stale"`)
	require.EqualError(t, &Missing{Key: "flow"}, "needs flow")
}

func TestLine(t *testing.T) {
	source := []byte(byteOrderMark + "one\r\ntwo\n\nfour")
	for n, want := range map[int]string{-1: "", 0: "", 1: "one", 2: "two", 3: "", 4: "four", 5: ""} {
		require.Equal(t, want, Line(source, n), n)
	}
	require.Empty(t, Line(nil, 1))
}

func TestSortKeepsWhatStandsInOnePlace(t *testing.T) {
	list := []Problem{
		{Position: Position{2, 1, 2}, Message: "c"},
		{Position: Position{1, 9, 9}, Message: "b"},
		{Position: Position{2, 1, 9}, Message: "d"},
		{Position: Position{1, 2, 3}, Message: "a"},
	}
	Sort(list)
	var order strings.Builder
	for _, p := range list {
		order.WriteString(p.Message)
	}
	require.Equal(t, "abcd", order.String())
}
