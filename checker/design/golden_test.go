package design_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

var update = flag.Bool("update", false, "rewrite the expected output beside the malformed designs")

const malformed = "../../testdata/designs/err"

// Every malformed design has its exact problems beside it.
func TestMalformedDesigns(t *testing.T) {
	files, err := filepath.Glob(malformed + "/*.vent.toml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 25)
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".vent.toml"), func(t *testing.T) {
			source, err := os.ReadFile(file)
			require.NoError(t, err)
			d, problems := design.Load(file, source)
			require.Nil(t, d)
			got := printed(problems)
			golden := strings.TrimSuffix(file, ".vent.toml") + ".out"
			if *update {
				require.NoError(t, os.WriteFile(golden, []byte(got), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			require.Equal(t, string(want), got)
		})
	}
}

// printed is a problem in a line, its hint in another.
func printed(problems []document.Problem) string {
	var b strings.Builder
	for _, p := range problems {
		fmt.Fprintf(&b, "%d:%d: %s\n", p.Position.Line, p.Position.Column, p.Message)
		if p.Hint != "" {
			fmt.Fprintf(&b, "hint: %s\n", p.Hint)
		}
	}
	return b.String()
}
