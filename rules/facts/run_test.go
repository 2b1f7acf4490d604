package facts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

func runOf(t *testing.T, source, id string) (string, error) {
	t.Helper()
	f, _ := factsOf(t, source)
	list, err := f.run(f.Design.Find(id).(*design.Duct))
	var ids []string
	for _, d := range list {
		ids = append(ids, d.ID)
	}
	return strings.Join(ids, " "), err
}

const sections = `
[[ventilator]]
id = "unit"
kind = "hrv"
[[opening]]
id = "out"
kind = "exhaust"
[[duct]]
id = "first"
airstream = "exhaust-air"
from = "unit"
to = "second"
[[duct]]
id = "third"
airstream = "exhaust-air"
from = "second"
to = "out"
[[duct]]
id = "second"
airstream = "exhaust-air"
`

const bare = "format = 1\n[project]\nname = \"a\"\nstage = \"permit\"\nunits = \"IP\"\n[dwelling]\n"

// Sections are found from each of them, whichever names the other.
func TestRunOfSections(t *testing.T) {
	for _, id := range []string{"first", "second", "third"} {
		ids, err := runOf(t, bare+sections, id)
		require.NoError(t, err)
		assert.Equal(t, "first second third", ids, id)
	}
	both := strings.Replace(bare+sections, "id = \"second\"\nairstream", "id = \"second\"\nfrom = \"first\"\nto = \"third\"\nairstream", 1)
	ids, err := runOf(t, both, "second")
	require.NoError(t, err)
	assert.Equal(t, "first second third", ids)
}

// A branching ends a run: what comes after carries other air.
func TestRunEndsAtABranching(t *testing.T) {
	for id, want := range map[string]string{"trunk": "trunk", "to-bed": "to-bed", "to-living": "to-living", "fresh-run": "fresh-run"} {
		ids, err := runOf(t, flat, id)
		require.NoError(t, err)
		assert.Equal(t, want, ids)
	}
	collected := bare + sections + "[[duct]]\nid = \"other\"\nairstream = \"exhaust-air\"\nfrom = \"unit\"\nto = \"second\"\n"
	for id, want := range map[string]string{"first": "first", "other": "other", "second": "second third"} {
		ids, err := runOf(t, collected, id)
		require.NoError(t, err)
		assert.Equal(t, want, ids)
	}
}

// Without an end it is not known what follows.
func TestRunWithoutAnEnd(t *testing.T) {
	_, err := runOf(t, strings.Replace(bare+sections, "to = \"out\"\n", "", 1), "first")
	assert.Equal(t, "duct.third.to", keyOf(t, err))
	_, err = runOf(t, strings.Replace(bare+sections, "from = \"unit\"\n", "", 1), "third")
	assert.Equal(t, "duct.first.from", keyOf(t, err))
	_, err = runOf(t, strings.Replace(bare+sections, "to = \"second\"\n", "", 1), "third")
	assert.Equal(t, "duct.second.from", keyOf(t, err))
}

func TestDuctsOfAVentilator(t *testing.T) {
	second := "[[ventilator]]\nid = \"spare\"\nkind = \"exhaust-fan\"\n"
	fan := "[[appliance]]\nid = \"fan\"\nkind = \"bath-fan\"\n[[duct]]\nid = \"fan-run\"\nairstream = \"extract-air\"\nfrom = \"fan\"\nto = \"out\"\n"
	f, unit := factsOf(t, bare+sections+second+fan)
	for _, d := range f.Design.Ducts {
		of, err := f.joinedTo(d, unit)
		require.NoError(t, err, d.ID)
		assert.Equal(t, d.ID != "fan-run", of, d.ID)
		of, err = f.joinedTo(d, f.Design.Ventilators[1])
		require.NoError(t, err, d.ID)
		assert.False(t, of, d.ID)
	}
	trunk, unit := factsOf(t, flat)
	of, err := trunk.joinedTo(trunk.Design.Find("to-bed").(*design.Duct), unit)
	require.NoError(t, err)
	assert.True(t, of)
	f, unit = factsOf(t, strings.Replace(bare+sections, "from = \"unit\"\n", "", 1))
	_, err = f.joinedTo(f.Design.Find("third").(*design.Duct), unit)
	assert.Equal(t, "duct.first.from", keyOf(t, err))
}
