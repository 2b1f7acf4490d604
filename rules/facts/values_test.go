package facts

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// lines gives the lines of the worksheet of a design, by name and thing.
func lines(f *Facts) map[string]Line {
	byName := map[string]Line{}
	for _, section := range f.Worksheet() {
		for _, line := range section.Lines {
			byName[strings.TrimSpace(line.Name+" "+line.Of)] = line
		}
	}
	return byName
}

// valueOf gives the number of a line in SI.
func valueOf[T ~float64](t *testing.T, f *Facts, name string) float64 {
	t.Helper()
	line, known := lines(f)[name]
	require.True(t, known, name)
	require.IsType(t, T(0), line.Value, name)
	return float64(line.Value.(T))
}

// By hand for 1000 ft2 and two bedrooms: IRC 2021 equation 15-1 gives 10 + 22.5 cfm,
// ASHRAE 62.2 gives 30 + 22.5 cfm.
func TestRatesByHand(t *testing.T) {
	f, _ := factsOf(t, flat)
	assert.InDelta(t, 32.5, valueOf[q.Flow](t, f, "whole-house rate, IRC Equation 15-1")/float64(cfm), 1e-9)
	assert.InDelta(t, 52.5, valueOf[q.Flow](t, f, "total rate, ASHRAE 62.2")/float64(cfm), 1e-9)
	studio, _ := factsOf(t, strings.Replace(flat, "bedrooms = 2", "bedrooms = 0", 1))
	assert.InDelta(t, 17.5, valueOf[q.Flow](t, studio, "whole-house rate, IRC Equation 15-1")/float64(cfm), 1e-9)
	assert.InDelta(t, 45, valueOf[q.Flow](t, studio, "total rate, ASHRAE 62.2")/float64(cfm), 1e-9) // at least one bedroom
}

// Flows that a timer cuts: 60 cfm for 20 of 60 minutes, 6 of each 60 in defrost.
func TestAveragesByHand(t *testing.T) {
	timed := strings.Replace(with("on_time = \"20 min\"\ncycle = \"1 h\"\ndefrost_minutes = \"6 min\""), `control = "continuous"`, `control = "timer"`, 1)
	f, unit := factsOf(t, timed)
	supply, err := f.ruleAverageSupply(unit)
	require.NoError(t, err)
	extract, err := f.ruleAverageExtract(unit)
	require.NoError(t, err)
	assert.InDelta(t, 60.0/3*54/60, float64(supply/cfm), 1e-9)
	assert.Equal(t, supply, extract)
	f, unit = factsOf(t, strings.Replace(flat, "control = \"continuous\"\n", "", 1))
	_, err = f.ruleAverageExtract(unit)
	assert.Equal(t, []string{"ventilator.unit.control"}, missingKeys(t, err))
}

// A core that stops or turns a stream against frost loses time wherever it can
// freeze: without a word of how long, the average is not known.
func TestTimeOfDefrostingIsAskedFor(t *testing.T) {
	for kind, asks := range map[string]bool{
		"recirculation": true, "supply-fan-off": true, "exhaust-only": true,
		"preheat": false, "bypass": false, "none": false,
	} {
		f, unit := factsOf(t, with(`frost_protection = "`+kind+`"`))
		_, supply := f.ruleAverageSupply(unit)
		_, extract := f.ruleAverageExtract(unit)
		if !asks {
			assert.NoError(t, errors.Join(supply, extract), kind)
			continue
		}
		assert.Equal(t, []string{"ventilator.unit.defrost_minutes"}, missingKeys(t, supply), kind)
		assert.Equal(t, []string{"ventilator.unit.defrost_minutes"}, missingKeys(t, extract), kind)
	}
	recirculating := with(`frost_protection = "recirculation"`)
	for name, c := range map[string]struct {
		source, taken string
		asks          bool
	}{
		"a mild winter":         {strings.Replace(recirculating, `winter_outdoor = "5 F"`, `winter_outdoor = "40 F"`, 1), "no time of defrosting: the core does not freeze at winter design", false},
		"a winter not known":    {strings.Replace(recirculating, `winter_outdoor = "5 F"`, "", 1), "", true},
		"a core not known":      {strings.Replace(recirculating, `sensible_recovery = "70 %"`, "", 1), "", true},
		"separate fans":         {strings.Replace(recirculating, `kind = "hrv"`, `kind = "balanced-fans"`, 1), "no time of defrosting, since none is given", false},
		"a time of none at all": {strings.Replace(recirculating, "power =", "defrost_minutes = \"0 min\"\npower =", 1), "", false},
		"no word of frost":      {flat, "no time of defrosting, since none is given", false},
	} {
		f, unit := factsOf(t, c.source)
		average := f.averageSupply(unit)
		assert.Equal(t, c.taken, average.line.Taken, name)
		if c.asks {
			assert.Equal(t, []string{"ventilator.unit.defrost_minutes"}, missingKeys(t, average.err), name)
			continue
		}
		require.NoError(t, average.err, name)
		assert.InDelta(t, 60, float64(average.value/cfm), 1e-9, name)
	}
}

// Fans and leaks add in quadrature beyond the balanced part: 50 + sqrt(10^2 + I^2).
func TestOutdoorAirTogether(t *testing.T) {
	f, _ := factsOf(t, strings.Replace(flat, "extract_flow = \"60 cfm\"", "extract_flow = \"50 cfm\"", 1))
	leaks, err := f.ruleInfiltration()
	require.NoError(t, err)
	want := 50 + math.Hypot(10, float64(leaks/cfm))
	assert.InDelta(t, want, valueOf[q.Flow](t, f, "outdoor air of fans and leaks together")/float64(cfm), 1e-9)
}

// What the core recovers is the air of 60 cfm, 1.204 kg/m3 and 1006 J/(kg K), times
// the rise of its temperature; water vapour adds some in a hundred.
func TestHeatOfTheCore(t *testing.T) {
	f, unit := factsOf(t, flat)
	supply, err := f.ruleWinterSupply(unit)
	require.NoError(t, err)
	heat, err := f.heatRecovered(unit).get()
	require.NoError(t, err)
	rise := float64(supply) - (5+459.67)*5/9
	assert.InEpsilon(t, float64(in(60))*1.204*1006*rise, float64(heat), 0.03)
	onset, err := f.ruleFrostOnset(unit)
	require.NoError(t, err)
	margin, err := f.frostMargin(unit).get()
	require.NoError(t, err)
	assert.InDelta(t, (5+459.67)*5/9-float64(onset), float64(margin), 1e-9)
	wet, err := f.ruleCondenses(unit)
	require.NoError(t, err)
	assert.True(t, wet, "indoor air of 70 F at 35 % condenses at 42 F; the core at 5 F cools it below")
	f, unit = factsOf(t, strings.Replace(flat, `winter_outdoor = "5 F"`, `winter_outdoor = "60 F"`, 1))
	wet, err = f.ruleCondenses(unit)
	require.NoError(t, err)
	assert.False(t, wet)
}

func TestUnitsWithoutWhatIsAsked(t *testing.T) {
	f, unit := factsOf(t, strings.Replace(flat, `power = "50 W"`, `power = "0 W"`, 1))
	_, err := f.ruleEfficacy(unit)
	judged(t, err, "without power")
	f, unit = factsOf(t, strings.Replace(flat, `kind = "hrv"`, `kind = "supply-fan"`, 1))
	_, err = f.ruleWinterSupply(unit)
	judged(t, err, "without a recovery core")
}

func TestWhereTheCriticalPathLeads(t *testing.T) {
	f, unit := factsOf(t, flat)
	end, err := f.ruleCriticalEnd(unit, "supply")
	require.NoError(t, err)
	assert.Equal(t, "living", end)
}

// The usual figures of BPI by the way of venting, as in testdata/published/envelope.
func TestUsualTolerances(t *testing.T) {
	for words, want := range map[[2]string]float64{
		{"water-heater", "natural-draft"}: 2, {"furnace", "natural-draft"}: 3, {"boiler", "natural-draft"}: 3, {"fireplace", "natural-draft"}: 5,
		{"furnace", "mechanical-draft"}: 5, {"furnace", "power-vent"}: 15, {"furnace", "direct-vent"}: 50,
	} {
		f := only(t, "appliance", "kind = \""+words[0]+"\"\nfuel = \"gas\"\nvent = \""+words[1]+"\"\n")
		limit, err := f.ruleTolerance(f.Design.Appliances[0])
		require.NoError(t, err, words)
		assert.InDelta(t, want, float64(limit), 1e-12, words)
	}
	f := only(t, "appliance", "kind = \"furnace\"\nfuel = \"gas\"\nvent = \"unvented\"\n")
	_, err := f.ruleTolerance(f.Design.Appliances[0])
	judged(t, err, "expected pressure_limit")
	f = only(t, "appliance", "kind = \"furnace\"\nfuel = \"gas\"\n")
	_, err = f.ruleTolerance(f.Design.Appliances[0])
	assert.Equal(t, []string{"appliance.a.vent"}, missingKeys(t, err))
}

// Ducts that a design may give in other words lose the same.
func TestOtherWordsForOneDuct(t *testing.T) {
	loss := func(change string) float64 {
		t.Helper()
		f, unit := factsOf(t, strings.Replace(flat, "diameter = \"4 in\"\nlength = \"15 ft\"\nelbows = 0\n", change, 1))
		p, err := f.ruleExternalLoss(unit, "supply")
		require.NoError(t, err, change)
		losses, err := f.atDesign(unit, supplySide).get()
		require.NoError(t, err)
		run, found := losses.Run("to-bed")
		require.True(t, found)
		assert.Positive(t, float64(p))
		return float64(run.Loss)
	}
	const round, section = "diameter = \"4 in\"\n", "length = \"15 ft\"\n"
	elbow, err := airflow.FittingNamed("smooth elbow 90, r/D 1.5")
	require.NoError(t, err)
	require.Equal(t, 0.15, elbow.Coefficient)
	named := loss(round + section + `fitting = [{ kind = "smooth elbow 90, r/D 1.5", count = 2 }]` + "\n")
	stated := loss(round + section + `fitting = [{ kind = "elbow", count = 2, loss_coefficient = 0.15 }]` + "\n")
	single := loss(round + section + `fitting = [{ kind = "elbow", loss_coefficient = 0.3 }]` + "\n")
	assert.InEpsilon(t, named, stated, 1e-12)
	assert.InEpsilon(t, named, single, 1e-12)
	longer := loss(round + "length = \"10 ft\"\n" + `fitting = [{ kind = "boot", equivalent_length = "5 ft" }]` + "\n")
	assert.InEpsilon(t, loss(round+section+"elbows = 0\n"), longer, 1e-12)

	oval := loss("width = \"4 in\"\nheight = \"4 in\"\nflat_oval = true\n" + section + "elbows = 0\n")
	assert.InEpsilon(t, loss(round+section+"elbows = 0\n"), oval, 1e-9, "equal axes are a circle")
	square := loss("width = \"4 in\"\nheight = \"4 in\"\n" + section + "elbows = 0\n")
	assert.Less(t, square, oval, "a square holds more than the circle in it")
	extra := loss(round + section + "elbows = 0\nextra_loss = \"8 Pa\"\nextra_loss_at = \"40 cfm\"\n")
	assert.InDelta(t, 8.0/4, extra-loss(round+section+"elbows = 0\n"), 1e-9, "20 of 40 cfm, by the square")
}

func TestSizesThatDuctsLack(t *testing.T) {
	for size, want := range map[string]string{"": "duct.to-bed.diameter", "width = \"4 in\"\n": "duct.to-bed.height", "height = \"4 in\"\n": "duct.to-bed.width"} {
		f, unit := factsOf(t, strings.Replace(flat, "diameter = \"4 in\"\nlength", size+"length", 1))
		_, err := f.ruleExternalLoss(unit, "supply")
		assert.Equal(t, []string{want}, missingKeys(t, err))
	}
}

// Local exhausts of rooms pull as well, unless they are the appliance of the room or
// the ventilator itself: 300 cfm of the hood, 60 of the fan stopped, and 50.
func TestLocalExhaustsOfRooms(t *testing.T) {
	room := "[[room]]\nid = \"bath\"\nuse = \"bathroom\"\nlocal_exhaust = { flow = \"50 cfm\"%s }\n"
	for lines, pull := range map[string]float64{
		strings.Replace(room, "%s", "", 1):                           410,
		strings.Replace(room, "%s", `, discharge = "ventilator"`, 1): 360,
		strings.Replace(room, "%s", "", 1) + "[[appliance]]\nid = \"fan\"\nkind = \"bath-fan\"\nroom = \"bath\"\nflow = \"50 cfm\"\n": 410,
	} {
		d, problems := design.Load("flat", []byte(flat+lines))
		require.Empty(t, problems)
		worst, err := Of(d).ruleWorstPressure()
		require.NoError(t, err)
		assert.InDelta(t, -50*math.Pow(pull/600, 1/0.65), float64(worst), 1e-9, lines)
	}
}

// Every line of the worksheet says how it came about, and has a value or tells what
// it lacks; of an empty design none has a value.
func TestLinesAreWhole(t *testing.T) {
	f, _ := factsOf(t, with(`boost = { supply_flow = "80 cfm", extract_flow = "80 cfm" }`))
	var titles []string
	for _, section := range f.Worksheet() {
		titles = append(titles, section.Title)
		for _, line := range section.Lines {
			assert.NotEmpty(t, line.Formula, line.Name)
			assert.NotEmpty(t, line.Name)
			known := line.Value != nil
			assert.NotEqual(t, known, len(line.Missing) > 0 || line.Trouble != "", "%s %s", line.Name, line.Of)
		}
	}
	assert.Equal(t, []string{"Rates", "Air delivered", "Ducts and fans", "House pressure and infiltration", "Moist air and the core"}, titles)
	empty := siteOf(t, bare)
	for name, line := range lines(empty) {
		assert.Nil(t, line.Value, name)
		assert.NotEmpty(t, line.Missing, name)
	}
	assert.Empty(t, empty.Figures())
}

// The figures in front are lines of the worksheet with the same values.
func TestFiguresAreLines(t *testing.T) {
	f, _ := factsOf(t, flat)
	all, figures := lines(f), f.Figures()
	require.NotEmpty(t, figures)
	for _, figure := range figures {
		line, known := all[strings.TrimSpace(figure.Name+" "+figure.Of)]
		require.True(t, known, figure.Name)
		assert.Equal(t, line.Value, figure.Value)
	}
}

// Each root of the vocabulary is a list or thing of the design itself.
func TestRootsAreOfTheDesign(t *testing.T) {
	f := siteOf(t, corner+"[[room]]\nid = \"r\"\nuse = \"bedroom\"\n")
	lengths := map[string]int{"rooms": 1, "walls": 4, "openings": 2, "intakes": 1, "exhausts": 1, "sources": 1, "lines": 0, "terminals": 0}
	for _, root := range Vocabulary().Roots {
		got := root.Get(f)
		assert.IsType(t, got, root.Get(f))
		if n, counted := lengths[root.Name]; counted {
			assert.Len(t, got, n, root.Name)
		}
		if root.Name == "dwelling" {
			assert.Same(t, f.Design.Dwelling, got)
		}
	}
}
