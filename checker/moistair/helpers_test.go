package moistair

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const published documenttest.Published = "../../testdata/published/moistair"

// TestPublishedFilesNameTheirSource holds that no figure comes without one.
func TestPublishedFilesNameTheirSource(t *testing.T) { published.NameTheirSource(t) }

// ground is a place for one value: the sea level pressure.
const ground = SeaLevelPressure

func celsius(c float64) q.Temperature { return q.Temperature(c + freezing) }

func inCelsius(t q.Temperature) float64 { return float64(t) - freezing }

func fahrenheit(f float64) q.Temperature { return q.Temperature((f + 459.67) / 1.8) }

func inFahrenheit(t q.Temperature) float64 { return float64(t)*1.8 - 459.67 }

func feet(x float64) q.Length { return q.Length(x * 0.3048) }

// air is a state that must exist.
func air(t testing.TB, c, rh float64) State {
	t.Helper()
	s, err := FromRelativeHumidity(celsius(c), q.Ratio(rh), ground)
	require.NoError(t, err)
	return s
}

func near(t *testing.T, want, got, share float64, what ...any) {
	t.Helper()
	assert.InEpsilon(t, want, got, share, what...)
}
