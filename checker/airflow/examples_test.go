package airflow

import (
	"fmt"
	"math"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestFlexibleDuctOfTheHandbook(t *testing.T) {
	var f struct {
		Duct struct {
			Diameter, Length q.Length
			Flow             q.Flow
			Density          float64
			Velocity         around[float64]
		}
		Case []struct {
			Roughness   q.Length
			Compression q.Ratio
			Factor      around[float64]
			Printed     float64
			Loss        around[float64]
		}
	}
	published.Read(t, "flexible", &f)
	require.Len(t, f.Case, 4)
	air := Air{moistair.Density(f.Duct.Density), StandardAir().Viscosity}
	for _, c := range f.Case {
		m := Material{Name: "flexible", Roughness: c.Roughness, Compressible: true}
		loss := lossOf(t, air, Section{Shape: round(t, f.Duct.Diameter), Material: m, Length: f.Duct.Length, Compression: c.Compression}, f.Duct.Flow)
		f.Duct.Velocity.check(t, float64(loss.Velocity))
		c.Factor.check(t, loss.Compression.Factor, c.Compression)
		c.Loss.check(t, float64(loss.Total), c.Compression)
		if c.Printed != 0 { // the chapter's slip; the test says that we do not follow it
			assert.Greater(t, math.Abs(loss.Compression.Factor-c.Printed), 0.1)
		}
	}
}

func TestSizesOfTheHandbook(t *testing.T) {
	var f struct {
		Flow []struct {
			Flow               q.Flow
			Share              float64
			Gradient, Velocity []float64
			Diameter           []q.Length
		}
	}
	published.Read(t, "sizes", &f)
	require.Len(t, f.Flow, 2)
	for _, c := range f.Flow {
		for i, d := range c.Diameter {
			loss := lossOf(t, StandardAir(), Section{Shape: round(t, d), Material: rough(0.12 * mm), Length: 1}, c.Flow)
			assert.InEpsilon(t, c.Gradient[i], float64(loss.Gradient), c.Share, d)
			assert.InDelta(t, c.Velocity[i], float64(loss.Velocity), 0.0751, d)
		}
	}
}

type example struct {
	ID                 string
	Density, Viscosity float64
	Diameter, Length   q.Length
	Flow               q.Flow
	Roughness          q.Length
	Coefficients       []float64
	Velocity           around[q.Velocity]
	VelocityPressure   around[q.Pressure] `toml:"velocity_pressure"`
	Reynolds, Factor   around[float64]
	Straight, Loss     around[q.Pressure]
}

func TestSingleRuns(t *testing.T) {
	var f struct{ Case []example }
	published.Read(t, "runs", &f)
	require.Len(t, f.Case, 5)
	for _, c := range f.Case {
		t.Run(c.ID, func(t *testing.T) {
			s := Section{Shape: round(t, c.Diameter), Material: rough(c.Roughness), Length: c.Length, Fittings: coefficients(c.Coefficients...)}
			loss := lossOf(t, airOf(c.Density, c.Viscosity), s, c.Flow)
			c.Velocity.check(t, loss.Velocity, "velocity")
			c.VelocityPressure.check(t, loss.VelocityPressure, "velocity pressure")
			c.Reynolds.check(t, loss.Reynolds, "Reynolds number")
			c.Factor.check(t, loss.Friction.Factor, "friction factor")
			c.Straight.check(t, loss.Straight, "friction")
			c.Loss.check(t, loss.Total, "total")
		})
	}
}

// TestMeasuredDuct compares with measurements, which a calculation meets within the
// spread of the measurements.
func TestMeasuredDuct(t *testing.T) {
	var f struct {
		Duct struct {
			Diameter                     q.Length
			Roughness, Share, Galvanized float64
		}
		Measured struct{ Rows [][4]float64 }
	}
	published.Read(t, "measured", &f)
	require.Len(t, f.Measured.Rows, 5)
	for _, r := range f.Measured.Rows {
		air := Air{moistair.Density(r[0] * 0.45359237 / math.Pow(foot, 3)), StandardAir().Viscosity}
		s := Section{Shape: round(t, f.Duct.Diameter), Material: rough(q.Length(f.Duct.Roughness * foot)), Length: foot}
		flow := q.Flow(r[1]*fpm) * q.Flow(s.Shape.Area())
		loss := lossOf(t, air, s, flow)
		assert.InEpsilon(t, r[2]*inwc, float64(loss.Total), f.Duct.Share, r)
		assert.InEpsilon(t, r[3], loss.Friction.Factor, f.Duct.Share, r)
		s.Material = rough(q.Length(f.Duct.Galvanized * foot))
		over := float64(lossOf(t, air, s, flow).Total)/(r[2]*inwc) - 1
		assert.True(t, over > 0.06 && over < 0.16, "galvanized duct loses %v more", over)
	}
}

func TestOtherFormsOfTheFrictionLaw(t *testing.T) {
	var f struct {
		PowerLaw struct {
			Coefficient      float64
			FlowExponent     float64 `toml:"flow_exponent"`
			DiameterExponent float64 `toml:"diameter_exponent"`
			Over             [2]float64
		} `toml:"power_law"`
		SwameeJain struct{ Over [2]float64 } `toml:"swamee_jain"`
	}
	published.Read(t, "explicit", &f)
	for d := 4.0; d <= 8; d++ {
		for flow := 50.0; flow <= 300; flow += 50 {
			s := Section{Shape: round(t, q.Length(d*inch)), Material: rough(0.0003 * foot), Length: 100 * foot}
			loss := lossOf(t, StandardAir(), s, q.Flow(flow*cfm))
			power := f.PowerLaw.Coefficient * math.Pow(flow, f.PowerLaw.FlowExponent) / math.Pow(d, f.PowerLaw.DiameterExponent)
			over := power*inwc/float64(loss.Total) - 1
			assert.True(t, over > f.PowerLaw.Over[0] && over < f.PowerLaw.Over[1], "power law is %v over at %v in, %v cfm", over, d, flow)

			swameeJain := 0.25 / math.Pow(math.Log10(loss.RelativeRoughness/3.7+5.74/math.Pow(loss.Reynolds, 0.9)), 2)
			over = swameeJain/loss.Friction.Factor - 1
			assert.True(t, over > f.SwameeJain.Over[0] && over < f.SwameeJain.Over[1], "explicit form is %v over at %v in, %v cfm", over, d, flow)
		}
	}
}

// TestTablesComputedFromTheEquations checks an independent calculation on the same
// equations, its inverse, compression factors, and equivalent lengths.
func TestTablesComputedFromTheEquations(t *testing.T) {
	type rows struct {
		Share, Within float64
		Percent       []float64
		Rows          [][]float64
	}
	var f struct {
		Table            rows
		LargestFlow      rows `toml:"largest_flow"`
		Compression      rows
		EquivalentLength rows `toml:"equivalent_length"`
	}
	published.Read(t, "friction-table", &f)
	kinds := []struct {
		roughness   q.Length
		compression q.Ratio
	}{{0.0003 * foot, 0}, {0.003 * foot, 0}, {0.003 * foot, 0.04}, {0.003 * foot, 0.15}}
	section := func(d float64, kind int) Section {
		m := Material{Name: "any", Roughness: kinds[kind].roughness, Compressible: true}
		return Section{Shape: round(t, q.Length(d*inch)), Material: m, Length: 100 * foot, Compression: kinds[kind].compression}
	}
	for _, r := range f.Table.Rows {
		for kind := range kinds {
			loss := lossOf(t, StandardAir(), section(r[0], kind), q.Flow(r[1]*cfm))
			assert.InEpsilon(t, r[4+kind]*inwc, float64(loss.Total), f.Table.Share, "%v, kind %d", r, kind)
			assert.InDelta(t, r[2], float64(loss.Velocity)/fpm, 0.6)
			assert.InDelta(t, r[3], float64(loss.VelocityPressure)/inwc, 0.0001)
		}
	}
	for _, r := range f.LargestFlow.Rows {
		for kind := range kinds {
			flow, err := section(r[1], kind).Flow(StandardAir(), q.Pressure(r[0]*inwc))
			require.NoError(t, err)
			assert.InDelta(t, r[2+kind], float64(flow)/cfm, f.LargestFlow.Within, "%v, kind %d", r, kind)
		}
	}
	for _, r := range f.Compression.Rows {
		for i, percent := range f.Compression.Percent {
			c, err := CompressionFactor(q.Length(r[0]*inch), q.Ratio(percent/100))
			require.NoError(t, err)
			assert.InDelta(t, r[1+i], c.Factor, f.Compression.Within, "%v in, %v %%", r[0], percent)
			assert.Equal(t, r[0] < 6, c.Extrapolated)
		}
	}
	for _, r := range f.EquivalentLength.Rows {
		s := section(r[0], 0)
		gradient := lossOf(t, StandardAir(), s, q.Flow(r[1]*cfm)).Total / 100
		for i, c := range []float64{0.22, 1.2} {
			s.Length, s.Fittings = 0, coefficients(c)
			feet := lossOf(t, StandardAir(), s, q.Flow(r[1]*cfm)).Total / gradient
			assert.InDelta(t, r[2+i], float64(feet), f.EquivalentLength.Within, r)
		}
	}
}

// TestCodeLengthsLeaveRoomForFittings holds that straight friction of the longest
// ducts that codes allow lies under the pressure that their fans are rated at.
func TestCodeLengthsLeaveRoomForFittings(t *testing.T) {
	for file, roughness := range map[string]q.Length{"irc-smooth": 0.0003 * foot, "irc-flexible": 0.003 * foot} {
		var f struct {
			Case []struct {
				Diameter q.Length
				Flow     q.Flow
				Expected string
			}
		}
		_, err := toml.DecodeFile(fmt.Sprintf("%s/../ducts/%s.toml", published, file), &f)
		require.NoError(t, err)
		finite := 0
		for _, c := range f.Case {
			length, err := q.ParseAs[q.Length](c.Expected)
			if err != nil {
				continue // not permitted, or no limit
			}
			finite++
			loss := lossOf(t, StandardAir(), Section{Shape: round(t, c.Diameter), Material: rough(roughness), Length: length}, c.Flow)
			share := float64(loss.Total) / inwc
			assert.True(t, share >= 0.0065 && share <= 0.2145, "%v at %v, %v: %v in. w.g.", c.Diameter, c.Flow, length, share)
		}
		assert.Greater(t, finite, 15)
	}
}

func TestCanadianLengthsLeaveRoomForFittings(t *testing.T) {
	var f struct {
		Table struct {
			Flow []float64
			Rows [][]float64
		}
		StraightFriction struct {
			Roughness   q.Length
			Least, Most float64
		} `toml:"straight_friction"`
	}
	published.Read(t, "canada-lengths", &f)
	require.Len(t, f.Table.Rows, 30)
	s := Section{Material: rough(f.StraightFriction.Roughness)}
	for _, r := range f.Table.Rows {
		for i, flow := range f.Table.Flow {
			if r[2+i] < 1 || r[2+i] > 59 {
				continue
			}
			s.Shape, s.Length = round(t, q.Length(r[1])*mm), q.Length(r[2+i])
			share := float64(lossOf(t, StandardAir(), s, q.Flow(flow/1000)).Total) / r[0]
			assert.True(t, share > f.StraightFriction.Least-0.005 && share < f.StraightFriction.Most+0.005, "%v: %v", r, share)
		}
	}
}
