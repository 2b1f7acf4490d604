package envelope

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

const published = "../../testdata/published/envelope"

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
		assert.Contains(t, string(text), `document = "`, f)
		assert.Contains(t, string(text), `read = "`, f)
	}
}

const (
	squareInch       q.Area = 0.0254 * 0.0254
	squareCentimetre q.Area = 1e-4
)

// leakage is one that must exist.
func leakage(t testing.TB, flow50 q.Flow, n float64) Leakage {
	t.Helper()
	l, err := FromFlow50(flow50, n)
	require.NoError(t, err)
	return l
}

// pressure is a house pressure that must exist, in Pa.
func pressure(t testing.TB, l Leakage, imbalance q.Flow) float64 {
	t.Helper()
	p, err := l.Pressure(imbalance)
	require.NoError(t, err)
	return float64(p)
}
