package expression

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestVocabularies(t *testing.T) {
	thing, get := reflect.TypeFor[*vent](), func(any) any { return nil }
	root := func(name string, of reflect.Type) Vocabulary {
		return Vocabulary{Roots: []Root{{Name: name, Type: of, Get: get}}}
	}
	function := func(name string, call Call) Vocabulary {
		return Vocabulary{Functions: []Function{{Name: name, Call: call}}}
	}
	good := Call0(func(*world) (bool, error) { return true, nil })
	for want, v := range map[string]Vocabulary{
		`"limit" means something already, expected another name`:                                    root("limit", thing),
		`"all" means something already, expected another name`:                                      root("all", thing),
		`"in" means something already, expected another name`:                                       function("in", good),
		`"vents" means something already, expected another name`:                                    {Roots: []Root{{Name: "vents", Type: thing, Get: get}, {Name: "vents", Type: thing, Get: get}}},
		`"f" means something already, expected another name`:                                        {Functions: []Function{{Name: "f", Call: good}, {Name: "f", Call: good}}},
		`"Vents" is not a name, expected lower-case letters, digits and _, beginning with a letter`: root("Vents", thing),
		`"" is not a name, expected lower-case letters, digits and _, beginning with a letter`:      root("", thing),
		`"2x" is not a name, expected lower-case letters, digits and _, beginning with a letter`:    function("2x", good),
		`root "x" has type int, expected a pointer to a struct or a slice`:                          root("x", reflect.TypeFor[int]()),
		`root "x" has type []chan int, expected a pointer to a struct or a slice`:                   root("x", reflect.TypeFor[[]chan int]()),
		`function "f" gives map[string]int, which expressions cannot hold`:                          function("f", Call0(func(*world) (map[string]int, error) { return nil, nil })),
		`function "f" takes int, which expressions cannot hold`:                                     function("f", Call1(func(*world, int) (bool, error) { return true, nil })),
		`function "f" takes expression.loose, which expressions cannot hold`:                        function("f", Call1(func(*world, loose) (bool, error) { return true, nil })),
		`function "f" takes chan int, which expressions cannot hold`:                                function("f", Call1(func(*world, chan int) (bool, error) { return true, nil })),
	} {
		_, err := New(v)
		assert.EqualError(t, err, want)
	}
}

func TestNamesOfARule(t *testing.T) {
	l := newLanguage(t)
	assert.NoError(t, l.CheckName("intake_2"))
	assert.EqualError(t, l.CheckName("gap"), `"gap" means something already, expected another name`)
	n := Names{Variables: []Variable{{"vents", reflect.TypeFor[*vent]()}}}
	_, err := l.Condition("true", n)
	assert.EqualError(t, err, `"vents" means something already, expected another name`)
	n = Names{Variables: []Variable{{"x", reflect.TypeFor[chan int]()}}}
	_, err = l.Condition("x == 1", n)
	assert.EqualError(t, err, `"x" has type chan int, which expressions cannot hold`)
	_, err = l.Condition("limit.odd == 1", Names{Limits: map[string]any{"odd": make(chan int)}})
	assert.EqualError(t, err, `limit "odd" has type chan int, which expressions cannot hold`)
	_, err = l.Condition("table.odd(1) == 1", Names{Tables: map[string]Table{"odd": oddTable{}}})
	assert.EqualError(t, err, `table "odd" holds chan int, which expressions cannot hold`)
}

type panickyTable struct{ oddTable }

func (panickyTable) Result() reflect.Type   { return reflect.TypeFor[bool]() }
func (panickyTable) Inputs() []reflect.Type { panic("no inputs") }

// A defect of a vocabulary, or of the parser, ends one compilation, not the program.
func TestDefectsAreMistakes(t *testing.T) {
	_, err := newLanguage(t).Condition("table.x(1)", Names{Tables: map[string]Table{"x": panickyTable{}}})
	assert.EqualError(t, err, "the expression cannot be compiled: no inputs")
	s := newScope(t)
	l, err := New(Vocabulary{Roots: []Root{{Name: "void", Type: reflect.TypeFor[*vent](), Get: func(any) any { return nil }}}})
	assert.NoError(t, err)
	c, err := l.Condition("void.x > 1 m or known(void)", Names{})
	assert.NoError(t, err)
	e, err := c.Explain(s)
	assert.NoError(t, err)
	assert.Equal(t, "needs void", e.Missing[0].Error())
	assert.Empty(t, (&source{}).text(span{3, 2}))
}

type oddTable struct{}

func (oddTable) Inputs() []reflect.Type  { return nil }
func (oddTable) Result() reflect.Type    { return reflect.TypeFor[chan int]() }
func (oddTable) Look([]any) (any, error) { return nil, nil }

// Structs of all sorts: what has no toml tag, or a type without values in the
// language, is not there.
type oddThing struct {
	*embeddedPointer
	document.Ref `toml:"-"`
	Kept         q.Length       `toml:"kept"`
	Skipped      q.Length       `toml:"-"`
	Table        map[string]int `toml:"table"`
	Anything     any            `toml:"anything"`
	Nested       [][]int        `toml:"nested"`
	Plain        link[room]     `toml:"plain"`
	Must         *link[room]    `toml:"must,required"`
	Inline       size           `toml:"inline"`
	Parts        []curvePoint   `toml:"parts"`
	Small        float32        `toml:"small"`
	hidden       q.Length       `toml:"hidden"`
}

type embeddedPointer struct {
	Far q.Length `toml:"far"`
}

func TestStructures(t *testing.T) {
	s := structureOf(reflect.TypeFor[*oddThing]())
	assert.Equal(t, []string{"inline", "kept", "must", "nested", "parts", "plain", "small"}, s.keys)
	assert.False(t, s.members["must"].optional)
	assert.False(t, s.members["plain"].optional)
	r := &room{ID: "r"}
	thing := &oddThing{Kept: 2, Nested: [][]int{{1}, {2, 3}}, Plain: link[room]{To: r}, Inline: size{Round: true}, Small: 0.5}
	for key, want := range map[string]any{"kept": q.Length(2), "plain": r, "small": 0.5, "inline": &thing.Inline,
		"nested": []any{[]any{1.0}, []any{2.0, 3.0}}, "parts": []any{}} {
		v, err := s.members[key].read(thing)
		assert.NoError(t, err, key)
		assert.Equal(t, want, v, key)
	}
	assert.Zero(t, thing.hidden)
	_, err := s.members["must"].read(thing)
	assert.EqualError(t, err, "needs must")
}

func TestPlaces(t *testing.T) {
	for _, v := range []any{nil, 3.0, "x", []any{}, new(int), &embeddedPointer{}} {
		_, ok := placeOf(v)
		assert.False(t, ok, "%T", v)
	}
	ref, ok := placeOf(newWorld(t).Vents[1])
	assert.True(t, ok)
	assert.Equal(t, "vent[2]", ref.Path())
	assert.Equal(t, document.Ref{}, refOf(&embeddedPointer{}))
}

func TestShapesHaveNames(t *testing.T) {
	for want, of := range map[string]reflect.Type{
		"a length": reflect.TypeFor[q.Length](), "an area": reflect.TypeFor[q.Area](), "a plain number": reflect.TypeFor[int](), "text": reflect.TypeFor[ventKind](),
		"a yes or no": reflect.TypeFor[bool](), "a curve point": reflect.TypeFor[curvePoint](), "a list": reflect.TypeFor[[]int](),
	} {
		s, _, ok := shapeOf(of)
		assert.True(t, ok)
		assert.Equal(t, want, s.String())
	}
	assert.Equal(t, "a limit that is not set", unsetShape.String())
	assert.Equal(t, "such as 5", numberShape.example())
}

// What is compiled late is the same, and a mistake in it is told, not passed over.
func TestKnownTextsAreCompiledLate(t *testing.T) {
	l, n := newLanguage(t), ruleNames()
	late, err := l.KnownCondition("gap(inlet, outlet) >= 10 ft", n).Explain(newScope(t))
	assert.NoError(t, err)
	early, err := condition(t, "gap(inlet, outlet) >= 10 ft").Explain(newScope(t))
	assert.NoError(t, err)
	assert.Equal(t, early, late)
	wrong := l.KnownCondition("gap(inlet, outlet) >= 10 parsec", n)
	_, err = wrong.Explain(newScope(t))
	assert.ErrorContains(t, err, "parsec")
	_, err = wrong.Truth(newScope(t))
	assert.ErrorContains(t, err, "parsec")
	assert.Empty(t, wrong.Variants())
	assert.Equal(t, "gap 10 ft", l.KnownTemplate("gap {10 ft}", n).Text(newScope(t), q.IP))
	assert.Contains(t, l.KnownTemplate("gap {10 parsec}", n).Text(newScope(t), q.IP), "parsec")
}

// loose is text that is not one of a few words.
type loose string
