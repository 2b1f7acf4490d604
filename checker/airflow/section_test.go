package airflow

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// TestEveryFigureOfASection follows the equations in the doc of SectionLoss by hand:
// flexible duct 150 mm, 4 m at 15 %, 40 L/s, two elbows of 0.22 and a boot as long
// as 3 m. The hand calculation is ours, no publication.
func TestEveryFigureOfASection(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "flexible"), Length: 4, Compression: 0.15,
		Fittings: []Fitting{{Name: "elbow", Count: 2, Coefficient: 0.22}, {Name: "boot", Count: 1, EquivalentLength: 3}}}
	l := lossOf(t, StandardAir(), s, 0.04)
	assert.InDelta(t, 2.2635, float64(l.Velocity), 1e-4)         // 0.04/(pi 0.15^2/4)
	assert.InDelta(t, 3.0844, float64(l.VelocityPressure), 1e-4) // 1.204 x 2.2635^2/2
	assert.InDelta(t, 22548, l.Reynolds, 1)                      // 1.204 x 2.2635 x 0.15/1.813e-5
	assert.InDelta(t, 0.006, l.RelativeRoughness, 1e-9)
	assert.InDelta(t, 0.03546, l.Friction.Factor, 0.00001) // 1/sqrt = 5.310 = -2 log10(0.006/3.7 + 2.51 x 5.310/22548)
	assert.Equal(t, Turbulent, l.Friction.Regime)
	assert.InDelta(t, 0.7292, float64(l.Gradient), 0.0002) // 0.03546 x 3.0844/0.15
	assert.InDelta(t, 5.134, l.Compression.Factor, 0.001)
	assert.True(t, l.Compression.Extrapolated, "150 mm is a little under 6 in")
	assert.InDelta(t, float64(l.Gradient)*l.Compression.Factor*4, float64(l.Straight), 1e-9)
	assert.InDelta(t, 0.44, l.Coefficient, 1e-12)
	assert.Equal(t, q.Length(3), l.EquivalentLength)
	assert.InDelta(t, 0.44*3.0844+0.7292*3, float64(l.Fitted), 0.001)
	require.Len(t, l.Fittings, 2)
	assert.InDelta(t, 0.44*3.0844, float64(l.Fittings[0].Loss), 1e-4)
	assert.InDelta(t, float64(l.Fitted), float64(l.Fittings[0].Loss+l.Fittings[1].Loss), 1e-9)
	assert.InDelta(t, float64(l.Straight+l.Fitted), float64(l.Total), 1e-12)
	assert.Equal(t, "0.7 Pa/m", Gradient(0.7).String())
}

// TestASectionLosesWhatItsFittingsDo holds that the figures of a section are the sums
// of those of its fittings, of each kind more than one.
func TestASectionLosesWhatItsFittingsDo(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "pvc"), Fittings: []Fitting{
		{Name: "elbow", Count: 2, Coefficient: 0.22}, {Name: "tee", Count: 1, Coefficient: 0.6},
		{Name: "boot", Count: 2, EquivalentLength: 3}, {Name: "cap", Count: 1, EquivalentLength: 5},
		{Name: "mitered elbow", Count: 2, Coefficient: 1.2, Miter: true}, {Name: "mitered offset", Count: 1, Coefficient: 0.34, Miter: true}}}
	l := lossOf(t, StandardAir(), s, 0.04)
	var sum q.Pressure
	for _, f := range l.Fittings {
		assert.Positive(t, f.Loss, f.Name)
		sum += f.Loss
	}
	assert.Equal(t, q.Length(2*3+5), l.EquivalentLength)
	assert.InDelta(t, 2*0.22+0.6+(2*1.2+0.34)*MiterFactor(l.Reynolds), l.Coefficient, 1e-12)
	assert.InEpsilon(t, float64(sum), float64(l.Fitted), 1e-12)
	assert.InEpsilon(t, float64(sum), float64(l.Total), 1e-12, "it has no length")
}

func TestStillAirLosesNothing(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "pvc"), Length: 4, Fittings: []Fitting{{Name: "elbow", Count: 2, Coefficient: 0.22}}}
	l := lossOf(t, StandardAir(), s, 0)
	assert.Zero(t, l.Total)
	assert.Zero(t, l.Velocity)
	assert.Len(t, l.Fittings, 1)
	flow, err := s.Flow(StandardAir(), 0)
	require.NoError(t, err)
	assert.Zero(t, flow)
}

func TestSectionsOutsideTheirRange(t *testing.T) {
	good := Section{Shape: round(t, 0.15), Material: named(t, "flexible"), Length: 4}
	flat, err := Rectangular(0.1, 0.2)
	require.NoError(t, err)
	for want, change := range map[string]func(s *Section){
		`length "-1000 mm" is out of range`:                                 func(s *Section) { s.Length = -1 },
		`length "20000 m" is out of range`:                                  func(s *Section) { s.Length = 20_000 },
		`length "undetermined"`:                                             func(s *Section) { s.Length = q.Length(math.NaN()) },
		`compression "50 %" is out of range`:                                func(s *Section) { s.Compression = 0.5 },
		`roughness "20 mm" is out of range`:                                 func(s *Section) { s.Material.Roughness = 0.02 },
		`roughness by hydraulic diameter "0.0533`:                           func(s *Section) { s.Material.Roughness = 0.008 },
		`compression "10 %" is of material "lined", expected flexible duct`: func(s *Section) { s.Material, s.Compression = named(t, "lined"), 0.1 },
		`compression "10 %" is of a rectangular duct, expected a round one`: func(s *Section) { s.Shape, s.Compression = flat, 0.1 },
		`fitting "tee": loss coefficient "-20" is out of range`:             func(s *Section) { s.Fittings = []Fitting{{Name: "tee", Count: 1, Coefficient: -20}} },
		`fitting "tee": count "0" is out of range, expected 1 to 1000`:      func(s *Section) { s.Fittings = []Fitting{{Name: "tee"}} },
		`fitting "tee": equivalent length "-1000 mm" is out of range`:       func(s *Section) { s.Fittings = []Fitting{{Name: "tee", Count: 1, EquivalentLength: -1}} },
		`fitting "elbow": loss coefficient of a miter "-1" is out of range`: func(s *Section) { s.Fittings = []Fitting{{Name: "elbow", Count: 1, Coefficient: -1, Miter: true}} },
		`loss coefficients of fittings add up to "-0.1", expected 0 or more in a section`: func(s *Section) {
			s.Fittings = []Fitting{{Name: "tee", Count: 1, Coefficient: -0.3}, {Name: "elbow", Count: 1, Coefficient: 0.2}}
		},
	} {
		s := good
		change(&s)
		_, err := s.Loss(StandardAir(), 0.01)
		assert.ErrorContains(t, err, want)
		_, err = s.Flow(StandardAir(), 10)
		assert.ErrorContains(t, err, want)
	}
	var out *bounds.Error
	for _, flow := range []q.Flow{-0.01, 101, q.Flow(math.NaN())} {
		_, err := good.Loss(StandardAir(), flow)
		assert.ErrorAs(t, err, &out)
	}
	_, err = good.Loss(StandardAir(), 5)
	assert.ErrorContains(t, err, `velocity "282.94 m/s" is out of range`)
	for _, p := range []q.Pressure{-1, 2e5, q.Pressure(math.NaN())} {
		_, err := good.Flow(StandardAir(), p)
		assert.ErrorAs(t, err, &out)
	}
}

// TestRegainWithinASection: a fitting may give pressure back as long as the section
// does not.
func TestRegainWithinASection(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Fittings: []Fitting{{Name: "tee", Count: 1, Coefficient: -0.1}, {Name: "elbow", Count: 1, Coefficient: 0.22}}}
	l := lossOf(t, StandardAir(), s, 0.04)
	assert.Negative(t, l.Fittings[0].Loss)
	assert.InDelta(t, 0.12, l.Coefficient, 1e-12)
}

// TestAMiterMayLoseNothing: zero is inside the range of its coefficient.
func TestAMiterMayLoseNothing(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Fittings: []Fitting{{Name: "elbow", Count: 1, Miter: true}}}
	assert.Zero(t, lossOf(t, StandardAir(), s, 0.04).Total)
}

func TestPressuresThatASectionDoesNotReach(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "pvc"), Length: 0.1}
	_, err := s.Flow(StandardAir(), 50_000)
	assert.ErrorContains(t, err, `loss "50 kPa" is out of reach, at 100 m/s the section loses "`)
	_, err = Section{Shape: round(t, 0.15)}.Flow(StandardAir(), 0)
	assert.ErrorContains(t, err, "out of reach", "no length and no fittings")
}

// TestTheFastestAirOfASection is reached and not beyond reach.
func TestTheFastestAirOfASection(t *testing.T) {
	s := Section{Shape: round(t, 0.15), Material: named(t, "pvc"), Length: 1}
	most := mostVelocity * q.Velocity(s.Shape.Area())
	loss := lossOf(t, StandardAir(), s, q.Flow(most))
	flow, err := s.Flow(StandardAir(), loss.Total)
	require.NoError(t, err)
	assert.InEpsilon(t, float64(most), float64(flow), 1e-9)
}

func TestStatedLosses(t *testing.T) {
	for exponent, want := range map[float64]q.Pressure{0: 40, 2: 40, 1: 20, 1.5: q.Pressure(10 * math.Pow(2, 1.5))} {
		p, err := StatedLoss{"filter", 10, 0.05, exponent}.LossAt(0.1)
		require.NoError(t, err)
		assert.InDelta(t, float64(want), float64(p), 1e-9)
	}
	none, err := StatedLoss{"hood", 10, 0.05, 2}.LossAt(0)
	require.NoError(t, err)
	assert.Zero(t, none)
	for _, bad := range []StatedLoss{{"x", -1, 0.05, 2}, {"x", 10, 0, 2}, {"x", 10, 0.05, 0.5}, {"x", 10, 0.05, 2.5}, {"x", q.Pressure(math.NaN()), 0.05, 2}, {"x", 10, 0.05, math.NaN()}} {
		_, err := bad.LossAt(0.1)
		assert.ErrorContains(t, err, `"x": `)
	}
	_, err = StatedLoss{"x", 10, 0.05, 2}.LossAt(-1)
	assert.ErrorContains(t, err, "flow")
}
