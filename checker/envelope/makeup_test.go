package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

type makeupFile struct {
	Rule []struct {
		ID          string
		Above       q.Flow
		AboveSealed *q.Flow `toml:"above_sealed"`
		OnlyExcess  bool    `toml:"only_excess"`
	}
	Case []struct {
		Rule            string
		Exhaust, Makeup q.Flow
		Open            bool
	}
	Canada     struct{ Exhaust, Least, Most q.Flow }
	NetExhaust struct{ IP, SI perFloor } `toml:"net_exhaust"`
}

type perFloor struct {
	Floor q.Area
	Limit q.Flow
}

func readMakeup(t *testing.T) (f makeupFile) {
	t.Helper()
	published.Read(t, "makeup", &f)
	require.Len(t, f.Rule, 5)
	require.Len(t, f.Case, 11)
	return f
}

func TestMakeupByCode(t *testing.T) {
	f := readMakeup(t)
	rules := map[string]MakeupRule{}
	for _, r := range f.Rule {
		rule := MakeupRule{r.Above, NoThreshold(), r.OnlyExcess}
		if r.AboveSealed != nil {
			rule.AboveSealed = *r.AboveSealed
		}
		rules[r.ID] = rule
	}
	for _, c := range f.Case {
		require.Contains(t, rules, c.Rule)
		got, err := rules[c.Rule].Makeup(c.Exhaust, c.Open)
		require.NoError(t, err)
		assert.InDelta(t, float64(c.Makeup), float64(got), 1e-12, "%s: %v, open %v", c.Rule, c.Exhaust, c.Open)
	}
}

func TestMakeupFanOfCanada(t *testing.T) {
	f := readMakeup(t).Canada
	least, most, err := MakeupFanRange(f.Exhaust)
	require.NoError(t, err)
	assert.InDelta(t, float64(f.Least), float64(least), 1e-12)
	assert.InDelta(t, float64(f.Most), float64(most), 1e-12)
}

func TestTwoLargestAgainstTheirLimit(t *testing.T) {
	for _, flows := range [][]q.Flow{{3, 1, 2}, {1, 2, 3}, {2, 3, 1}, {3, 2}, {5}} {
		got, err := TwoLargest(flows...)
		require.NoError(t, err)
		assert.Equal(t, q.Flow(5), got, flows)
	}
	none, err := TwoLargest()
	require.NoError(t, err)
	assert.Zero(t, none)
	f := readMakeup(t).NetExhaust
	for system, c := range map[q.System]perFloor{q.IP: f.IP, q.SI: f.SI} {
		limit, err := NetExhaustLimit(c.Floor, system)
		require.NoError(t, err)
		assert.InEpsilon(t, float64(c.Limit), float64(limit), 1e-12)
	}
}

func TestMinnesotaForms(t *testing.T) {
	var f struct {
		House []struct {
			ID                            string
			Column                        MinnesotaColumn
			FloorArea                     q.Area `toml:"floor_area"`
			Dryer                         bool
			Largest, Next                 q.Flow
			ExhaustOnly                   q.Flow `toml:"exhaust_only"`
			Infiltration, Exhaust, Makeup q.Flow
		}
	}
	published.Read(t, "minnesota", &f)
	require.Len(t, f.House, 5)
	for _, c := range f.House {
		got, err := MinnesotaHouse{c.Column, c.FloorArea, c.ExhaustOnly, c.Dryer, c.Largest, c.Next}.Makeup()
		require.NoError(t, err)
		assert.InDelta(t, float64(c.Infiltration), float64(got.Infiltration), 0.5*cfm, c.ID)
		assert.InDelta(t, float64(c.Exhaust), float64(got.Exhaust), 1e-9, c.ID)
		assert.InDelta(t, float64(c.Makeup), float64(got.Makeup), 1e-9, c.ID)
	}
}

func TestTolerances(t *testing.T) {
	var f struct {
		Limit []struct {
			Venting         Venting
			Pascals, Inches float64
			Memory          bool
		}
	}
	published.Read(t, "tolerances", &f)
	require.Len(t, f.Limit, len(Tolerances()))
	for i, c := range f.Limit {
		got, err := ToleranceOf(c.Venting)
		require.NoError(t, err)
		assert.Equal(t, Tolerances()[i], got)
		assert.InDelta(t, c.Pascals, float64(got.Limit), 1e-12, c.Venting)
		assert.Equal(t, c.Memory, got.Read == "memory", c.Venting)
		assert.NotEmpty(t, got.Document)
		if c.Inches > 0 { // printed to a thousandth of an inch of water
			assert.InDelta(t, c.Inches, float64(got.Limit)/249.0889, 0.0011, c.Venting)
		}
	}
	Tolerances()[0].Limit = 99
	assert.Equal(t, q.Pressure(2), Tolerances()[0].Limit, "the table cannot be changed")
}

func TestMakeupRefusesWhatLiesOutside(t *testing.T) {
	_, err := MakeupRule{}.Makeup(-1, true)
	assert.ErrorContains(t, err, "exhaust flow")
	_, err = MakeupRule{Above: q.Flow(math.NaN())}.Makeup(1, true)
	assert.ErrorContains(t, err, "makeup threshold")
	_, _, err = MakeupFanRange(-1)
	assert.ErrorContains(t, err, "exhaust flow")
	_, err = TwoLargest(1, q.Flow(math.NaN()))
	assert.ErrorContains(t, err, "exhaust flow")
	_, err = NetExhaustLimit(0, q.IP)
	assert.ErrorContains(t, err, "floor area")
	_, err = MinnesotaHouse{Column: "E", FloorArea: 100}.Makeup()
	assert.EqualError(t, err, `column "E" is not in the table, expected A, B, C or D`)
	_, err = MinnesotaHouse{Column: "A"}.Makeup()
	assert.ErrorContains(t, err, "floor area")
	_, err = ToleranceOf("candle")
	assert.EqualError(t, err, `venting "candle" is not known, expected one such as "natural-draft appliance on its own vent"`)
}
