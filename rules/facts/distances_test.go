package facts

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// A distance follows from the points that its line names.
func TestLinesOfDistancesFollowFromTheirPoints(t *testing.T) {
	lines := siteOf(t, corner).listed().distanceLines()
	var names []string
	for _, line := range lines {
		names = append(names, line.Name+", "+line.Of)
		if line.Value == nil {
			assert.Contains(t, line.Of, "shed") // it stands inside the house: no string leads there
			assert.NotEmpty(t, line.Trouble)
			continue
		}
		var length float64
		for i := 1; i < len(line.Inputs); i++ {
			a, b := spotOf(t, line.Inputs[i-1]), spotOf(t, line.Inputs[i])
			length += math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
		}
		assert.InDelta(t, float64(line.Value.(q.Length)), length, 0.002, line.Name) // points are rounded
	}
	assert.Equal(t, []string{
		`distance, intake "fresh" and exhaust "stale"`,
		`distance along the outside, intake "fresh" and exhaust "stale"`,
		`distance, intake "fresh" and source "shed" (generator)`,
		`distance along the outside, intake "fresh" and source "shed" (generator)`,
	}, names)
}

// spotOf reads a point back.
func spotOf(t *testing.T, in Input) [3]float64 {
	t.Helper()
	var p [3]float64
	for i, part := range strings.Split(in.Value.(string), ", ") {
		length, err := q.ParseAs[q.Length](part[2:])
		require.NoError(t, err)
		p[i] = float64(length)
	}
	return p
}

func TestDistancesThatAreStatedOrNotKnown(t *testing.T) {
	lines := siteOf(t, corner+"[[stated_distance]]\nbetween = [\"fresh\", \"stale\"]\ndistance = \"12 ft\"\n").listed().distanceLines()
	require.Equal(t, "stated on a drawing", lines[0].Inputs[0].Name)
	assert.InDelta(t, 12*foot, float64(lines[0].Value.(q.Length)), 1e-12)
	f := siteOf(t, strings.Replace(corner, "diameter = \"6 in\"\n[[opening]]", "[[opening]]", 1))
	assert.Equal(t, []string{"opening.fresh.diameter"}, missingNames(f.distanceLines()[0]))
}

// Of very many pairs some have a line, and the last says that others have none.
func TestDistancesAreListedWithinBounds(t *testing.T) {
	d := &design.Design{}
	for i := range 50 {
		d.Openings = append(d.Openings, &design.Opening{Thing: design.Thing{ID: fmt.Sprint("i", i)}, Kind: "intake"}, &design.Opening{Thing: design.Thing{ID: fmt.Sprint("e", i)}, Kind: "exhaust"})
	}
	lines := Of(d).distanceLines()
	require.Len(t, lines, mostDistances+1)
	assert.Equal(t, "more than 2000: these are not listed", lines[mostDistances].Trouble)
}
