package expression

import (
	"errors"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// The world of these tests: vents in rooms, with keys of every sort. Nothing in
// it is a real design.

type ventKind string

func (ventKind) Values() []string { return []string{"inlet", "outlet", "relief"} }

type season string

func (season) Values() []string { return []string{"summer", "winter", "relief"} }

type fuel string

func (fuel) Values() []string { return []string{"gas", "oil"} }

type house struct {
	document.Ref `toml:"-"`

	Home   *home   `toml:"home,required"`
	Report *report `toml:"report"`
	Rooms  []*room `toml:"room"`
	Vents  []*vent `toml:"vent"`
}

type home struct {
	document.Ref `toml:"-"`

	Area     *q.Area   `toml:"area"`
	Volume   *q.Volume `toml:"volume"`
	Bedrooms *int      `toml:"bedrooms"`
	Storeys  *float64  `toml:"storeys"`
	Zone     *string   `toml:"zone"`
}

type report struct {
	document.Ref `toml:"-"`

	Date *string `toml:"date"`
}

type room struct {
	document.Ref `toml:"-"`

	ID     string    `toml:"id,required"`
	Height *q.Length `toml:"height"`
	Fuel   *fuel     `toml:"fuel"`
}

type placed struct {
	X      q.Length       `toml:"x,required"`
	Height *q.Length      `toml:"height"`
	Slope  *q.Slope       `toml:"slope"`
	Warm   *q.Temperature `toml:"warm"`
}

type vent struct {
	document.Ref `toml:"-"`
	placed

	ID      string        `toml:"id,required"`
	Kind    ventKind      `toml:"kind,required"`
	Season  *season       `toml:"season"`
	Flow    *q.Flow       `toml:"flow"`
	Power   *q.Power      `toml:"power"`
	Share   *q.Ratio      `toml:"share"`
	Sound   *q.SoundLevel `toml:"sound"`
	Number  *int          `toml:"number"`
	Tag     *string       `toml:"tag"`
	Open    *bool         `toml:"open"`
	Size    *size         `toml:"size"`
	Room    *link[room]   `toml:"room"`
	Curve   []curvePoint  `toml:"curve"`
	Tags    []string      `toml:"tags"`
	Kinds   []ventKind    `toml:"kinds"`
	Numbers []int         `toml:"numbers"`
	Lengths []q.Length    `toml:"lengths"`
	Secret  string
}

type size struct {
	document.Ref `toml:"-"`

	Width *q.Length `toml:"width"`
	Round bool      `toml:"round"`
}

type curvePoint struct {
	Flow     q.Flow     `toml:"flow,required"`
	Pressure q.Pressure `toml:"pressure,required"`
}

type link[T any] struct {
	ID string
	To *T
}

func (l *link[T]) UnmarshalTOML(v any) error { l.ID = v.(string); return nil }
func (l *link[T]) Target() *T                { return l.To }
func (l *link[T]) Thing() any                { return l.To }

type world struct{ *house }

const worldText = `
[home]
area = "300 ft2"
volume = "80 m3"
bedrooms = 3
zone = "6A"

[[room]]
id = "hall"
height = "8 ft"

[[room]]
id = "den"

[[vent]]
id = "a"
kind = "inlet"
season = "winter"
x = "1 m"
height = "2 m"
flow = "80 cfm"
power = "40 W"
share = "65 %"
sound = "40 dBA"
slope = "1/4 in/ft"
warm = "-5 F"
tag = "x"
open = true
room = "hall"
tags = ["p", "q"]
kinds = ["inlet", "relief"]
numbers = [1, 2, 3]
lengths = ["1 m", "2 m"]
curve = [{ flow = "50 cfm", pressure = "0.4 inwc" }, { flow = "90 cfm", pressure = "0.2 inwc" }]

[[vent]]
id = "b"
kind = "outlet"
x = "3 m"
number = 3
room = "den"

[[vent]]
id = "c"
kind = "outlet"
x = "9 m"
flow = "-1 m3/s"
room = "nowhere"
[vent.size]
round = true
`

func newWorld(t testing.TB) *world {
	tree, problems := document.Parse("world.toml", []byte(worldText))
	require.Empty(t, problems)
	h := &house{}
	require.Empty(t, tree.Decode(h))
	for _, v := range h.Vents {
		for _, r := range h.Rooms {
			if v.Room != nil && v.Room.ID == r.ID {
				v.Room.To = r
			}
		}
	}
	return &world{h}
}

type fixed interface{ at() q.Length }

func (v *vent) at() q.Length { return v.X }

func gap(w *world, a, b fixed) (q.Length, error) { return max(a.at()-b.at(), b.at()-a.at()), nil }

func drop(w *world, a, b *vent) (q.Length, error) {
	var missing document.MissingAll
	for _, v := range []*vent{a, b} {
		if v.Height == nil {
			missing = append(missing, document.Missing{Ref: v.Ref, Key: "height"})
		}
	}
	if missing != nil {
		return 0, missing
	}
	return *a.Height - *b.Height, nil
}

var errBroken = errors.New("broken")

func vocabulary() Vocabulary {
	w := func(facts any) *world { return facts.(*world) }
	return Vocabulary{
		Ref: func(facts any) document.Ref { return w(facts).Ref },
		Label: func(thing any) string {
			if v, ok := thing.(*vent); ok {
				return `vent "` + v.ID + `"`
			}
			return ""
		},
		Roots: []Root{
			{Name: "home", Type: reflect.TypeFor[*home](), Get: func(f any) any { return w(f).Home }},
			{Name: "report", Type: reflect.TypeFor[*report](), Get: func(f any) any { return w(f).Report }},
			{Name: "rooms", Type: reflect.TypeFor[[]*room](), Get: func(f any) any { return w(f).Rooms }},
			{Name: "vents", Type: reflect.TypeFor[[]*vent](), Get: func(f any) any { return w(f).Vents }},
			{Name: "nobody", Type: reflect.TypeFor[[]*vent](), Get: func(any) any { return []*vent{} }},
		},
		Functions: []Function{
			{Name: "gap", Signature: "gap(a, b) length", Call: Call2(gap)},
			{Name: "drop", Signature: "drop(a, b) length", Call: Call2(drop)},
			{Name: "same", Signature: "same(a, b) bool", Call: Call2(func(_ *world, a, b any) (bool, error) { return a == b, nil })},
			{Name: "season_of", Signature: "season_of(vent) text", Call: Call1(func(_ *world, v *vent) (season, error) { return "summer", nil })},
			{Name: "open_in", Signature: "open_in(vent, season) bool", Call: Call2(func(_ *world, v *vent, s season) (bool, error) { return s == "summer", nil })},
			{Name: "any_in", Signature: "any_in(seasons) bool", Call: Call1(func(_ *world, list []season) (bool, error) { return list[0] == "summer", nil })},
			{Name: "rank", Signature: "rank(vent) number", Call: Call1(func(_ *world, v *vent) (int, error) { return 7, nil })},
			{Name: "beside", Signature: "beside(vent) list", Call: Call1(func(f *world, v *vent) ([]*vent, error) { return f.Vents[:1], nil })},
			{Name: "widest", Signature: "widest(vents) length", Call: Call1(func(_ *world, list []*vent) (q.Length, error) { return list[0].X, nil })},
			{Name: "longest", Signature: "longest(lengths) length", Call: Call1(func(_ *world, list []q.Length) (q.Length, error) { return max(0, list[0]), nil })},
			{Name: "twice", Signature: "twice(number) number", Call: Call1(func(_ *world, n float64) (float64, error) { return 2 * n, nil })},
			{Name: "peak", Signature: "peak(vent) point", Call: Call1(func(*world, *vent) (curvePoint, error) { return curvePoint{Pressure: 5}, nil })},
			{Name: "tallest", Signature: "tallest(a) length", Call: Call1(func(_ *world, v *vent) (q.Length, error) { return *v.Height, nil }),
				Reads: func(_ any, args []any) []Read { return []Read{{args[0].(*vent).Ref, "height"}} }},
			{Name: "doubtful", Signature: "doubtful(vent) length", Call: Call1(func(_ *world, v *vent) (q.Length, error) {
				return 0, &Undetermined{"vent " + v.ID + " is doubtful"}
			})},
			{Name: "broken", Signature: "broken(vent) length", Call: Call1(func(*world, *vent) (q.Length, error) { return 0, errBroken })},
			{Name: "crash", Signature: "crash(vent) bool", Call: Call1(func(_ *world, v *vent) (bool, error) { return *(*bool)(nil), nil })},
			{Name: "nowhere", Signature: "nowhere(vent) room", Call: Call1(func(*world, *vent) (*room, error) { return nil, nil })},
			{Name: "endless", Signature: "endless() length", Call: Call0(func(*world) (q.Length, error) { return q.Length(inf()), nil })},
			{Name: "nan", Signature: "nan() length", Call: Call0(func(*world) (q.Length, error) { return q.Length(inf() - inf()), nil })},
		},
	}
}

type oneRow struct{ inputs []reflect.Type }

func (t oneRow) Inputs() []reflect.Type { return t.inputs }
func (t oneRow) Result() reflect.Type   { return reflect.TypeFor[q.Length]() }
func (t oneRow) Look(args []any) (any, error) {
	switch flow := args[0].(q.Flow); {
	case flow > 0.1:
		return nil, &Undetermined{"the table ends at 100 L/s"}
	case flow < 0:
		return q.Length(-inf()), nil
	case flow < 0.03:
		return q.Length(inf()), nil
	}
	return q.Length(12), nil
}

func ruleNames() Names {
	return Names{
		Variables: []Variable{{"inlet", reflect.TypeFor[*vent]()}, {"outlet", reflect.TypeFor[*vent]()}},
		Limits:    map[string]any{"gap": q.Length(3.048), "rate": q.Flow(0.02), "people": 2, "factor": 1.5, "word": "inlet", "flag": true, "local": nil},
		Tables:    map[string]Table{"reach": oneRow{[]reflect.Type{reflect.TypeFor[q.Flow]()}}, "reach2": oneRow{[]reflect.Type{reflect.TypeFor[q.Flow](), reflect.TypeFor[float64]()}}},
	}
}

func newLanguage(t testing.TB) *Language {
	l, err := theLanguage()
	require.NoError(t, err)
	return l
}

var theLanguage = sync.OnceValues(func() (*Language, error) { return New(vocabulary()) })

// newScope has vent a as inlet and vent b, which lacks most keys, as outlet.
func newScope(t testing.TB) *Scope {
	w := newWorld(t)
	s := NewScope(w, 10_000_000)
	s.Subjects = []any{w.Vents[0], w.Vents[1]}
	return s
}

func condition(t testing.TB, text string) *Condition {
	t.Helper()
	c, err := newLanguage(t).Condition(text, ruleNames())
	require.NoError(t, err, text)
	return c
}
