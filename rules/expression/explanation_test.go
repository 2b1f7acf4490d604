package expression

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func explain(t testing.TB, text string) Explanation {
	t.Helper()
	e, err := condition(t, text).Explain(newScope(t))
	require.NoError(t, err, text)
	return e
}

// story writes an explanation down: one line for each part, then what is missing.
func story(e Explanation) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%v\n", e.Truth)
	for _, p := range e.Parts {
		fmt.Fprintf(&b, "%d+%d %s | %s %s %s", p.Offset, p.Length, p.Text, printed(p.Found), p.Operator, printed(p.Required))
		if p.Difference != nil {
			fmt.Fprintf(&b, " by %s", printed(p.Difference))
		}
		fmt.Fprintf(&b, " %v", p.Truth)
		if p.Negated {
			b.WriteString(" negated")
		}
		for _, of := range p.Of {
			fmt.Fprintf(&b, " of %s", printed(of))
		}
		b.WriteString("\n")
	}
	for i := range e.Missing {
		fmt.Fprintf(&b, "%v\n", &e.Missing[i])
	}
	for _, reason := range e.Undetermined {
		fmt.Fprintf(&b, "judge: %s\n", reason)
	}
	return strings.TrimRight(b.String(), "\n")
}

func printed(v any) string {
	switch x := v.(type) {
	case nil:
		return "?"
	case *vent:
		return x.ID
	case *room:
		return x.ID
	case []any:
		return fmt.Sprint(x)
	}
	return q.Format(v, q.SI)
}

func TestExplanations(t *testing.T) {
	for text, want := range map[string]string{
		"gap(inlet, outlet) >= 10 ft and inlet.flow >= 200 cfm": `false
0+27 gap(inlet, outlet) >= 10 ft | 2000 mm >= 3048 mm by 1048 mm false
32+21 inlet.flow >= 200 cfm | 37.8 L/s >= 94.4 L/s by 56.6 L/s false`,
		"gap(inlet, outlet) >= limit.gap or inlet.open": `true
35+10 inlet.open | yes == yes true`,
		"inlet.kind == 'outlet' or gap(inlet, outlet) >= limit.gap": `false
0+22 inlet.kind == 'outlet' | inlet == outlet false
26+31 gap(inlet, outlet) >= limit.gap | 2000 mm >= 3048 mm by 1048 mm false`,
		"not (gap(inlet, outlet) < 10 ft)": `false
5+26 gap(inlet, outlet) < 10 ft | 2000 mm >= 3048 mm by 1048 mm false negated`,
		"not (inlet.open and inlet.x > 2 m)": `true
20+13 inlet.x > 2 m | 1000 mm <= 2000 mm by 1000 mm true negated`,
		"not inlet.open": `false
4+10 inlet.open | yes == no false negated`,
		"not not inlet.open": `true
8+10 inlet.open | yes == yes true`,
		"all(vents, .kind == 'inlet' or (.flow > 100 cfm and .x > 3 ft))": `false
11+16 .kind == 'inlet' | outlet == inlet false of c
32+15 .flow > 100 cfm | -1000 L/s > 47.2 L/s by 1047.2 L/s false of c`,
		"all(vents, .kind == 'inlet' or .x > 3 m)": `false
11+16 .kind == 'inlet' | outlet == inlet false of b
31+8 .x > 3 m | 3000 mm > 3000 mm by 0 mm false of b`,
		"none(vents, .x > 8 m)": `false
12+8 .x > 8 m | 9000 mm <= 8000 mm by -1000 mm false negated of c`,
		"any(vents, .x > 20 m)": `false
11+9 .x > 20 m | 1000 mm > 20 m by 19 m false of a
11+9 .x > 20 m | 3000 mm > 20 m by 17 m false of b
11+9 .x > 20 m | 9000 mm > 20 m by 11 m false of c`,
		"any(nobody, .open)": `false
0+18 any(nobody, .open) | no == yes false`,
		"all(nobody, .open)": `true
0+18 all(nobody, .open) | yes == yes true`,
		"all(filter(vents, .x < 2 m), any(rooms, .id == 'attic'))": `false
40+14 .id == 'attic' | hall == attic false of a of hall
40+14 .id == 'attic' | den == attic false of a of den`,
		"let g = gap(inlet, outlet); g >= 10 ft and g <= 100 ft": `false
28+10 g >= 10 ft | 2000 mm >= 3048 mm by 1048 mm false`,
		"let far = gap(inlet, outlet) >= 10 ft; far or far": `false
10+27 gap(inlet, outlet) >= 10 ft | 2000 mm >= 3048 mm by 1048 mm false`,
		"let far = gap(inlet, outlet) >= 10 ft; far and not far": `false
10+27 gap(inlet, outlet) >= 10 ft | 2000 mm >= 3048 mm by 1048 mm false`,
		"known(outlet.flow) ? outlet.flow > 20 cfm : inlet.flow > 400 cfm": `false
0+18 known(outlet.flow) | no == yes false
44+20 inlet.flow > 400 cfm | 37.8 L/s > 188.8 L/s by 151 L/s false`,
		"count(vents, .kind == 'inlet') == 2": `false
0+35 count(vents, .kind == 'inlet') == 2 | 1 == 2 by 1 false`,
		"one(vents, .kind == 'outlet')": `false
0+29 one(vents, .kind == 'outlet') | no == yes false`,
		"inlet.kind in ['outlet', 'relief']": `false
0+34 inlet.kind in ['outlet', 'relief'] | inlet in [outlet relief] false`,
		"inlet.kind not in ['inlet', 'relief']": `false
0+37 inlet.kind not in ['inlet', 'relief'] | inlet not in [inlet relief] false negated`,
		"home.zone startsWith '7'": `false
0+24 home.zone startsWith '7' | 6A startsWith 7 false`,
		"inlet.warm >= 0 C": `false
0+17 inlet.warm >= 0 C | -20.6 C >= 0 C by 20.6 K false`,
		"inlet.sound < 30 dBA": `false
0+20 inlet.sound < 30 dBA | 40 dBA < 30 dBA false`,
		"inlet.x > table.reach(1 cfm)": `false
0+28 inlet.x > table.reach(1 cfm) | 1000 mm > no limit false`,
		"inlet.slope >= 3 %": `false
0+18 inlet.slope >= 3 % | 20.8 mm/m >= 3 % by 9.17 mm/m false`,
		"true":  "true\n0+4 true | yes == yes true",
		"false": "false\n0+5 false | no == yes false",
		"inlet.open == (1 > 2)": `false
0+21 inlet.open == (1 > 2) | yes == no false`,
		" ( ( inlet.x ) +\n 1 m ) / 2 >  3 m": `false
1+33 ( ( inlet.x ) + 1 m ) / 2 > 3 m | 1000 mm > 3000 mm by 2000 mm false`,
		"outlet.flow > outlet.power * 1 cfm/W": `unknown
0+36 outlet.flow > outlet.power * 1 cfm/W | ? > ? unknown
needs flow of vent "b"
needs power of vent "b"`,
		"inlet.flow > outlet.flow and outlet.height > 1 m and inlet.open": `unknown
0+24 inlet.flow > outlet.flow | 37.8 L/s > ? unknown
29+19 outlet.height > 1 m | ? > 1000 mm unknown
needs flow of vent "b"
needs height of vent "b"`,
		"sum(vents, .power) > 5 W and drop(outlet, vents[2]) > 1 m": `unknown
0+24 sum(vents, .power) > 5 W | ? > 5 W unknown
29+28 drop(outlet, vents[2]) > 1 m | ? > 1000 mm unknown
needs power of vent "b"
needs power of vent "c"
needs vent[2].height
needs vent[3].height`,
		"count(vents, .flow > 1 cfm and .power > 1 W) >= 1": `unknown
0+49 count(vents, .flow > 1 cfm and .power > 1 W) >= 1 | ? >= 1 unknown
needs flow of vent "b"
needs power of vent "b"`,
		"outlet.open ? outlet.flow > 1 cfm : inlet.open": `unknown
0+11 outlet.open | ? == yes unknown
14+19 outlet.flow > 1 cfm | ? > 0.472 L/s unknown
needs open of vent "b"
needs flow of vent "b"`,
		"outlet.open ? inlet.open : inlet.x > 0 m": `true
14+10 inlet.open | yes == yes true
27+13 inlet.x > 0 m | 1000 mm > 0 mm by -1000 mm true`,
		"any(filter(vents, .open), .x > 8 m)": `unknown
0+35 any(filter(vents, .open), .x > 8 m) | ? == yes unknown
needs open of vent "b"
needs open of vent "c"`,
		"doubtful(inlet) > 1 m and outlet.open": `unknown
0+21 doubtful(inlet) > 1 m | ? > 1000 mm unknown
26+11 outlet.open | ? == yes unknown
needs open of vent "b"
judge: vent a is doubtful`,
		"known(report.date)": `false
0+18 known(report.date) | no == yes false`,
		"report.date == 'x'": `unknown
0+18 report.date == 'x' | ? == x unknown
needs report`,
	} {
		t.Run(text, func(t *testing.T) {
			got := story(explain(t, text))
			assert.Equal(t, want, got)
		})
	}
}

func paths(reads []Read) string {
	var list []string
	for _, r := range reads {
		list = append(list, r.Ref.KeyPath(r.Key))
	}
	return strings.Join(list, " ")
}

func TestReadsAreThoseOfTheParts(t *testing.T) {
	for text, want := range map[string]string{
		"inlet.x > 2 m or inlet.height > 9 m":                "vent[1].x vent[1].height",
		"inlet.x > 0 m or outlet.height > 9 m":               "vent[1].x",
		"let x = inlet.x; x > 2 m or x > 3 m":                "vent[1].x",
		"let x = inlet.x > 2 m; x and x":                     "vent[1].x",
		"inlet.room.height > 9 m":                            "vent[1].room room[1].height",
		"known(inlet.size.width)":                            "vent[1].size",
		"(outlet.flow ?? inlet.flow) > 900 cfm":              "vent[2].flow vent[1].flow",
		"all(filter(vents, .kind == 'outlet'), .x > 5 m)":    "vent[1].kind vent[2].kind vent[3].kind vent[2].x",
		"count(vents, .x > 2 m) > 7":                         "vent[1].x vent[2].x vent[3].x",
		"home.area > 900 ft2":                                "home.area",
		"inlet.kind == 'outlet' and outlet.kind == 'outlet'": "vent[1].kind",
		"outlet.flow > 3 cfm":                                "vent[2].flow",
	} {
		assert.Equal(t, want, paths(explain(t, text).Reads), text)
	}
}

func TestReadsOfEachComparison(t *testing.T) {
	e := explain(t, "let x = inlet.x; x > 2 m or x + outlet.x > 90 m")
	require.Len(t, e.Parts, 2)
	assert.Equal(t, "vent[1].x", paths(e.Parts[0].Reads))
	assert.Equal(t, "vent[2].x vent[1].x", paths(e.Parts[1].Reads))
}

func TestFunctionsReadTheirThings(t *testing.T) {
	e := explain(t, "gap(inlet, outlet) > 9 m")
	require.Len(t, e.Reads, 2)
	assert.Equal(t, []string{"/vent/0", "/vent/1"}, []string{e.Reads[0].Ref.Pointer(), e.Reads[1].Ref.Pointer()})
	assert.Empty(t, e.Reads[0].Key)
}

func TestFunctionsTellWhatTheyRead(t *testing.T) {
	e := explain(t, "tallest(inlet) > 9 m")
	require.Len(t, e.Parts, 1)
	require.Len(t, e.Parts[0].Reads, 2)
	assert.Equal(t, Read{Ref: e.Reads[0].Ref, Key: "height"}, e.Parts[0].Reads[1])
}

// Values and truths that are used many times over cost no more than once: each
// name below doubles the one before it.
func TestNamesUsedOverAndOver(t *testing.T) {
	numbers, truths := "let n0 = outlet.number + inlet.number; ", "let t0 = inlet.open and inlet.x > 2 m; "
	for i := 1; i <= 40; i++ {
		numbers += fmt.Sprintf("let n%d = n%d + n%d; ", i, i-1, i-1)
		truths += fmt.Sprintf("let t%d = t%d or t%d; ", i, i-1, i-1)
	}
	e := explain(t, numbers+"n40 > 1")
	assert.Len(t, e.Missing, 1)
	assert.Equal(t, "vent[2].number vent[1].number", paths(e.Reads))
	e = explain(t, truths+"t40")
	assert.Len(t, e.Parts, 1)
	assert.Equal(t, False, e.Truth)
}
