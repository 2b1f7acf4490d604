package moistair

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

const published = "../../testdata/published/moistair"

// readPublished decodes one file of outside facts; every key must be used.
func readPublished(t *testing.T, name string, into any) {
	t.Helper()
	meta, err := toml.DecodeFile(filepath.Join(published, name+".toml"), into)
	require.NoError(t, err)
	for _, k := range meta.Undecoded() {
		switch last := k[len(k)-1]; last {
		case "source", "document", "address", "read", "remark":
		default:
			assert.Equal(t, "source", k[0], "key %s of %s is not checked", k, name)
		}
	}
}

// TestPublishedFilesNameTheirSource holds that no figure comes without one.
func TestPublishedFilesNameTheirSource(t *testing.T) {
	files, err := filepath.Glob(published + "/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		assert.Regexp(t, `document = "|Written by psychrolib\.js`, string(text), f)
	}
}

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
