package document

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// everything has a field of every sort that the decoder knows.
type everything struct {
	Ref `toml:"-"`

	Name     string            `toml:"name,required"`
	Kind     kindOfThing       `toml:"kind,required"`
	Other    *kindOfThing      `toml:"other"`
	Count    *int              `toml:"count"`
	Long     int64             `toml:"long"`
	Share    *float64          `toml:"share"`
	On       *bool             `toml:"on"`
	Half     *halved           `toml:"half"`
	Halves   []halved          `toml:"halves"`
	Pairs    []pairOfHalves    `toml:"pairs"`
	Words    []string          `toml:"words"`
	Any      []any             `toml:"any"`
	Anything any               `toml:"anything"`
	Part     *part1            `toml:"part"`
	Parts    []*part1          `toml:"parts"`
	Values   []part1           `toml:"values"`
	ByName   map[string]*part1 `toml:"by_name"`
	Texts    []Pair            `toml:"texts"`
	Ordered  ordered           `toml:"ordered"`
	shared

	untagged string
	Untagged string
	Skipped  string `toml:"-"`
}

type shared struct {
	Left  *int `toml:"left"`
	Right *int `toml:"right"`
	deeper
}

type deeper struct {
	Below string `toml:"below"`
}

type part1 struct {
	Ref `toml:"-"`

	ID   string `toml:"id,required"`
	Size int    `toml:"size"`
}

type kindOfThing string

func (kindOfThing) Values() []string { return []string{"intake", "exhaust"} }

// halved reads an even number as its half.
type halved int

func (h *halved) UnmarshalTOML(value any) error {
	n, ok := value.(int64)
	if !ok || n%2 != 0 {
		return fmt.Errorf("found %s, expected an even number", Shown(value))
	}
	*h = halved(n / 2)
	return nil
}

type pairOfHalves [2]halved

func (p *pairOfHalves) UnmarshalTOML(value any) error {
	list, ok := value.([]any)
	if !ok || len(list) != 2 {
		return errors.New("expected two numbers")
	}
	for i := range p {
		if err := p[i].UnmarshalTOML(list[i]); err != nil {
			return &ElementError{i, err}
		}
	}
	return nil
}

// ordered keeps the keys of a table in the order of the file.
type ordered struct {
	Ref
	list []string
}

func (o *ordered) UnmarshalTOML(value any) error {
	for _, key := range o.Keys() {
		o.list = append(o.list, fmt.Sprint(key, "=", value.(map[string]any)[key]))
	}
	return nil
}

const everyField = `
name = "all"
kind = "exhaust"
other = "intake"
count = 3
long = -4
share = 0.5
on = true
half = 8
halves = [2, 4]
pairs = [[2, 4], [6, 8]]
words = ["a", "b"]
any = [1, 2.5, "x", [true], { y = 1 }]
anything = 2026-03-31
left = 1
below = "deep"

[part]
id = "one"

[[parts]]
id = "two"
size = 5

[[parts]]
id = "three"

[[values]]
id = "four"

[by_name.x]
id = "five"

[by_name."y z"]
id = "six"

[texts]
b = "1"
a = "2"

[ordered]
z = 1
a = 2
`

func TestDecode(t *testing.T) {
	tree, problems := Parse("test", []byte(everyField))
	require.Empty(t, problems)
	var e everything
	require.Empty(t, tree.Decode(&e))

	require.Equal(t, "all", e.Name)
	require.Equal(t, kindOfThing("exhaust"), e.Kind)
	require.Equal(t, kindOfThing("intake"), *e.Other)
	require.Equal(t, 3, *e.Count)
	require.Equal(t, int64(-4), e.Long)
	require.Equal(t, 0.5, *e.Share)
	require.True(t, *e.On)
	require.Equal(t, halved(4), *e.Half)
	require.Equal(t, []halved{1, 2}, e.Halves)
	require.Equal(t, []pairOfHalves{{1, 2}, {3, 4}}, e.Pairs)
	require.Equal(t, []string{"a", "b"}, e.Words)
	require.Equal(t, []any{int64(1), 2.5, "x", []any{true}, map[string]any{"y": int64(1)}}, e.Any)
	require.Equal(t, Moment("2026-03-31"), e.Anything)
	require.Equal(t, 1, *e.Left)
	require.Nil(t, e.Right)
	require.Equal(t, "deep", e.Below)
	require.Equal(t, "one", e.Part.ID)
	require.Equal(t, []int{5, 0}, []int{e.Parts[0].Size, e.Parts[1].Size})
	require.Equal(t, "four", e.Values[0].ID)
	require.Equal(t, "values[1]", e.Values[0].Path())
	require.Equal(t, "six", e.ByName["y z"].ID)
	require.Equal(t, []Pair{{"b", "1"}, {"a", "2"}}, e.Texts)
	require.Equal(t, []string{"b", "a"}, e.Child("texts").Keys())
	require.Equal(t, []string{"z=1", "a=2"}, e.Ordered.list)
	require.Empty(t, e.untagged+e.Untagged+e.Skipped)
}

func TestWholeNumbersAreNumbers(t *testing.T) {
	var into struct {
		Share float64 `toml:"share"`
	}
	tree, _ := Parse("test", []byte("share = 1"))
	require.Empty(t, tree.Decode(&into))
	require.Equal(t, 1.0, into.Share)
}

func TestMistakesOfDecoding(t *testing.T) {
	for _, c := range []struct {
		source string
		column int
		path   string
		want   string // message and hint
	}{
		{`nmae = "x"`, 1, "nmae", `unknown key "nmae" | did you mean "name"?`},
		{`Name = "x"`, 1, "Name", `unknown key "Name" | did you mean "name"?`},
		{`colour = "x"`, 1, "colour", `unknown key "colour" | `},
		{`part = { id = "x", colour = 1 }`, 20, "part.colour", `unknown key "colour" | expected one of "id" or "size"`},
		{`part = { size = 1 }`, 1, "part.id", `missing key "id" | `},
		{`parts = [{ size = 1 }]`, 10, "parts[1].id", `missing key "id" | `},
		{`other = "inlet"`, 9, "other", `found "inlet", expected one of "intake" or "exhaust" | `},
		{`other = "intak"`, 9, "other", `found "intak", expected one of "intake" or "exhaust" | did you mean "intake"?`},
		{`other = 1`, 9, "other", `found 1, expected one of "intake" or "exhaust" | `},
		{`count = "3"`, 9, "count", `found "3", expected a whole number | write 3 without quotes`},
		{`count = "three"`, 9, "count", `found "three", expected a whole number | `},
		{`count = 3.0`, 9, "count", `found 3.0, expected a whole number | `},
		{`long = []`, 8, "long", `found a list, expected a whole number | `},
		{`share = "0.5"`, 9, "share", `found "0.5", expected a number | write 0.5 without quotes`},
		{`share = true`, 9, "share", `found true, expected a number | `},
		{`share = inf`, 9, "share", `found inf, expected a finite number | `},
		{`on = "true"`, 6, "on", `found "true", expected true or false | write true without quotes`},
		{`on = 1`, 6, "on", `found 1, expected true or false | `},
		{`half = 3`, 8, "half", `found 3, expected an even number | `},
		{`half = nan`, 8, "half", `found nan, expected a finite number | `},
		{`halves = [2, 3]`, 14, "halves[2]", `found 3, expected an even number | `},
		{`pairs = [[2, 4], [6, "x"]]`, 22, "pairs[2][2]", `found "x", expected an even number | `},
		{`pairs = [[2, 4], [6]]`, 18, "pairs[2]", `expected two numbers | `},
		{`words = "a"`, 9, "words", `found "a", expected a list | write ["a"]`},
		{`words = { a = 1 }`, 9, "words", `found a table, expected a list | put the table in [ ]`},
		{`words = ["a", 2]`, 15, "words[2]", `found 2, expected text in quotes | write "2"`},
		{`words = [2026-03-31]`, 10, "words[1]", `found 2026-03-31, expected text in quotes | write "2026-03-31"`},
		{`any = [1, [{ x = nan }]]`, 18, "any[2][1].x", `found nan, expected a finite number | `},
		{`anything = -inf`, 12, "anything", `found -inf, expected a finite number | `},
		{`part = "x"`, 8, "part", `found "x", expected a table | `},
		{"[parts]\nid = 'x'", 1, "parts", `found a table, expected a list | write [[parts]]`},
		{"[[part]]\nid = 'x'", 1, "part", `found a list of tables, expected a table | write [part] once`},
		{`by_name = 3`, 11, "by_name", `found 3, expected a table | `},
		{`by_name = { "y z" = { id = 3 } }`, 28, `by_name."y z".id`, `found 3, expected text in quotes | write "3"`},
		{`texts = ["a"]`, 9, "texts", `found a list, expected a table | `},
		{`texts = { a = false }`, 15, "texts.a", `found false, expected text in quotes | write "false"`},
	} {
		t.Run(c.source, func(t *testing.T) {
			tree, problems := Parse("test", []byte("name = 'x'\nkind = 'intake'\n"+c.source))
			require.Empty(t, problems)
			problems = tree.Decode(&everything{})
			require.Len(t, problems, 1)
			p := problems[0]
			require.Equal(t, c.want, p.Message+" | "+p.Hint)
			require.Equal(t, c.path, p.Path)
			require.Equal(t, [2]int{3, c.column}, [2]int{p.Position.Line, p.Position.Column})
		})
	}
}

func TestAllMistakesInFileOrder(t *testing.T) {
	tree, _ := Parse("test", []byte("[[parts]]\nsize = 'x'\nid = 1\n[[parts]]\n[zzz]\n[part]\nid = 2\n"))
	var lines []string
	for _, p := range tree.Decode(&everything{}) {
		lines = append(lines, fmt.Sprintf("%d:%d %s", p.Position.Line, p.Position.Column, p.Path))
	}
	require.Equal(t, []string{"1:1 name", "1:1 kind", "2:8 parts[1].size", "3:6 parts[1].id", "4:1 parts[2].id", "5:2 zzz", "7:6 part.id"}, lines)
}

func TestElementsWithMistakesAreLeftOut(t *testing.T) {
	tree, _ := Parse("test", []byte("parts = [1, { id = 'x' }]\nby_name = { a = 1, b = { id = 'y' } }\n"))
	var e everything
	require.Len(t, tree.Decode(&e), 4)
	require.Len(t, e.Parts, 1)
	require.Equal(t, "x", e.Parts[0].ID)
	require.Len(t, e.ByName, 1)
}

func TestAFieldOfAnotherSortIsADefect(t *testing.T) {
	tree, _ := Parse("test", []byte("a = 1"))
	require.PanicsWithValue(t, "document: no decoding into uint8", func() {
		tree.Decode(&struct {
			A uint8 `toml:"a"`
		}{})
	})
}

func TestShown(t *testing.T) {
	require.Equal(t, "a table", Shown(map[string]any{}))
	require.Equal(t, "a list", Shown([]any{1}))
	require.Equal(t, `"x"`, Shown("x"))
	require.Equal(t, "2.5", Shown(2.5))
	require.Equal(t, "2026-03-31", Shown(Moment("2026-03-31")))
	require.Equal(t, `"`+strings.Repeat("x", 40)+`..."`, Shown(strings.Repeat("x", 50)))
}

func TestElementErrorsAreTransparent(t *testing.T) {
	inner := errors.New("inner")
	err := &ElementError{2, inner}
	require.ErrorIs(t, err, inner)
	require.EqualError(t, err, "inner")
}
