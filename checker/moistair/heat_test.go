package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func readHeat(t *testing.T) (f struct {
	Sensible []struct {
		Flow       q.Flow
		Difference q.TemperatureDifference
		Power      q.Power
		Elevation  q.Length
		Within     float64
	}
	Preheat []struct {
		Flow        q.Flow
		Outdoor, To q.Temperature
		Power       q.Power
		Within      float64
	}
	Defrost []struct {
		Flow, Average q.Flow
		Minutes       q.Duration
	}
}) {
	t.Helper()
	published.Read(t, "heat", &f)
	require.Len(t, f.Sensible, 3)
	require.NotEmpty(t, f.Preheat)
	require.NotEmpty(t, f.Defrost)
	return f
}

func TestSensibleHeatOfEquationSheets(t *testing.T) {
	for _, c := range readHeat(t).Sensible {
		sea, err := AirDensity(0, fahrenheit(70))
		require.NoError(t, err)
		there, err := AirDensity(c.Elevation, fahrenheit(70))
		require.NoError(t, err)
		p, err := SensibleHeat(c.Flow, StandardDensity*there/sea, c.Difference)
		require.NoError(t, err)
		near(t, float64(c.Power), float64(p), c.Within)
	}
}

func TestPreheater(t *testing.T) {
	for _, c := range readHeat(t).Preheat {
		m, err := StandardMassFlow(c.Flow)
		require.NoError(t, err)
		dry, err := FromHumidityRatio(c.Outdoor, 0, ground)
		require.NoError(t, err)
		p, err := PreheatPower(dry, m, c.To)
		require.NoError(t, err)
		near(t, float64(c.Power), float64(p), c.Within)
		warm, err := Preheated(dry, c.To)
		require.NoError(t, err)
		assert.InDelta(t, float64(p), float64(m)*float64(warm.Enthalpy()-dry.Enthalpy()), 1e-8)
	}
}

func TestPreheaterRestsInWarmAir(t *testing.T) {
	mild := air(t, 3, 0.8)
	p, err := PreheatPower(mild, 0.06, celsius(-5))
	require.NoError(t, err)
	assert.Zero(t, p)
	same, err := Preheated(mild, celsius(-5))
	require.NoError(t, err)
	assert.Equal(t, mild, same)
}

func TestDefrostTimeIsDeducted(t *testing.T) {
	for _, c := range readHeat(t).Defrost {
		got, err := AfterDefrost(c.Flow, c.Minutes)
		require.NoError(t, err)
		near(t, float64(c.Average), float64(got), 1e-12)
	}
}

func TestNetOutdoorFlowAndItsInverse(t *testing.T) {
	for _, transfer := range []q.Ratio{0, 0.02, 0.1, 0.5, 0.999} {
		net, err := NetOutdoorFlow(0.05, transfer)
		require.NoError(t, err)
		assert.InDelta(t, 0.05*(1-float64(transfer)), float64(net), 1e-15)
		gross, err := GrossSupplyFlow(net, transfer)
		require.NoError(t, err)
		near(t, 0.05, float64(gross), 1e-12)
	}
}

func TestHeatRefusesWhatLiesOutside(t *testing.T) {
	_, err := SensibleHeat(-1, StandardDensity, 10)
	assert.ErrorContains(t, err, "flow")
	_, err = SensibleHeat(0.1, 5, 10)
	assert.ErrorContains(t, err, `air density "5 kg/m3" is out of range, expected 0.3 kg/m3 to 1.8 kg/m3`)
	_, err = SensibleHeat(0.1, StandardDensity, 900)
	assert.ErrorContains(t, err, "temperature difference")
	_, err = PreheatPower(State{}, 0.06, celsius(0))
	assert.ErrorContains(t, err, "outdoor air is not given")
	_, err = PreheatPower(air(t, -20, 0.5), 0, celsius(0))
	assert.ErrorContains(t, err, "supply mass flow")
	_, err = Preheated(State{}, celsius(0))
	assert.ErrorContains(t, err, "outdoor air is not given")
	_, err = Preheated(air(t, -20, 0.5), celsius(90))
	assert.ErrorContains(t, err, "dry bulb")
	_, err = NetOutdoorFlow(0.1, 1.2)
	assert.ErrorContains(t, err, "exhaust air transfer ratio")
	_, err = GrossSupplyFlow(0.1, 1)
	assert.ErrorContains(t, err, "exhaust air transfer ratio")
	_, err = AfterDefrost(0.1, 3700)
	assert.ErrorContains(t, err, "defrost time")
}
