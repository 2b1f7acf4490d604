package airflow

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const published documenttest.Published = "../../testdata/published/airflow"

// TestPublishedFilesNameTheirSource holds that no figure comes without one.
func TestPublishedFilesNameTheirSource(t *testing.T) { published.NameTheirSource(t) }

const (
	cfm  = 0.3048 * 0.3048 * 0.3048 / 60
	inch = 0.0254
	foot = 0.3048
	inwc = inch * 1000 * 9.80665
	fpm  = foot / 60
)

func round(t testing.TB, d q.Length) Shape {
	t.Helper()
	s, err := Round(d)
	require.NoError(t, err)
	return s
}

func rough(x q.Length) Material { return Material{Name: "test", Roughness: x} }

func named(t testing.TB, material string) Material {
	t.Helper()
	m, err := MaterialNamed(material)
	require.NoError(t, err)
	return m
}

func lossOf(t testing.TB, air Air, s Section, flow q.Flow) SectionLoss {
	t.Helper()
	loss, err := s.Loss(air, flow)
	require.NoError(t, err)
	return loss
}

func coefficients(cs ...float64) []Fitting {
	var list []Fitting
	for _, c := range cs {
		list = append(list, Fitting{Name: "stated", Count: 1, Coefficient: c})
	}
	return list
}

func airOf(density, viscosity float64) Air {
	if density == 0 {
		return StandardAir()
	}
	return Air{moistair.Density(density), Viscosity(viscosity)}
}

// around is a printed value and how far off a result may be: within it, or by a
// share of it.
type around[T ~float64] struct {
	Value         T
	Within, Share float64
}

func (a around[T]) check(t *testing.T, got T, what ...any) {
	t.Helper()
	if a.Value == 0 && a.Within == 0 && a.Share == 0 {
		return // not printed
	}
	within := a.Within
	if a.Share > 0 {
		within = a.Share * float64(a.Value)
	}
	assert.InDelta(t, float64(a.Value), float64(got), within+1e-12, what...)
}
