package airflow

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

const published = "../../testdata/published/airflow"

type examples struct {
	Case []struct {
		Name, Diameter, Flow, Length, Roughness, Compression, Velocity, Loss string
		Factor, Tolerance                                                    float64
	}
	Equivalent []struct {
		Size  []string
		Oval  bool
		Round string
	}
	Run struct {
		Density            float64
		KinematicViscosity float64 `toml:"kinematic_viscosity"`
		Roughness          string
		Paths              map[string]float64
		Section            []struct {
			ID, From, Length, End string
			Size                  []string
			Coefficient           float64
		}
	}
}

func readExamples(t *testing.T) examples {
	t.Helper()
	var e examples
	_, err := toml.DecodeFile(filepath.Join(published, "examples.toml"), &e)
	require.NoError(t, err)
	return e
}

func readJSON(t *testing.T, name string, into any) {
	t.Helper()
	source, err := os.ReadFile(filepath.Join(published, name))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(source, into))
}

func value[T q.Quantity](t *testing.T, text string) T {
	t.Helper()
	v, err := q.ParseAs[T](text)
	require.NoError(t, err)
	return v
}

func round(t *testing.T, diameter q.Length) Shape {
	t.Helper()
	s, err := Round(diameter)
	require.NoError(t, err)
	return s
}

func TestStraightDucts(t *testing.T) {
	cases := readExamples(t).Case
	require.NotEmpty(t, cases)
	for _, c := range cases {
		s := Section{Shape: round(t, value[q.Length](t, c.Diameter)), Length: value[q.Length](t, c.Length),
			Material: Material{Roughness: value[q.Length](t, c.Roughness), Flexible: c.Compression != ""}}
		if c.Compression != "" {
			s.Compression = value[q.Ratio](t, c.Compression)
		}
		loss, err := s.Loss(value[q.Flow](t, c.Flow), StandardAir())
		require.NoError(t, err)
		assert.InEpsilon(t, float64(value[q.Pressure](t, c.Loss)), float64(loss.Total), c.Tolerance, c.Name)
		if c.Velocity != "" {
			assert.InEpsilon(t, float64(value[q.Velocity](t, c.Velocity)), float64(loss.Velocity), 0.02, c.Name) // printed to 0.1 m/s
		}
		if c.Factor != 0 {
			assert.InEpsilon(t, c.Factor, loss.Compressed, 0.02, c.Name)
		}
	}
}

func TestEqualFriction(t *testing.T) {
	for _, c := range readExamples(t).Equivalent {
		got, err := EqualFriction(value[q.Length](t, c.Size[0]), value[q.Length](t, c.Size[1]), c.Oval)
		require.NoError(t, err)
		assert.InDelta(t, float64(value[q.Length](t, c.Round)), float64(got), 1.1e-3, "%v", c.Size) // printed to 1 mm
	}
}

// ASHRAE Fundamentals 2021 chapter 21, example 8: every path within 3 Pa.
func TestCompleteRun(t *testing.T) {
	run := readExamples(t).Run
	roughness := value[q.Length](t, run.Roughness)
	made := map[string]*Branch{}
	for _, s := range run.Section {
		shape := round(t, value[q.Length](t, s.Size[0]))
		if len(s.Size) == 2 {
			var err error
			shape, err = Rectangular(value[q.Length](t, s.Size[0]), value[q.Length](t, s.Size[1]))
			require.NoError(t, err)
		}
		b := &Branch{ID: s.ID, Section: Section{Shape: shape, Material: Material{Roughness: roughness}, Length: value[q.Length](t, s.Length), Coefficients: s.Coefficient}}
		if s.End != "" {
			b.End = &End{ID: s.End, Flow: 0.380}
		}
		if s.From != "" {
			made[s.From].Beyond = append(made[s.From].Beyond, b)
		}
		made[s.ID] = b
	}
	paths, err := Paths([]*Branch{made["a"]}, 1, Air{run.Density, run.Density * run.KinematicViscosity})
	require.NoError(t, err)
	require.Len(t, paths, 4)
	for _, p := range paths {
		assert.InDelta(t, run.Paths[p.End], float64(p.Loss), 3, p.End)
	}
	assert.Equal(t, "D", Critical(paths).End)
}

func TestFrictionAgainstReference(t *testing.T) {
	var grid struct {
		Density, Viscosity float64
		Cases              []struct {
			Diameter  float64 `json:"diameter_m"`
			Roughness float64 `json:"roughness_m"`
			Velocity  float64 `json:"velocity_m_s"`
			Reynolds  float64
			Factor    float64
			Gradient  float64 `json:"gradient_pa_m"`
		}
	}
	readJSON(t, "friction.json", &grid)
	require.Greater(t, len(grid.Cases), 60)
	for _, c := range grid.Cases {
		assert.InEpsilon(t, c.Factor, Factor(c.Reynolds, c.Roughness/c.Diameter), 1e-10)
		s := Section{Shape: round(t, q.Length(c.Diameter)), Length: 1, Material: Material{Roughness: q.Length(c.Roughness)}}
		loss, err := s.Loss(q.Flow(c.Velocity*math.Pi*c.Diameter*c.Diameter/4), Air{grid.Density, grid.Viscosity})
		require.NoError(t, err)
		assert.InEpsilon(t, c.Gradient, float64(loss.Total), 1e-9)
	}
}

func TestUndampedTreesAgainstReference(t *testing.T) {
	var file struct {
		Cases []struct {
			Pressure float64 `json:"pressure_pa"`
			Trunk    []float64
			Arms     [][]float64
			Flows    []float64 `json:"flows_m3_s"`
		}
	}
	readJSON(t, "network.json", &file)
	require.Len(t, file.Cases, 12)
	section := func(s []float64) Section {
		return Section{Shape: round(t, q.Length(s[0])), Length: q.Length(s[1]), Material: Material{Roughness: q.Length(s[2])}, Coefficients: s[3]}
	}
	for _, c := range file.Cases {
		trunk := &Branch{ID: "trunk", Section: section(c.Trunk)}
		for range c.Arms {
			trunk.Beyond = append(trunk.Beyond, &Branch{ID: "arm", End: &End{ID: "end", Flow: 0.01}})
		}
		for i, a := range c.Arms {
			trunk.Beyond[i].Section = section(a)
		}
		flows, err := Undamped([]*Branch{trunk}, q.Pressure(c.Pressure), StandardAir())
		require.NoError(t, err)
		require.Len(t, flows, len(c.Flows))
		for i, f := range flows {
			assert.InEpsilon(t, c.Flows[i], float64(f.Flow), 1e-6)
		}
	}
}
