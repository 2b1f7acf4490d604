package facts

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// done is the flat with what was measured.
func done(lines string) string { return flat + "\n[commissioning]\n" + lines }

// lineOf finds a line of the worksheet.
func lineOf(t *testing.T, f *Facts, name string) Line {
	t.Helper()
	line, known := lines(f)[name]
	require.True(t, known, name)
	return line
}

// The definitions of the IRC 2021 and the state form of Washington, M1505.4.1.4,
// worked by hand: at 100 and 120 cfm the streams are balanced by one definition of
// the IRC and not by the other, and 5 cfm are enough for small flows.
func TestStreamsApartByEachSource(t *testing.T) {
	for _, c := range []struct {
		supply, extract        float64
		supplyShare, average   float64 // in %
		bySupply, byAverage    string
		byExtract, byTheLarger string
	}{
		{100, 110, 10, 100.0 * 10 / 210, "within 10 %, beyond 5 cfm", "within 10 %", "within 10 %", "within 10 %"},
		{100, 120, 20, 100.0 * 20 / 220, "beyond 10 %, beyond 5 cfm", "within 10 %", "beyond 10 %", "beyond 10 %"},
		{90, 110, 100.0 * 20 / 90, 10, "beyond 10 %, beyond 5 cfm", "within 10 %", "beyond 10 %", "beyond 10 %"},
		{40, 45, 12.5, 100.0 * 5 / 85, "beyond 10 %, within 5 cfm", "within 10 %", "beyond 10 %", "beyond 10 %"},
		{40, 46, 15, 100.0 * 6 / 86, "beyond 10 %, beyond 5 cfm", "within 10 %", "beyond 10 %", "beyond 10 %"},
		{80, 88, 10, 100.0 * 8 / 168, "within 10 %, beyond 5 cfm", "within 10 %", "within 10 %", "within 10 %"},
		{80, 89, 11.25, 100.0 * 9 / 169, "beyond 10 %, beyond 5 cfm", "within 10 %", "beyond 10 %", "beyond 10 %"},
		{100, 90, 10, 100.0 * 10 / 190, "within 10 %, beyond 5 cfm", "within 10 %", "beyond 10 %", "within 10 %"},
	} {
		f, _ := factsOf(t, done(fmt.Sprintf("supply_flow = \"%g cfm\"\nextract_flow = \"%g cfm\"", c.supply, c.extract)))
		of := func(name string) Line { return lineOf(t, f, "measured supply and extract apart, "+name) }
		name := fmt.Sprint(c.supply, " and ", c.extract)
		assert.InDelta(t, c.supplyShare/100, float64(of("as a share of the supply").Value.(q.Ratio)), 1e-12, name)
		assert.InDelta(t, c.average/100, float64(of("each from their average").Value.(q.Ratio)), 1e-12, name)
		assert.Equal(t, c.bySupply, of("as a share of the supply").Note, name)
		assert.Equal(t, c.byAverage, of("each from their average").Note, name)
		assert.Equal(t, c.byExtract, of("as a share of the extract").Note, name)
		assert.Equal(t, c.byTheLarger, of("as a share of the larger").Note, name)
	}
}

// By the checklist either 15 % or 15 cfm is enough; the flat is designed for 60 cfm.
func TestMeasuredFlowsAgainstDesign(t *testing.T) {
	for measured, note := range map[float64]string{
		60: "within 15 %, within 15 cfm", 69: "within 15 %, within 15 cfm", 51: "within 15 %, within 15 cfm",
		70: "beyond 15 %, within 15 cfm", 75: "beyond 15 %, within 15 cfm", 45: "beyond 15 %, within 15 cfm",
		76: "beyond 15 %, beyond 15 cfm", 44: "beyond 15 %, beyond 15 cfm",
	} {
		f, _ := factsOf(t, done(fmt.Sprintf("extract_flow = \"%g cfm\"", measured)))
		assert.InDelta(t, measured-60, valueOf[q.Flow](t, f, "extract flow, measured above design")/float64(cfm), 1e-9)
		assert.InDelta(t, (measured-60)/60, valueOf[q.Ratio](t, f, "extract flow, measured off design"), 1e-12)
		assert.Equal(t, note, lineOf(t, f, "extract flow, measured off design").Note, measured)
		assert.NotContains(t, lines(f), "supply flow, measured above design", "not measured")
		assert.NotContains(t, lines(f), "measured supply and extract apart, as a share of the supply", "one stream alone")
	}
}

func TestMeasuredTerminals(t *testing.T) {
	const measured = `supply_flow = "64 cfm"
[[commissioning.measured]]
terminal = "bed"
flow = "22 cfm"
`
	f, _ := factsOf(t, done(measured))
	together := f.terminalsTogether(f.Design.Commissioning, supplySide)
	assert.Equal(t, []string{"commissioning.measured"}, missingKeys(t, together.err), "living was not measured")
	f, _ = factsOf(t, done(measured+"[[commissioning.measured]]\nterminal = \"living\"\nflow = \"35 cfm\"\n"))
	assert.InDelta(t, 57, valueOf[q.Flow](t, f, "supply terminals, measured together")/float64(cfm), 1e-9)
	assert.InDelta(t, 7, valueOf[q.Flow](t, f, "supply flow, measured above that of its terminals")/float64(cfm), 1e-9)
	for i, want := range []struct {
		off  float64
		note string
	}{{0.10, "within 10 %"}, {-0.125, "beyond 10 %"}} {
		r := f.measuredTerminal(f.Design.Commissioning.Measured[i])
		require.NoError(t, r.err)
		assert.InDelta(t, want.off, float64(r.value), 1e-12)
		assert.Equal(t, want.note, r.line.Note)
	}
	f, _ = factsOf(t, strings.Replace(done(measured), `flow = "20 cfm"`+"\nloss", "loss", 1))
	assert.Equal(t, []string{"terminal.bed.flow"}, missingKeys(t, f.measuredTerminal(f.Design.Commissioning.Measured[0]).err))
}

// What was read agrees with the loss that the same worksheet gives, whatever its sign.
func TestPressuresReadAtTheUnit(t *testing.T) {
	f, unit := factsOf(t, flat)
	loss, err := f.ruleExternalLoss(unit, "supply")
	require.NoError(t, err)
	for times, note := range map[float64]string{1: "within 30 %", 1.29: "within 30 %", 1.31: "beyond 30 %", 0.71: "within 30 %", 0.69: "beyond 30 %", -1: "within 30 %"} {
		read, unit := factsOf(t, done(fmt.Sprintf("supply_pressure = \"%.9f Pa\"", times*float64(loss))))
		r := read.pressureOff(read.Design.Commissioning, unit, supplySide)
		require.NoError(t, r.err)
		assert.InDelta(t, max(times, -times)-1, float64(r.value), 1e-6)
		assert.Equal(t, note, r.line.Note, times)
		assert.Equal(t, r.value, lineOf(t, read, "supply side, pressure read off the computed one "+design.Label(unit)).Value)
	}
	gaps, unit := factsOf(t, done(`extract_pressure = "-20 Pa"`))
	assert.Contains(t, missingKeys(t, gaps.pressureOff(gaps.Design.Commissioning, unit, extractSide).err), "duct", "the flat has no extract ducts")
	two, _ := factsOf(t, done(`supply_pressure = "20 Pa"`)+"\n[[ventilator]]\nid = \"second\"\nkind = \"supply-fan\"\n")
	assert.NotContains(t, strings.Join(slices.Sorted(maps.Keys(lines(two))), "\n"), "pressure read off the computed one", "which unit is not said")
}

// What there is nothing to compare with is told, never passed over.
func TestMeasuredWithoutADesign(t *testing.T) {
	none, _ := factsOf(t, strings.Replace(done(`extract_flow = "50 cfm"`), `kind = "hrv"`, `kind = "supply-fan"`, 1))
	assert.Contains(t, lineOf(t, none, "extract flow, measured off design").Trouble, "no ventilator of the design moves extract air")
	still, _ := factsOf(t, strings.Replace(done(`extract_flow = "50 cfm"`), `extract_flow = "60 cfm"`, `extract_flow = "0 cfm"`, 1))
	assert.Contains(t, lineOf(t, still, "extract flow, measured off design").Trouble, "nothing to be a share of")
	unsaid, _ := factsOf(t, strings.Replace(done(`extract_flow = "50 cfm"`), `extract_flow = "60 cfm"`, "", 1))
	assert.Len(t, lineOf(t, unsaid, "extract flow, measured above design").Missing, 1)
	plain, _ := factsOf(t, flat)
	assert.Empty(t, plain.commissioningLines(), "nothing measured")
}

// The dew point of air at 20 C and 50 % is 9.27 C, at 70 F and 35 % 41.2 F: from
// memory of psychrometric charts, to a fifth of a degree.
func TestDewPointOfIndoorAir(t *testing.T) {
	for source, celsius := range map[string]float64{
		flat: (41.2 - 32) / 1.8,
		strings.NewReplacer(`winter_indoor = "70 F"`, `winter_indoor = "20 C"`, `winter_humidity = "35 %"`, `winter_humidity = "50 %"`).Replace(flat): 9.27,
	} {
		f, unit := factsOf(t, source)
		assert.InDelta(t, celsius+273.15, valueOf[q.Temperature](t, f, "dew point of the indoor air at winter design"), 0.12)
		above := valueOf[q.TemperatureDifference](t, f, "exhaust air above the indoor dew point at winter design "+design.Label(unit))
		assert.InDelta(t, float64(f.dryExhaust(unit).value-f.indoorDewPoint().value), above, 1e-9)
		wet, err := f.ruleCondenses(unit)
		require.NoError(t, err)
		assert.Equal(t, above < 0, wet, "a core that passes no moisture on is wet below the dew point")
	}
	dry, unit := factsOf(t, strings.Replace(flat, `winter_humidity = "35 %"`, `winter_humidity = "10 %"`, 1))
	assert.Positive(t, valueOf[q.TemperatureDifference](t, dry, "exhaust air above the indoor dew point at winter design "+design.Label(unit)))
	wet, err := dry.ruleCondenses(unit)
	require.NoError(t, err)
	assert.False(t, wet)
}
