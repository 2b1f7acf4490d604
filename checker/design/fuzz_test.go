package design_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// FuzzLoad: loading ends without a panic; it gives a design or says why not,
// each problem with a message and a place in the file, in the order of the file.
func FuzzLoad(f *testing.F) {
	files, err := filepath.Glob(malformed + "/*.vent.toml")
	require.NoError(f, err)
	for _, file := range append(files, everyKey) {
		source, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(source)
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		d, problems := design.Load("fuzz.vent.toml", source)
		require.Equal(t, d == nil, len(problems) > 0)
		require.LessOrEqual(t, len(problems), document.MaxProblems+2)
		for i, p := range problems {
			require.NotEmpty(t, p.Message)
			require.True(t, 1 <= p.Position.Line && p.Position.Line <= strings.Count(string(source), "\n")+1)
			require.True(t, 1 <= p.Position.Column && p.Position.Column <= p.Position.EndColumn)
			require.True(t, i == 0 || problems[i-1].Position.Line <= p.Position.Line)
		}
		if d != nil {
			for _, thing := range d.Things() {
				require.NotEmpty(t, design.Label(thing))
				require.Same(t, thing, d.Find(idOf(t, thing)))
			}
		}
	})
}

func idOf(t *testing.T, thing any) string {
	text, ok := design.Refer(thing).Text("id")
	require.True(t, ok)
	return text.Value
}
