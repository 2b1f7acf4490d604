package facts

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/expression"
)

// flat is an invented flat with a trunk that divides.
const flat = `
format = 1
[project]
name = "flat"
stage = "permit"
units = "IP"
[dwelling]
floor_area = "1000 ft2"
volume = "8000 ft3"
bedrooms = 2
height = "9 ft"
elevation = "0 ft"
winter_outdoor = "5 F"
winter_indoor = "70 F"
winter_humidity = "35 %"
[dwelling.leakage]
flow_50 = "600 cfm"
exponent = 0.65
weather_factor = 0.6
[[ventilator]]
id = "unit"
kind = "hrv"
control = "continuous"
supply_flow = "60 cfm"
extract_flow = "60 cfm"
power = "50 W"
sensible_recovery = "70 %"
exhaust_air_transfer = "5 %"
supply_fan = [{ flow = "0 cfm", pressure = "0.6 inwc" }, { flow = "120 cfm", pressure = "0 inwc" }]
[[opening]]
id = "fresh"
kind = "intake"
loss = "0.05 inwc"
loss_at = "60 cfm"
[[terminal]]
id = "bed"
airstream = "supply-air"
flow = "20 cfm"
loss = "0.02 inwc"
loss_at = "20 cfm"
[[terminal]]
id = "living"
airstream = "supply-air"
flow = "40 cfm"
loss = "0.02 inwc"
loss_at = "40 cfm"
[[duct]]
id = "fresh-run"
airstream = "outdoor-air"
from = "fresh"
to = "unit"
material = "galvanized-steel"
diameter = "6 in"
length = "10 ft"
elbows = 0
[[duct]]
id = "trunk"
airstream = "supply-air"
from = "unit"
material = "galvanized-steel"
diameter = "6 in"
length = "10 ft"
elbows = 0
[[duct]]
id = "to-bed"
airstream = "supply-air"
from = "trunk"
to = "bed"
material = "galvanized-steel"
diameter = "4 in"
length = "15 ft"
elbows = 0
[[duct]]
id = "to-living"
airstream = "supply-air"
from = "trunk"
to = "living"
material = "flexible"
compression = "4 %"
diameter = "4 in"
length = "15 ft"
elbows = 0
[[appliance]]
id = "hood"
kind = "kitchen-hood"
flow = "300 cfm"
[[appliance]]
id = "tank"
kind = "water-heater"
fuel = "gas"
vent = "natural-draft"
`

func factsOf(t *testing.T, source string) (*Facts, *design.Ventilator) {
	t.Helper()
	d, problems := design.Load("flat", []byte(source))
	require.Empty(t, problems)
	return Of(d), d.Ventilators[0]
}

func in(value float64) q.Flow { return q.Flow(value) * cfm }

func missingKeys(t *testing.T, err error) []string {
	t.Helper()
	var all document.MissingAll
	require.ErrorAs(t, err, &all)
	var keys []string
	for _, m := range all {
		keys = append(keys, m.Ref.KeyName(m.Key))
	}
	return keys
}

func TestTrunkAndBranches(t *testing.T) {
	f, unit := factsOf(t, flat)
	losses, err := f.atDesign(unit, supplySide).get()
	require.NoError(t, err)
	assert.InDelta(t, float64(in(60)), float64(losses.Flow), 1e-9)
	require.Len(t, losses.Outlet.Ends, 2)
	assert.Equal(t, "living", losses.Outlet.Critical)
	for _, end := range losses.Outlet.Ends {
		assert.Equal(t, "trunk", end.Path[0])
		assert.Len(t, end.Path, 2)
	}
	bed, err := f.ruleDamperLoss(f.Design.Terminals[0])
	require.NoError(t, err)
	living, err := f.ruleDamperLoss(f.Design.Terminals[1])
	require.NoError(t, err)
	assert.Positive(t, bed)
	assert.Zero(t, living)
}

// The trunk may name its branch as well as the branch its trunk.
func TestDuctsThatNameEachOther(t *testing.T) {
	f, unit := factsOf(t, flat)
	usual, err := f.ruleExternalLoss(unit, "supply")
	require.NoError(t, err)
	for _, change := range [][2]string{
		{"from = \"unit\"\nmaterial", "from = \"unit\"\nto = \"to-bed\"\nmaterial"},
		{"from = \"trunk\"\nto = \"bed\"", "to = \"bed\""},
	} {
		source := strings.Replace(flat, "from = \"unit\"\nmaterial", "from = \"unit\"\nto = \"to-bed\"\nmaterial", 1)
		source = strings.Replace(source, change[0], change[1], 1)
		f, unit := factsOf(t, source)
		got, err := f.ruleExternalLoss(unit, "supply")
		require.NoError(t, err, change)
		assert.InEpsilon(t, float64(usual), float64(got), 1e-12, change)
	}
}

func TestOperatingPoint(t *testing.T) {
	f, unit := factsOf(t, flat)
	flow, err := f.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	assert.Greater(t, flow, in(60))
	assert.Less(t, flow, in(120))
	on, err := f.ruleOnCurve(unit, "supply")
	require.NoError(t, err)
	assert.True(t, on)
	var open q.Flow
	for _, terminal := range f.Design.Terminals {
		one, err := f.ruleOpenFlow(terminal)
		require.NoError(t, err)
		open += one
	}
	assert.GreaterOrEqual(t, float64(open), float64(flow)) // dampers only take away
}

// Everything that the ducts lack is named at once.
func TestWhatDuctsLack(t *testing.T) {
	source := flat
	for _, line := range []string{"compression = \"4 %\"\n", "loss_at = \"40 cfm\"\n", "elevation = \"0 ft\"\n"} {
		source = strings.Replace(source, line, "", 1)
	}
	f, unit := factsOf(t, source)
	_, err := f.ruleDelivered(unit, "supply")
	assert.ElementsMatch(t, []string{"duct.to-living.compression", "terminal.living.loss_at", "dwelling.elevation"}, missingKeys(t, err))
	_, err = f.ruleDelivered(unit, "extract")
	assert.Contains(t, missingKeys(t, err), "duct")
}

func judged(t *testing.T, err error, part string) {
	t.Helper()
	var undetermined *expression.Undetermined
	require.ErrorAs(t, err, &undetermined)
	assert.Contains(t, undetermined.Reason, part)
}

// What cannot be computed although nothing is missing is for a person.
func TestWhatIsForAPerson(t *testing.T) {
	unknown := strings.Replace(flat, "diameter = \"4 in\"\nlength = \"15 ft\"\nelbows = 0\n", "diameter = \"4 in\"\nlength = \"15 ft\"\nfitting = [{ kind = \"home-made box\" }]\n", 1)
	f, unit := factsOf(t, unknown)
	_, err := f.ruleExternalLoss(unit, "supply")
	judged(t, err, "home-made box")

	uneven := strings.Replace(flat, "flow = \"20 cfm\"\nloss", "flow = \"30 cfm\"\nloss", 1)
	f, unit = factsOf(t, uneven)
	_, err = f.ruleExternalLoss(unit, "supply")
	judged(t, err, "60 cfm")
	judged(t, err, "70 cfm")
}

func TestWeakFan(t *testing.T) {
	weak := strings.Replace(flat, `{ flow = "0 cfm", pressure = "0.6 inwc" }, { flow = "120 cfm", pressure = "0 inwc" }`,
		`{ flow = "0 cfm", pressure = "0.02 inwc" }, { flow = "120 cfm", pressure = "0 inwc" }`, 1)
	f, unit := factsOf(t, weak)
	flow, err := f.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	assert.Less(t, flow, in(30))
	strong := strings.Replace(flat, `{ flow = "0 cfm", pressure = "0.6 inwc" }, { flow = "120 cfm", pressure = "0 inwc" }`,
		`{ flow = "0 cfm", pressure = "0.9 inwc" }, { flow = "70 cfm", pressure = "0.8 inwc" }`, 1)
	f, unit = factsOf(t, strong)
	flow, err = f.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	assert.InDelta(t, float64(in(70)), float64(flow), 1e-12) // at least: the curve ends there
	on, err := f.ruleOnCurve(unit, "supply")
	require.NoError(t, err)
	assert.False(t, on)
}

// House pressure by its closed form, in every state that the unit has.
func TestHousePressure(t *testing.T) {
	f, _ := factsOf(t, flat)
	closed := func(imbalance float64) float64 {
		return math.Copysign(50*math.Pow(math.Abs(imbalance)/600, 1/0.65), imbalance)
	}
	for state, imbalance := range map[StateWord]float64{"normal": 0, "off": 0, "supply fan stopped": -60, "extract fan stopped": 60, "boost": 0} {
		p, err := f.ruleHousePressure(state)
		require.NoError(t, err, state)
		assert.InDelta(t, closed(imbalance), float64(p), 1e-9, state)
	}
	worst, err := f.ruleWorstPressure()
	require.NoError(t, err)
	assert.InDelta(t, closed(-360), float64(worst), 1e-9) // the hood, and the supply fan stopped
	assert.Equal(t, "supply fan stopped", f.worstPressure().line.Note)
}

// Without a ventilator the hood still pulls.
func TestWorstPressureWithoutVentilator(t *testing.T) {
	begin, end := strings.Index(flat, "[[ventilator]]"), strings.Index(flat, "[[opening]]")
	ducts, appliance := strings.Index(flat, "[[duct]]"), strings.Index(flat, "[[appliance]]")
	d, problems := design.Load("flat", []byte(flat[:begin]+flat[end:ducts]+flat[appliance:]))
	require.Empty(t, problems)
	worst, err := Of(d).ruleWorstPressure()
	require.NoError(t, err)
	assert.InDelta(t, -50*math.Pow(300.0/600, 1/0.65), float64(worst), 1e-9)
}

// A fan gives less pressure in thin air.
func TestFanAtElevation(t *testing.T) {
	low, unit := factsOf(t, flat)
	atSea, err := low.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	high, unit := factsOf(t, strings.Replace(flat, `elevation = "0 ft"`, `elevation = "7000 ft"`, 1))
	thin, err := high.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	assert.Less(t, float64(thin), float64(atSea))
}

func TestDefrostAndSettings(t *testing.T) {
	more := strings.Replace(flat, "power = \"50 W\"", `power = "50 W"
frost_protection = "supply-fan-off"
defrost_minutes = "6 min"
boost = { supply_flow = "100 cfm", extract_flow = "110 cfm" }`, 1)
	f, unit := factsOf(t, more)
	defrost, err := f.ruleHousePressure("defrost")
	require.NoError(t, err)
	assert.Negative(t, float64(defrost))
	boost, err := f.ruleHousePressure("boost")
	require.NoError(t, err)
	assert.InDelta(t, -50*math.Pow(10.0/600, 1/0.65), float64(boost), 1e-9)
	average, err := f.ruleAverageSupply(unit)
	require.NoError(t, err)
	assert.InDelta(t, float64(in(54)), float64(average), 1e-12) // Y-27: 6 of 60 minutes lost
}

func TestTolerances(t *testing.T) {
	f, _ := factsOf(t, flat)
	tank := f.Design.Appliances[1]
	limit, err := f.ruleTolerance(tank)
	require.NoError(t, err)
	assert.InDelta(t, 2, float64(limit), 1e-12)
	burns, err := f.ruleCombustion(tank)
	require.NoError(t, err)
	assert.True(t, burns)
	stated, _ := factsOf(t, strings.Replace(flat, `vent = "natural-draft"`, "vent = \"natural-draft\"\npressure_limit = \"5 Pa\"", 1))
	limit, err = stated.ruleTolerance(stated.Design.Appliances[1])
	require.NoError(t, err)
	assert.InDelta(t, 5, float64(limit), 1e-12)
}

func TestCore(t *testing.T) {
	f, unit := factsOf(t, flat)
	supply, err := f.ruleWinterSupply(unit)
	require.NoError(t, err)
	assert.Greater(t, float64(supply), 273.15)
	onset, err := f.ruleFrostOnset(unit)
	require.NoError(t, err)
	assert.Less(t, float64(onset), 273.15)
	net, err := f.ruleNetOutdoorAir(unit)
	require.NoError(t, err)
	assert.InDelta(t, float64(in(57)), float64(net), 1e-12)
	efficacy, err := f.ruleEfficacy(unit)
	require.NoError(t, err)
	assert.InDelta(t, float64(in(60))/50, float64(efficacy), 1e-15)
	_, err = f.ruleSummerSupply(unit)
	assert.Contains(t, missingKeys(t, err), "dwelling.summer_wet_bulb")
}

// The direct form by hand: 0.052 x 600 x 0.6 x (9/8.2)^0.4.
func TestInfiltration(t *testing.T) {
	f, _ := factsOf(t, flat)
	got, err := f.ruleInfiltration()
	require.NoError(t, err)
	assert.InEpsilon(t, float64(in(0.052*600*0.6*math.Pow(9/8.2, 0.4))), float64(got), 1e-9)
	air := strings.Replace(flat, `flow_50 = "600 cfm"`, `air_changes_50 = "4.5 ACH"`, 1) // of 8000 ft3: 600 cfm
	f, _ = factsOf(t, air)
	same, err := f.ruleInfiltration()
	require.NoError(t, err)
	assert.InEpsilon(t, float64(got), float64(same), 1e-9)
}

// The form of 2016 by hand: ELA of 600 cfm at n = 0.65, NL for 1000 ft2 at 9 ft, and
// 7.3; then of the credit, by the total of 0.03 x 1000 + 7.5 x 3.
func TestInfiltrationOf2016(t *testing.T) {
	f, _ := factsOf(t, strings.Replace(flat, `height = "9 ft"`, "height = \"9 ft\"\nattached_share = \"25 %\"", 1))
	got, err := f.ruleNormalized()
	require.NoError(t, err)
	area := float64(in(600)) * math.Pow(4.0/50, 0.65) / math.Sqrt(8/1.2041)
	leakage := 1000 * area / (1000 * 0.3048 * 0.3048) * math.Pow(9/8.2, 0.4)
	assert.InEpsilon(t, float64(in(leakage*0.6*1000/7.3)), float64(got), 1e-9)
	direct, err := f.ruleInfiltration()
	require.NoError(t, err)
	assert.InEpsilon(t, float64(direct), float64(got), 0.01) // 0.0522 against 0.052

	left := map[string]float64{}
	for _, line := range f.creditLines()[3:] {
		left[line.Name] = float64(line.Value.(q.Flow) / cfm)
	}
	total, old, late := 52.5, float64(got/cfm), float64(direct/cfm)
	assert.InDelta(t, total-old*0.75, left["fan flow after the credit, 62.2-2013 and 2016"], 1e-9)
	assert.InDelta(t, total-late*0.75, left["fan flow after the credit, 62.2-2019, balanced system"], 1e-9)
	assert.InDelta(t, total-late*late/total*0.75, left["fan flow after the credit, 62.2-2019, other systems"], 1e-9)

	leaky, _ := factsOf(t, strings.Replace(flat, `flow_50 = "600 cfm"`, `flow_50 = "6000 cfm"`, 1))
	assert.Equal(t, []string{"dwelling.attached_share"}, missingNames(leaky.creditLines()[3]))
}

func missingNames(l Line) []string {
	var names []string
	for _, m := range l.Missing {
		names = append(names, m.Ref.KeyName(m.Key))
	}
	return names
}

// Every name of the vocabulary is described.
func TestVocabularyIsDescribed(t *testing.T) {
	v := Vocabulary()
	for _, r := range v.Roots {
		assert.NotEmpty(t, r.Doc, r.Name)
	}
	for _, fn := range v.Functions {
		assert.NotEmpty(t, fn.Doc, fn.Name)
		assert.True(t, strings.HasPrefix(fn.Signature, fn.Name+"("), fn.Signature)
	}
}

// Rates by hand: 60 cfm in 8000 ft3 is 0.45 in an hour, and 20 cfm for each of three.
func TestRatesOfTheWorksheet(t *testing.T) {
	f, unit := factsOf(t, strings.Replace(flat, "bedrooms = 2\n", "bedrooms = 2\noccupants = 3\n", 1))
	changes, err := f.airChanges(unit).get()
	require.NoError(t, err)
	assert.InDelta(t, 0.45, float64(changes)*3600, 1e-12)
	each, err := f.perPerson(unit).get()
	require.NoError(t, err)
	assert.InDelta(t, float64(in(20)), float64(each), 1e-12)
	credited, err := f.credited().get()
	require.NoError(t, err)
	assert.InDelta(t, float64(in(0.7*32.5)), float64(credited), 1e-12)
	nobody, unit := factsOf(t, strings.Replace(flat, "bedrooms = 2\n", "bedrooms = 2\noccupants = 0\n", 1))
	_, err = nobody.perPerson(unit).get()
	judged(t, err, "nobody")
	unsaid, unit := factsOf(t, flat)
	_, err = unsaid.perPerson(unit).get()
	assert.Equal(t, []string{"dwelling.occupants"}, missingKeys(t, err))
}
