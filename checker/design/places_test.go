package design_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// ground is a source along or around points of a half circle.
func ground(kind string, points int) string {
	list := make([]string, points)
	for i := range list {
		list[i] = fmt.Sprintf(`["%d ft", "%d ft"]`, i, i*(points-i))
	}
	return head + fmt.Sprintf("source = [{ id = \"s\", kind = \"parking\", %s = [%s] }]", kind, strings.Join(list, ", "))
}

func TestLinesAndAreasHoldSoManyPoints(t *testing.T) {
	for _, kind := range []string{"along", "outline"} {
		require.NotNil(t, loaded(t, ground(kind, 200)))
		_, problems := design.Load("test.vent.toml", []byte(ground(kind, 201)))
		require.Len(t, problems, 1)
		require.Equal(t, "found 201 points, expected at most 200", problems[0].Message)
		require.Equal(t, "source[1]."+kind, problems[0].Path)
	}
}
