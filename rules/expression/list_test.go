package expression

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document"
)

func TestLists(t *testing.T) {
	for text, want := range map[string]string{
		"vents":                            "a b c",
		"filter(vents, .kind == 'outlet')": "b c",
		"filter(vents, .x > 2 m and not (.id == 'c'))":                   "b",
		"filter(vents, # != inlet)":                                      "b c",
		"filter(vents, .kind == inlet.kind)":                             "a",
		"filter(filter(vents, .x > 2 m), .kind in ['outlet', 'relief'])": "b c",
		"filter(vents, any(rooms, .id == 'den'))":                        "a b c",
		"filter(vents, .x > limit.gap)":                                  "c",
		"nobody":                                                         "",
	} {
		list, err := newLanguage(t).List(text, ruleNames())
		require.NoError(t, err, text)
		assert.Equal(t, reflect.TypeFor[*vent](), list.Elem(), text)
		items, err := list.Items(newScope(t))
		require.NoError(t, err, text)
		ids := ""
		for _, item := range items {
			ids += " " + item.(*vent).ID
		}
		assert.Equal(t, want, strings.TrimPrefix(ids, " "), text)
	}
}

// Elements of lists of structs are the design's own, not copies.
func TestListOfASubject(t *testing.T) {
	list, err := newLanguage(t).List("inlet.curve", ruleNames())
	require.NoError(t, err)
	assert.Equal(t, reflect.TypeFor[*curvePoint](), list.Elem())
	s := newScope(t)
	items, err := list.Items(s)
	require.NoError(t, err)
	require.Len(t, items, 2)
	assert.Same(t, &s.Subjects[0].(*vent).Curve[1], items[1])
}

func TestListMistakes(t *testing.T) {
	for text, want := range map[string]string{
		"«inlet»":                                  `"inlet" is a vent, expected a list of things`,
		"«inlet.tags»":                             `"inlet.tags" is a list, expected a list of things`,
		"filter(vents, «.flow» > 3 cfm)":           `".flow" may be left out, expected only keys that every design gives`,
		"filter(vents, .id == 'a' or «.open»)":     `".open" may be left out, expected only keys that every design gives`,
		"filter(vents, «known(.flow)»)":            `"known(.flow)" does not stand in a list of things`,
		"filter(vents, («.tag ?? 'x'») == 'x')":    `".tag ?? 'x'" does not stand in a list of things`,
		"filter(vents, «gap(#, inlet)» > 1 m)":     `"gap(#, inlet)" is computed, and may be unknown: expected only keys that every design gives`,
		"«beside(inlet)»":                          `"beside(inlet)" is computed, and may be unknown: expected only keys that every design gives`,
		"filter(vents, .x > «table.reach(1 cfm)»)": `"table.reach(1 cfm)" is computed, and may be unknown: expected only keys that every design gives`,
		"filter(vents, «.room».id == 'den')":       `".room" may be left out, expected only keys that every design gives`,
		"filter(vents, .kind == «'x'»)":            `".kind" cannot be "x"`,
		"filter(vents, «true ? true : false»)":     `"true ? true : false" does not stand in a list of things`,
		"map(vents, «.room»)":                      `".room" may be left out, expected only keys that every design gives`,
	} {
		text, from, to := marked(text)
		_, err := newLanguage(t).List(text, ruleNames())
		var e *Error
		require.True(t, errors.As(err, &e), text)
		assert.Equal(t, want, e.Message)
		assert.Equal(t, []int{from, to - from}, []int{e.Offset, e.Length}, text)
	}
}

func TestListsWithoutAValue(t *testing.T) {
	list, err := newLanguage(t).List("filter(vents, .x > limit.local)", ruleNames())
	require.NoError(t, err)
	_, err = list.Items(newScope(t))
	var judge *Undetermined
	require.True(t, errors.As(err, &judge))
	assert.Equal(t, "limit.local is not set", judge.Reason)

	v := vocabulary()
	v.Roots = append(v.Roots, Root{Name: "ghost", Type: reflect.TypeFor[*ghost](), Get: func(any) any { return (*ghost)(nil) }})
	l, err := New(v)
	require.NoError(t, err)
	list, err = l.List("ghost.vents", ruleNames())
	require.NoError(t, err)
	_, err = list.Items(newScope(t))
	var missing *document.Missing
	require.True(t, errors.As(err, &missing))
	assert.Equal(t, "needs ghost", missing.Error())

	_, err = list.Items(NewScope(newWorld(t), 0))
	assert.ErrorIs(t, err, ErrSteps)
}

type ghost struct {
	Vents []*vent `toml:"vents"`
}
