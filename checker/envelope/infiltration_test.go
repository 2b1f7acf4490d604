package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

type infiltrationFile struct {
	StoreyFactors struct{ Storeys, Factor []float64 } `toml:"storey_factors"`
	Credit        []creditCase
	Normalized    struct {
		Area, Floor                    q.Area
		Height                         q.Length
		Weather, Leakage, Infiltration float64
	}
	ByExponent struct{ Exponent, Coefficient []float64 } `toml:"by_exponent"`
	Weather    struct {
		Area             q.Area
		Volume           q.Volume
		Difference       q.TemperatureDifference
		Wind             q.Velocity
		Storeys, Shelter int
		Flow, Changes    float64
	}
	WeatherIP struct{ Stack, Wind []float64 } `toml:"weather_ip"`
}

type creditCase struct {
	ID, System                              string
	Required, Flow50, Weather, Infiltration float64
	Height                                  q.Length
	Exterior, Counted                       *float64
	Uncapped                                bool
	Balanced, Unbalanced                    float64
}

func readInfiltration(t *testing.T) (f infiltrationFile) {
	t.Helper()
	published.Read(t, "infiltration", &f)
	require.Len(t, f.Credit, 7)
	return f
}

func TestStoreyFactors(t *testing.T) {
	f := readInfiltration(t).StoreyFactors
	require.Len(t, f.Factor, 5)
	for i, storeys := range f.Storeys {
		got, err := StoreyFactor(storeys)
		require.NoError(t, err)
		assert.InDelta(t, f.Factor[i], got, 0.00501)
		byHeight, err := HeightFactor(q.Length(8.2*foot*storeys), q.IP)
		require.NoError(t, err)
		assert.InDelta(t, got, byHeight, 1e-12, "a storey is 8.2 ft")
	}
}

func TestInfiltrationCredits(t *testing.T) {
	for _, c := range readInfiltration(t).Credit {
		t.Run(c.ID, c.check)
	}
}

func (c creditCase) check(t *testing.T) {
	system, unit := q.SI, q.Flow(0.001)
	if c.System == "IP" {
		system, unit = q.IP, cfm
	}
	q0, err := leakage(t, q.Flow(c.Flow50)*unit, 0.65).Infiltration(c.Weather, c.Height, system)
	require.NoError(t, err)
	assert.InEpsilon(t, c.Infiltration, float64(q0/unit), 5e-4)
	credit := Credit{Required: q.Flow(c.Required) * unit, Infiltration: q0, Exterior: 1, Capped: !c.Uncapped}
	if c.Exterior != nil {
		credit.Exterior = q.Ratio(*c.Exterior)
	}
	if c.Counted != nil {
		counted, err := credit.Counted()
		require.NoError(t, err)
		assert.InDelta(t, *c.Counted, float64(counted/unit), 1e-9)
	}
	for _, fan := range []func() (q.Flow, error){credit.Fan2013, credit.Fan2019} {
		got, err := fan()
		require.NoError(t, err)
		assert.InDelta(t, c.Balanced, float64(got/unit), 0.02)
	}
	credit.Unbalanced = true
	got, err := credit.Fan2019()
	require.NoError(t, err)
	assert.InDelta(t, c.Unbalanced, float64(got/unit), 0.02)
}

func TestNormalizedForm(t *testing.T) {
	f := readInfiltration(t).Normalized
	nl, err := NormalizedLeakage(f.Area, f.Floor, f.Height, q.SI)
	require.NoError(t, err)
	assert.InDelta(t, f.Leakage, nl, 5e-5)
	flow, err := NormalizedInfiltration(nl, f.Weather, f.Floor, q.SI)
	require.NoError(t, err)
	assert.InDelta(t, f.Infiltration, 1000*float64(flow), 0.005)
}

// TestBothFormsAgree puts the leakage area of a test into the older form. The air
// is at 1.2041 kg/m3 here and at 1.2 in the file: 0.2 %.
func TestBothFormsAgree(t *testing.T) {
	f := readInfiltration(t).ByExponent
	for i, n := range f.Exponent {
		l := leakage(t, 0.5, n)
		nl, err := NormalizedLeakage(l.EffectiveArea(), 150, 2.5, q.SI)
		require.NoError(t, err)
		for _, system := range []q.System{q.IP, q.SI} {
			flow, err := NormalizedInfiltration(nl, 0.6, 150, system)
			require.NoError(t, err)
			assert.InEpsilon(t, f.Coefficient[i], float64(flow)/(0.5*0.6), 0.005, "n %g", n)
		}
	}
}

func TestUnitSystemsKeepTheirOwnConstants(t *testing.T) {
	ip, err := NormalizedInfiltration(0.5, 0.6, 100, q.IP)
	require.NoError(t, err)
	si, err := NormalizedInfiltration(0.5, 0.6, 100, q.SI)
	require.NoError(t, err)
	assert.InDelta(t, 0.5*0.6*100/1.44, float64(si)*1000, 1e-12)
	assert.InDelta(t, 0.5*0.6*100/(foot*foot)/7.3, float64(ip)/cfm, 1e-9)
	assert.NotEqual(t, ip, si)
}

func TestHourOfWeather(t *testing.T) {
	f := readInfiltration(t).Weather
	got, err := WeatherInfiltration(f.Area, f.Storeys, Shelter(f.Shelter), Weather{f.Difference, f.Wind})
	require.NoError(t, err)
	assert.InDelta(t, f.Flow, float64(got), 5e-5)
	assert.InDelta(t, f.Changes, float64(got)/float64(f.Volume)*3600, 0.005)
	cold, err := WeatherInfiltration(f.Area, f.Storeys, Shelter(f.Shelter), Weather{-f.Difference, f.Wind})
	require.NoError(t, err)
	assert.Equal(t, got, cold, "the stack works either way")
}

// TestWeatherCoefficientsInIP compares the SI coefficients with the handbook's own
// IP ones, which are rounded to four decimals.
func TestWeatherCoefficientsInIP(t *testing.T) {
	f := readInfiltration(t).WeatherIP
	const mph, toCFM = 0.44704, 1 / cfm
	inIP := func(storeys, shelter int, w Weather) float64 {
		flow, err := WeatherInfiltration(squareInch, storeys, Shelter(shelter), w)
		require.NoError(t, err)
		return math.Pow(float64(flow)*toCFM, 2)
	}
	for i, c := range f.Stack {
		assert.InEpsilon(t, c, inIP(i+1, 1, Weather{Difference: 5.0 / 9}), 0.007)
	}
	for i, c := range f.Wind {
		assert.InDelta(t, c, inIP(2, i+1, Weather{Wind: mph}), 1.01e-4)
	}
}

func TestInfiltrationRefusesWhatLiesOutside(t *testing.T) {
	l := leakage(t, 0.5, 0.65)
	for what, fail := range map[string]func() error{
		"height above grade":           func() error { _, err := HeightFactor(0.5, q.SI); return err },
		"storeys":                      func() error { _, err := StoreyFactor(math.NaN()); return err },
		"leakage area":                 func() error { _, err := NormalizedLeakage(-1, 100, 5, q.SI); return err },
		"floor area":                   func() error { _, err := NormalizedLeakage(0.1, 0, 5, q.SI); return err },
		"normalized leakage":           func() error { _, err := NormalizedInfiltration(-1, 0.6, 100, q.SI); return err },
		"weather and shielding factor": func() error { _, err := l.Infiltration(5, 5, q.SI); return err },
		"required flow":                func() error { _, err := Credit{Exterior: 1}.Counted(); return err },
		"infiltration":                 func() error { _, err := Credit{Required: 1, Infiltration: -1}.Fan2013(); return err },
		"exterior share":               func() error { _, err := Credit{Required: 1, Exterior: 1.1}.Fan2019(); return err },
		"expected 1 or 2":              func() error { _, err := WeatherInfiltration(0.05, 3, 1, Weather{}); return err },
		"shelter class":                func() error { _, err := WeatherInfiltration(0.05, 1, 0, Weather{}); return err },
		"wind speed":                   func() error { _, err := WeatherInfiltration(0.05, 1, 5, Weather{Wind: -1}); return err },
	} {
		assert.ErrorContains(t, fail(), what)
	}
}
