package document

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFieldsAreListedThroughEmbeddedStructs(t *testing.T) {
	type inner struct {
		B int `toml:"b"`
	}
	type middle struct {
		inner
		C *string `toml:"c" range:"any"`
	}
	list := Fields(reflect.TypeFor[struct {
		Ref `toml:"-"`
		A   string `toml:"a,required"`
		middle
		Own middle `toml:"own"`
	}]())
	require.Len(t, list, 4)
	for i, want := range []Field{
		{Key: "a", Required: true, Index: []int{1}},
		{Key: "b", Index: []int{2, 0, 0}},
		{Key: "c", Index: []int{2, 1}},
		{Key: "own", Index: []int{3}},
	} {
		require.Equal(t, want.Key, list[i].Key)
		require.Equal(t, want.Required, list[i].Required)
		require.Equal(t, want.Index, list[i].Index)
	}
	require.Equal(t, reflect.TypeFor[*string](), list[2].Type())
	require.Equal(t, "any", list[2].Tag.Get("range"))
}

// Types may hold one another, and be asked for at once.
func TestTypesThatHoldThemselves(t *testing.T) {
	type part struct {
		ID    string           `toml:"id"`
		Parts []*part          `toml:"parts"`
		Named map[string]*part `toml:"named"`
	}
	source := []byte("id = 'a'\nparts = [{ id = 'b', named = { x = { id = 'c' } } }]\n")
	done := make(chan string)
	for range 8 {
		go func() {
			var p part
			tree, _ := Parse("test", source)
			tree.Decode(&p)
			done <- p.ID + p.Parts[0].ID + p.Parts[0].Named["x"].ID
		}()
	}
	for range 8 {
		require.Equal(t, "abc", <-done)
	}
}
