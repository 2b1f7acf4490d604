package reportfmt

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the golden files")

var extensions = map[string]string{
	"text": ".txt", "markdown": ".md", "html": ".html", "lines": ".lines", "json": ".json", "csv": ".csv", "sarif": ".sarif",
	"sarif-evidence": ".evidence.sarif", "junit": ".xml", "annotations": ".annotations", "gitlab": ".gitlab.json",
}

// written is what a format makes of a batch.
func written(t *testing.T, format string, b Batch) string {
	t.Helper()
	f, err := Named(format)
	require.NoError(t, err)
	var out bytes.Buffer
	require.NoError(t, Write(&out, f, b))
	return out.String()
}

func TestGoldenFiles(t *testing.T) {
	for name, b := range batches() {
		for _, format := range Names() {
			t.Run(name+"/"+format, func(t *testing.T) {
				got := written(t, format, b)
				path := filepath.Join("testdata", name+extensions[format])
				if *update {
					require.NoError(t, os.MkdirAll("testdata", 0o755))
					require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
				}
				want, err := os.ReadFile(path)
				require.NoError(t, err)
				require.Equal(t, string(want), got)
			})
		}
	}
}

func TestSameInputGivesSameBytes(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for name := range batches() {
		for _, format := range Names() {
			first := written(t, format, batches()[name])
			for _, processors := range []int{1, 2, 1, 2} {
				runtime.GOMAXPROCS(processors)
				require.Equal(t, first, written(t, format, batches()[name]), "%s of %s", format, name)
			}
		}
	}
}

func TestFormatsLeaveTheirBatchAlone(t *testing.T) {
	for name, b := range batches() {
		for _, format := range Names() {
			written(t, format, b)
		}
		require.Equal(t, batches()[name], b, name)
	}
}

type brokenWriter struct{}

var errBroken = errors.New("pipe closed")

func (brokenWriter) Write([]byte) (int, error) { return 0, errBroken }

func TestWriterErrorsAreReturned(t *testing.T) {
	for _, name := range Names() {
		f, err := Named(name)
		require.NoError(t, err)
		require.ErrorIs(t, Write(brokenWriter{}, f, batches()["outcomes"]), errBroken, name)
	}
}

func TestUnknownFormatNamesTheKnownOnes(t *testing.T) {
	_, err := Named("xml")
	require.EqualError(t, err, `unknown format "xml", expected one of `+strings.Join(Names(), ", "))
	require.Contains(t, Names(), "sarif-evidence")
}
