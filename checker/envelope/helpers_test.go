package envelope

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const published documenttest.Published = "../../testdata/published/envelope"

// TestPublishedFilesNameTheirSource holds that no figure comes without one.
func TestPublishedFilesNameTheirSource(t *testing.T) { published.NameTheirSource(t) }

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
