package designtest_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/design/designtest"
)

// Every house loads, and the same seed gives the same house.
func TestHousesLoad(t *testing.T) {
	kinds, uses, systems := map[string]int{}, map[string]int{}, map[string]int{}
	walls := map[int]int{}
	missing := 0
	for seed := range uint64(1500) {
		text := designtest.House(seed)
		d, problems := design.Load("house", []byte(text))
		require.Empty(t, problems, "seed %d\n%s", seed, text)
		walls[len(d.Walls)]++
		systems[string(d.Project.Units)]++
		for _, v := range d.Ventilators {
			kinds[string(v.Kind)]++
		}
		for _, r := range d.Rooms {
			uses[string(r.Use)]++
		}
		if d.Dwelling.FloorArea == nil {
			missing++
		}
	}
	assert.Equal(t, designtest.House(7), designtest.House(7))
	assert.NotEqual(t, designtest.House(7), designtest.House(8))
	assert.Len(t, kinds, 5, "every kind of ventilator")
	assert.Len(t, systems, 2)
	assert.GreaterOrEqual(t, len(uses), 12)
	assert.Len(t, walls, 2, "rectangles and angles")
	assert.Positive(t, missing)
	assert.Less(t, missing, 750)
}
