package facts

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/airflow"
)

// with adds lines to the unit of the flat.
func with(lines string) string {
	return strings.Replace(flat, "power = \"50 W\"", "power = \"50 W\"\n"+lines, 1)
}

// The curve of the speed by hand: half the flow at a quarter of the pressure.
func TestSpeedIsTheCurveOfTheFanLaws(t *testing.T) {
	f, unit := factsOf(t, with(`low = { fan_speed = "50 %" }`+"\n"+
		`boost = { supply_fan = [{ flow = "0 cfm", pressure = "0.15 inwc" }, { flow = "60 cfm", pressure = "0 inwc" }] }`+"\n"+
		`maximum = { fan_speed = "100 %" }`))
	low, err := f.ruleDeliveredAt(unit, "supply", "low")
	require.NoError(t, err)
	same, err := f.ruleDeliveredAt(unit, "supply", "boost")
	require.NoError(t, err)
	assert.InEpsilon(t, float64(same), float64(low), 1e-9)
	whole, err := f.ruleDeliveredAt(unit, "supply", "maximum")
	require.NoError(t, err)
	usual, err := f.ruleDelivered(unit, "supply")
	require.NoError(t, err)
	assert.Equal(t, usual, whole)
	assert.Greater(t, whole, low)
}

// A setting meets the same ducts, dampers untouched: the operating point lies on
// its curve and on the loss of the system.
func TestOperatingPointOfASetting(t *testing.T) {
	f, unit := factsOf(t, with(`maximum = { fan_speed = "140 %" }`))
	o, err := f.operation(unit, supplySide, "maximum").get()
	require.NoError(t, err)
	require.Equal(t, airflow.OnCurve, o.Meeting)
	const inwc = 249.08891
	built, err := f.ducts(unit, supplySide).get()
	require.NoError(t, err)
	thinner := float64(built.air.Density / airflow.StandardAir().Density)
	assert.InEpsilon(t, 0.6*inwc*1.96*thinner*(1-float64(o.Flow/in(168))), float64(o.Pressure), 1e-9)
	losses, err := built.Damped(built.flows, o.Flow)
	require.NoError(t, err)
	assert.InEpsilon(t, float64(losses.Pressure), float64(o.Pressure), 1e-6)
}

func TestCurvesThatAreAskedFor(t *testing.T) {
	f, unit := factsOf(t, with(`boost = { supply_flow = "90 cfm" }`))
	_, err := f.ruleDeliveredAt(unit, "supply", "boost")
	assert.Equal(t, []string{"ventilator.unit.boost.supply_fan"}, missingKeys(t, err))
	_, err = f.ruleOnCurveAt(unit, "supply", "maximum")
	assert.Equal(t, []string{"ventilator.unit.maximum"}, missingKeys(t, err))
	without, unit := factsOf(t, strings.Replace(with(`low = { fan_speed = "50 %" }`), "supply_fan =", "extract_fan =", 1))
	_, err = without.ruleDeliveredAt(unit, "supply", "low")
	assert.Equal(t, []string{"ventilator.unit.supply_fan"}, missingKeys(t, err))
}

func TestShortfall(t *testing.T) {
	f, unit := factsOf(t, with(`boost = { supply_flow = "150 cfm", fan_speed = "120 %" }`))
	short, err := f.shortfall(unit, supplySide, "boost").get()
	require.NoError(t, err)
	got, err := f.ruleDeliveredAt(unit, "supply", "boost")
	require.NoError(t, err)
	assert.InDelta(t, float64(in(150)-got), float64(short), 1e-12)
	none, err := f.shortfall(unit, supplySide, normal).get()
	require.NoError(t, err)
	assert.Zero(t, none)

	ended := strings.Replace(flat, `{ flow = "0 cfm", pressure = "0.6 inwc" }, { flow = "120 cfm", pressure = "0 inwc" }`,
		`{ flow = "0 cfm", pressure = "0.9 inwc" }, { flow = "50 cfm", pressure = "0.8 inwc" }`, 1)
	f, unit = factsOf(t, ended)
	_, err = f.shortfall(unit, supplySide, normal).get()
	judged(t, err, "ends below the flow asked for")
}

// A setting without a stated flow moves what its fans deliver.
func TestHousePressureByTheCurveOfASetting(t *testing.T) {
	f, _ := factsOf(t, with(`boost = { extract_flow = "60 cfm", supply_fan = [{ flow = "90 cfm", pressure = "2 inwc" }, { flow = "90 cfm", pressure = "0 inwc" }] }`+"\n"+
		`maximum = { supply_flow = "100 cfm", extract_flow = "80 cfm", fan_speed = "150 %" }`))
	for state, imbalance := range map[StateWord]float64{"boost": 30, "maximum": 20} {
		p, err := f.ruleHousePressure(state)
		require.NoError(t, err, state)
		assert.InEpsilon(t, 50*math.Pow(imbalance/600, 1/0.65), float64(p), 1e-6, state)
	}
	asked, _ := factsOf(t, with(`low = { supply_flow = "20 cfm" }`))
	_, err := asked.ruleHousePressure("low")
	assert.Equal(t, []string{"ventilator.unit.low.extract_flow"}, missingKeys(t, err))
}

// The worksheet has a line for every setting that is given, and no other.
func TestLinesOfSettings(t *testing.T) {
	f, unit := factsOf(t, with(`boost = { supply_flow = "80 cfm", fan_speed = "120 %" }`+"\n"+`maximum = { fan_speed = "140 %" }`))
	var names []string
	for _, line := range f.fanLines(unit, supplySide) {
		require.NotNil(t, line.Value, line.Name)
		names = append(names, line.Name)
	}
	assert.Equal(t, []string{
		"supply side, flow that the fan delivers", "supply side, shortfall of the fan", "supply side, fan meets the ducts inside its curve",
		"supply side, flow that the fan delivers at boost", "supply side, shortfall of the fan at boost", "supply side, fan meets the ducts inside its curve at boost",
		"supply side, flow that the fan delivers at maximum", "supply side, fan meets the ducts inside its curve at maximum",
	}, names)
}
