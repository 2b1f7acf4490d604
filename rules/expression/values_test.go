package expression

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// evaluate runs an expression in both ways, which must agree.
func evaluate(t testing.TB, text string) result {
	t.Helper()
	c, err := newLanguage(t).compile(text, ruleNames())
	require.NoError(t, err, text)
	s := newScope(t)
	r, err := s.begin(c)
	require.NoError(t, err)
	var v result
	require.NoError(t, r.guarded(func() { v = c.root.value(r) }), text)
	out, err := byMachine(t, c, s)
	if err == nil {
		require.Nil(t, v.lacks, text)
		require.Equal(t, v.value, out, text)
	}
	return v
}

// The conversions rest on definitions: 1 in is 25.4 mm, 1 ft is 12 in, 1 min is
// 60 s (NIST SP 811, appendix B).
func TestValues(t *testing.T) {
	const foot = 0.3048
	for text, want := range map[string]any{
		// literals
		"10 ft": q.Length(10 * foot), "10ft": q.Length(10 * foot), "12 ft 4 in": q.Length(12*foot + 4*foot/12),
		"12 ft 4 1/2 in": q.Length(12*foot + 4.5*foot/12), "36 in": q.Length(3 * foot), "36 inch": q.Length(3 * foot),
		"3/8 in": q.Length(0.375 * foot / 12), "4 1/2 in": q.Length(4.5 * foot / 12), "1/4 in/ft": q.Slope(0.25 / 12),
		"0.25 in/ft": q.Slope(0.25 / 12), "1_000 mm": q.Length(1), ".5 m": q.Length(0.5),
		"-5 F": q.Temperature(-5*5.0/9 + 459.67*5/9), "- 5 F": q.Temperature(-5*5.0/9 + 459.67*5/9), "65 %": q.Ratio(0.65),
		"0.1 in w.c.": q.Pressure(0.1 * 0.0254 * 1000 * 9.80665), "2 ft²": q.Area(2 * foot * foot),
		"0.03 cfm/ft2": q.Velocity(0.03 * foot / 60), "60 ft/min": q.Velocity(foot), "R-8": q.ThermalResistance(8 * 0.3048 * 0.3048 * 5 / 9 * 3600 / 1055.05585262),
		"3": 3.0, "2.5": 2.5, "-3": -3.0, "true": true, "'a'": "a", "36 in in [36 in, 48 in]": true, "36 in not in [48 in]": true,
		"[36 in][0]": q.Length(3 * foot), "true ? 36 in : 48 in": q.Length(3 * foot), "let in_feet = 36 in; in_feet": q.Length(3 * foot),
		"3 in [1, 3]": true, "3 in [1, 2]": false, "10 ft/twice(5)": q.Length(foot), "10 ft / twice(5)": q.Length(foot),
		// arithmetic of quantities
		"2 ft + 6 in": q.Length(2.5 * foot), "2 ft - 6 in": q.Length(1.5 * foot), "-(2 ft)": q.Length(-2 * foot), "3 m -1 m": q.Length(2),
		"2 m * 3 m": q.Area(6), "6 m2 / 3 m": q.Length(2), "6 m2 * 2 m": q.Volume(12), "2 m * 6 m2": q.Volume(12), "12 m3 / 6 m2": q.Length(2),
		"2 m/s * 3 m2": q.Flow(6), "3 m2 * 2 m/s": q.Flow(6), "6 m3/s / 3 m2": q.Velocity(2), "6 m3/s / 2 m/s": q.Area(3),
		"3600 1/h * 2 m3": q.Flow(2), "2 m3/s / 2 m3": q.AirChange(1), "2 m3/s / 4 W": q.Efficacy(0.5), "2 m3/s * 3 s": q.Volume(6),
		"2 m/s * 3 s": q.Length(6), "2 Pa * 3 m3/s": q.Power(6), "3600 1/h * 2 s": 2.0, "10 mm/m * 2 m": q.Length(0.02), "1 m / 10 mm/m": q.Length(100),
		"6 m / 3 m": q.Ratio(2), "6 m * 2": q.Length(12), "2 * 6 m": q.Length(12), "6 m / 2": q.Length(3), "50 % * 6 m": q.Length(3),
		"6 m * 50 %": q.Length(3), "6 m / 50 %": q.Length(12), "(2 m + 4 m) / 2": q.Length(3), "1.5 * 2 m": q.Length(3),
		"50 % * 50 %": q.Ratio(0.25), "50 % + 10 %": q.Ratio(0.6), "2 * 30 %": q.Ratio(0.6), "30 % * 2": q.Ratio(0.6), "30 % / 2": q.Ratio(0.15),
		"3 / 50 %": 6.0, "len(vents) * 50 %": q.Ratio(1.5), "len(vents) - 50 %": q.Ratio(2.5), "50 % + len(vents)": q.Ratio(3.5), "50 % - len(vents)": q.Ratio(-2.5),
		"20 C - 15 C": q.TemperatureDifference(5), "20 C - 5 K": q.Temperature(288.15), "20 C + 5 K": q.Temperature(298.15), "5 K + 20 C": q.Temperature(298.15),
		"1 + 2 * 3 - 4 / 2": 5.0, "(1 + 2) * 3": 9.0, "7 / 2": 3.5,
		// functions
		"abs(-2 m)": q.Length(2), "abs(2)": 2.0, "min(3 m, 1 m, 2 m)": q.Length(1), "max(3 m, 1 m)": q.Length(3), "min([3, 1])": 1.0, "max(map(vents, .x))": q.Length(9),
		"max(1 C, 2 C)": q.Temperature(275.15), "sum([1 m, 2 m])": q.Length(3), "sum(vents, .x)": q.Length(13), "sum(nobody, .x)": q.Length(0), "mean([1, 2, 6])": 3.0,
		"mean(map(vents, .x))": q.Length(13.0 / 3), "sum(inlet.lengths)": q.Length(3), "sum(inlet.numbers)": 6.0, "sum(inlet.curve, .flow) / 1 cfm > 100 %": true,
		"round(2.5)": 3.0, "floor(2.7)": 2.0, "ceil(2.1)": 3.0, "ceil(300 ft2 / 100 ft2)": 3.0, "floor(0.3 m / 0.1 m)": 3.0, "ceil(301 ft2 / 100 ft2)": 4.0,
		"len(vents)": 3.0, "len(nobody)": 0.0, "first(vents).id": "a", "last(vents).id": "c", "vents[1].id": "b", "count(vents, .x > 2 m)": 2.0,
		"len(filter(vents, .x > 2 m))": 2.0, "map(vents, .x)[2]": q.Length(9), "map(vents, map(vents, .x))[0][2]": q.Length(9), "first(inlet.curve).pressure / 1 inwc": q.Ratio(0.4),
		// keys
		"home.bedrooms": 3.0, "7.5 cfm * (home.bedrooms + 1) / 1 cfm": q.Ratio(30), "inlet.kind": "inlet", "inlet.room.id": "hall", "inlet.tags[1]": "q", "inlet.curve[1].flow / 1 cfm": q.Ratio(90),
		"vents[2].size.round": true, "season_of(inlet)": "summer", "open_in(inlet, 'summer')": true, "open_in(inlet, inlet.open ? 'winter' : 'relief')": false, "open_in(inlet, season_of(inlet))": true, "any_in(['summer', 'relief'])": true, "rank(inlet)": 7.0, "first(beside(inlet)).id": "a", "widest(filter(vents, .x > 2 m))": q.Length(3), "widest(vents)": q.Length(1),
		"longest(map(vents, .x))": q.Length(1), "longest(inlet.lengths)": q.Length(1), "twice(home.bedrooms)": 6.0,
		// limits and tables
		"limit.gap": q.Length(3.048), "limit.people * 2": 4.0, "limit.word": "inlet", "limit.flag": true, "-limit.factor": -1.5,
		"table.reach(80 cfm)": q.Length(12), "table.reach2(80 cfm, 2)": q.Length(12), "table.reach(inlet.flow) + 1 m": q.Length(13),
		"table.reach(1 cfm) > 1000 m": true, "table.reach(-1 cfm) < -1000 m": true, "table.reach(1 cfm) == table.reach(2 cfm)": true, "table.reach(1 cfm) - 5 m > 9 m": true,
		"2 * table.reach(1 cfm) > 9 m": true, "min(table.reach(1 cfm), 3 m)": q.Length(3), "table.reach(1 cfm) >= 3 m and table.reach(-1 cfm) != 3 m": true,
		// comparisons
		"10 ft == 3048 mm": true, "10 ft != 3048 mm": false, "10 ft <= 3048 mm": true, "10 ft >= 3048 mm": true, "10 ft < 3048 mm": false, "10 ft > 3048 mm": false,
		"0.1 + 0.2 == 0.3": true, "0.1 + 0.2 > 0.3": false, "0.1 + 0.2 in [0.3]": true, "abs(9 m - 10 m) / 10 m <= 10 %": true, "1 m / 4 m == 25 %": true,
		"count(vents, .x > 2 m) / len(vents) >= 50 %": true, "1 in / 1 ft >= 1/4 in/ft": true, "inlet.slope >= 2 %": true, "2 % <= inlet.slope": true, "inlet.slope < 3 %": true,
		"inlet.kind == 'inlet'": true, "inlet.kind in ['inlet', 'relief']": true, "inlet.kind not in ['relief']": true, "inlet.kind in inlet.kinds": true, "outlet.kind in inlet.kinds": false,
		"home.zone startsWith '6'": true, "home.zone endsWith 'A'": true, "home.zone contains '7'": false, "home.zone in ['6A', '6B']": true, "inlet.kind != inlet.season": true,
		"inlet == vents[0]": true, "inlet != outlet": true, "inlet in vents": true, "outlet in beside(inlet)": false, "true == (1 < 2)": true, "true != (1 < 2)": false,
		"inlet.warm < 0 C": true, "inlet.sound < 45 dBA": true, "vents[0].room == rooms[0]": true, `inlet.tag == "x"`: true, "inlet.tag == `x`": true,
		"1 < 2 and 2 < 3 && 3 < 4": true, "1 > 2 or 2 > 3 || 3 < 4": true, "!(1 > 2)": true, "not not true": true,
		"true // 10 ft": true, "true // x\n and true": true, "2 ft³": q.Volume(2 * foot * foot * foot), "(1 > 2 ? 1 m : 2 m)": q.Length(2), "home.bedrooms > 50 %": true, "peak(inlet).pressure": q.Pressure(5), "true /* 'x */": true, "'it\\'s 10 ft' == \"it's 10 ft\"": true, "all(vents, {.x > 0 m})": true, "vents | all(.x > 0 m)": true,
	} {
		v := evaluate(t, text)
		if assert.Nil(t, v.lacks, text) {
			assertSame(t, want, v.value, text)
		}
	}
}

// assertSame compares with the tolerance of all comparisons.
func assertSame(t testing.TB, want, got any, text string) {
	t.Helper()
	if !assert.IsType(t, want, got, text) {
		return
	}
	if s, _, ok := shapeOf(typeOf(want)); ok && s.ordered() {
		same, err := equality(s)(want, got)
		assert.NoError(t, err, text)
		assert.True(t, same, "%s: expected %v, found %v", text, want, got)
		return
	}
	assert.Equal(t, want, got, text)
}

// What has no value is for a person to judge; nothing turns into an infinity or
// into something that is not a number.
func TestUndetermined(t *testing.T) {
	for text, want := range map[string]string{
		"1 / 0 > 5":                              "division by zero in 1 / 0",
		"1 m / (2 m - 200 cm) > 5 %":             "division by zero in 1 m / (2 m - 200 cm)",
		"0 / 0 == 0":                             "division by zero in 0 / 0",
		"1e308 * 10 > 1":                         "the result is too large in 1e308 * 10",
		"-1e308 - 1e308 < 1":                     "the result is too large in -1e308 - 1e308",
		"sum([1e308, 1e308]) > 1":                "the result is too large in sum([1e308, 1e308])",
		"endless() - endless() > 1 m":            "no result with a value that is without limit or not permitted in endless() - endless()",
		"1 m - endless() < 1 m":                  "no result with a value that is without limit or not permitted in 1 m - endless()",
		"-endless() < 1 m":                       "no result with a value that is without limit or not permitted in -endless()",
		"0 * endless() < 1 m":                    "no result with a value that is without limit or not permitted in 0 * endless()",
		"1 m / endless() < 1 %":                  "no result with a value that is without limit or not permitted in 1 m / endless()",
		"nan() > 1 m":                            "a value is not a number in nan() > 1 m",
		"nan() != nan()":                         "a value is not a number in nan() != nan()",
		"not (nan() < 1 m)":                      "a value is not a number in nan() < 1 m",
		"nan() in [1 m]":                         "a value is not a number in nan() in [1 m]",
		"nan() + 1 m > 1 m":                      "a value is not a number in nan() + 1 m",
		"vents[7].x > 1 m":                       "no such element in vents[7]",
		"first(nobody).x > 1 m":                  "no element in first(nobody)",
		"last(nobody).x > 1 m":                   "no element in last(nobody)",
		"mean(map(nobody, .x)) > 1 m":            "mean of nothing in mean(map(nobody, .x))",
		"max(map(nobody, .x)) > 1 m":             "max of nothing in max(map(nobody, .x))",
		"limit.local > 3 m":                      "limit.local is not set",
		"3 m > 2 * limit.local":                  "limit.local is not set",
		"inlet.x > max(1 m, limit.local)":        "limit.local is not set",
		"twice(limit.local) > 3":                 "limit.local is not set",
		"sum([limit.local]) > 3":                 "limit.local is not set",
		"inlet.kind == limit.local":              "limit.local is not set",
		"inlet.kind in [limit.local]":            "limit.local is not set",
		"inlet.kind in limit.local":              "limit.local is not set",
		"(inlet.open ? limit.local : 3 m) > 1 m": "limit.local is not set",
		"-limit.local > 1 m":                     "limit.local is not set",
		"limit.local":                            "limit.local is not set",
		"table.reach(1 m3/s) > 1 m":              "the table ends at 100 L/s",
		"doubtful(outlet) > 1 m":                 "vent b is doubtful",
		"nowhere(inlet).height > 1 m":            "nowhere() finds nothing",
		"any(vents, doubtful(#) > .height)":      "vent a is doubtful",
	} {
		c, s := condition(t, text), newScope(t)
		truth, err := c.Truth(s)
		require.NoError(t, err, text)
		assert.Equal(t, Unknown, truth, text)
		e, err := c.Explain(s)
		require.NoError(t, err, text)
		if assert.NotEmpty(t, e.Undetermined, text) {
			assert.Equal(t, want, e.Undetermined[0], text)
		}
	}
}

func TestFailures(t *testing.T) {
	c, s := condition(t, "broken(inlet) > 1 m or inlet.open"), newScope(t)
	_, err := c.Truth(s)
	assert.ErrorIs(t, err, errBroken)
	_, err = c.Explain(s)
	assert.ErrorIs(t, err, errBroken)
	c = condition(t, "crash(inlet)")
	_, err = c.Truth(s)
	assert.ErrorContains(t, err, "a function of the vocabulary failed")
	var judge *Undetermined
	assert.False(t, errors.As(err, &judge))
}
