package impact

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/rules"
)

const harborCounty = "../../testdata/packs/harbor-county.rules.toml"

// library keeps the packs compiled for all tests, which run one after the other.
var library = rules.NewLibrary(os.ReadFile)

func pack(t testing.TB, name string) *rules.Effective {
	t.Helper()
	p, err := library.Pack(name)
	require.NoError(t, err)
	return p
}

// toCounty compares the model code with a county's amendments.
func toCounty(t testing.TB) *Comparison {
	t.Helper()
	return Compare(pack(t, "irc-2021"), pack(t, harborCounty), 0.05)
}

func houseDesign(t testing.TB, seed uint64) *design.Design {
	t.Helper()
	d, problems := design.Load("house", []byte(designtest.House(seed)))
	require.Empty(t, problems)
	return d
}

// cases judges some invented houses once for all tests.
var cases = sync.OnceValue(func() []Case {
	var t testing.T
	c := toCounty(&t)
	var list []Case
	for seed := range uint64(60) {
		list = append(list, c.Judge(fmt.Sprintf("house-%02d", seed), houseDesign(&t, seed)))
	}
	return list
})

func names(list []Case) []string {
	var names []string
	for _, c := range list {
		names = append(names, c.Design)
	}
	return names
}

func written(t testing.TB, d *Document) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, d.Write(&b))
	return b.String()
}

func tallied(c *Comparison, list []Case, longest int) *Tally {
	t := c.NewTally(longest)
	for _, of := range list {
		t.Add(c, of)
	}
	return t
}

// However the designs are divided, the parts merge to what an undivided run
// gives, in whatever order they come.
func TestPartsMergeToTheWhole(t *testing.T) {
	c, all := toCounty(t), cases()
	set := SetOf(names(all))
	r := rand.New(rand.NewPCG(1, 2))
	for range 40 {
		n, longest := 1+r.IntN(9), r.IntN(12)
		failed := r.IntN(len(all))
		judge := func(list []Case, t *Tally) {
			for _, of := range list {
				if of.Design == all[failed].Design {
					t.Fail(of.Design, "could not be read")
				} else {
					t.Add(c, of)
				}
			}
		}
		whole := c.NewTally(longest)
		judge(all, whole)
		var parts []*Document
		for k := range n {
			part := c.NewTally(longest)
			var mine []Case
			for i := k; i < len(all); i += n {
				mine = append(mine, all[i])
			}
			r.Shuffle(len(mine), func(i, j int) { mine[i], mine[j] = mine[j], mine[i] })
			judge(mine, part)
			document, err := Read([]byte(written(t, c.Document(part, set, &Part{k + 1, n}))))
			require.NoError(t, err)
			parts = append(parts, document)
		}
		r.Shuffle(n, func(i, j int) { parts[i], parts[j] = parts[j], parts[i] })
		merged, err := Merge(parts)
		require.NoError(t, err)
		require.Equal(t, written(t, c.Document(whole, set, nil)), written(t, merged))
	}
}

// Asking once where two packs judge alike gives what asking twice gives.
func TestAskingOnce(t *testing.T) {
	short, full := toCounty(t), toCounty(t)
	alike := 0
	for i := range full.pairs {
		if full.pairs[i].same {
			alike++
		}
		full.pairs[i].same = false
	}
	assert.Greater(t, alike, 90)
	assert.Less(t, alike, len(full.pairs))
	for seed := range uint64(25) {
		d := houseDesign(t, seed)
		assert.Equal(t, full.Judge("x", d), short.Judge("x", d), seed)
	}
}

// A pack against itself changes nothing.
func TestNoChange(t *testing.T) {
	c := Compare(pack(t, "irc-2021"), pack(t, "irc-2021"), 0.05)
	tally := c.NewTally(5)
	for seed := range uint64(10) {
		tally.Add(c, c.Judge(fmt.Sprint(seed), houseDesign(t, seed)))
	}
	d := c.Document(tally, Set{Designs: 10}, nil)
	assert.Zero(t, d.Changed.Count)
	assert.Empty(t, Changes(d.Designs))
	for _, r := range d.Rules {
		assert.Empty(t, Changes(r.Cases), r.Rule)
	}
	assert.Equal(t, 10, d.Judged)
}

// Every design counts once for each rule, and the report tells what the county's
// amendments do.
func TestCountsAddUp(t *testing.T) {
	c, all := toCounty(t), cases()
	d := c.Document(tallied(c, all, 4), SetOf(names(all)), nil)
	assert.Equal(t, len(all), d.Judged)
	assert.Equal(t, len(all), total(d.Designs))
	by := map[string]RuleCounts{}
	for _, r := range d.Rules {
		by[r.Rule] = r
		assert.Equal(t, len(all), total(r.Cases), r.Rule)
	}
	assert.Len(t, by, len(c.pairs))
	for _, count := range by["control-marking"].Cases {
		assert.NotContains(t, count.To, "error", "the county weighs it less")
	}
	for _, count := range by["combination-fitting-halves"].Cases {
		assert.Equal(t, NotHeld, count.To)
	}
	for _, count := range by["intake-above-spray"].Cases {
		assert.Equal(t, NotHeld, count.From)
	}
	assert.Len(t, d.Changed.Listed, 4)
	assert.Greater(t, d.Changed.Count, 4)
	for i, changed := range d.Changed.Listed[1:] {
		assert.Less(t, d.Changed.Listed[i].Design, changed.Design)
	}
	assert.Equal(t, tallied(c, all, 4).Decided(), d.Decided())
}

// Merged tallies keep what each had.
func TestFailuresAreCounted(t *testing.T) {
	c := toCounty(t)
	a, b := c.NewTally(2), c.NewTally(2)
	a.Fail("c", "1:1: no")
	a.Fail("a", "1:1: no")
	b.Fail("b", "1:1: no")
	a.Merge(b)
	assert.Equal(t, 3, a.Failed())
	d := c.Document(a, Set{Designs: 3}, nil)
	assert.Equal(t, List[FailedDesign]{3, []FailedDesign{{"a", "1:1: no"}, {"b", "1:1: no"}}}, d.Failed)
}

// What was not written by this program is refused, with a reason.
func TestReadRefuses(t *testing.T) {
	c, all := toCounty(t), cases()[:3]
	sound := written(t, c.Document(tallied(c, all, 2), SetOf(names(all)), &Part{1, 2}))
	_, err := Read([]byte(sound))
	require.NoError(t, err)
	for name, text := range map[string]string{
		"no json":             "hello",
		"another format":      strings.Replace(sound, "ventlint-impact", "ventlint-report", 1),
		"another version":     strings.Replace(sound, `"version": 1`, `"version": 2`, 1),
		"more after it":       sound + sound,
		"counts that differ":  strings.Replace(sound, `"designs_judged": 3`, `"designs_judged": 4`, 1),
		"a part that is none": strings.Replace(sound, `"number": 1`, `"number": 3`, 1),
		"a list too long":     strings.Replace(sound, `"count": `, `"count": -`, 1),
	} {
		_, err := Read([]byte(text))
		assert.Error(t, err, name)
	}
	var d Document
	require.NoError(t, json.Unmarshal([]byte(sound), &d))
	d.Designs = []Count{{"clean", "clean", -1}, {"clean", "error", 4}}
	assert.Error(t, d.check())
}

// Parts that are not of one comparison, or not all of it, do not merge.
func TestMergeRefuses(t *testing.T) {
	c, all := toCounty(t), cases()[:4]
	set := SetOf(names(all))
	part := func(k, n int, change func(*Document)) *Document {
		var mine []Case
		for i := k - 1; i < len(all); i += n {
			mine = append(mine, all[i])
		}
		d := c.Document(tallied(c, mine, 2), set, &Part{k, n})
		change(d)
		return d
	}
	as := func(*Document) {}
	for _, refused := range []struct {
		says  string
		parts []*Document
	}{
		{"no part to merge", nil},
		{"document 1 is a whole, expected a part as --part gives it", []*Document{part(1, 2, func(d *Document) { d.Part = nil })}},
		{"part 2 of 2 is missing", []*Document{part(1, 2, as)}},
		{"part 1 of 2 is there twice", []*Document{part(1, 2, as), part(1, 2, as)}},
		{"documents 1 and 2 are of two comparisons: their packs differ", []*Document{part(1, 2, as), part(2, 2, func(d *Document) { d.To.Digest = "x" })}},
		{"documents 1 and 2 are of two comparisons: their designs differ", []*Document{part(1, 2, as), part(2, 2, func(d *Document) { d.Set.Digest = "x" })}},
		{"documents 1 and 2 are of two comparisons: their margins differ", []*Document{part(1, 2, as), part(2, 2, func(d *Document) { d.Margin = 9 })}},
		{"documents 1 and 2 are of two comparisons: their lengths of lists differ", []*Document{part(1, 2, as), part(2, 2, func(d *Document) { d.Longest = 9 })}},
		{"documents 1 and 2 are of two comparisons: their numbers of parts differ", []*Document{part(1, 2, as), part(2, 3, as)}},
		{"the parts hold 3 designs, expected 4", []*Document{part(1, 2, as), part(2, 4, func(d *Document) { d.Part.Of = 2 })}},
	} {
		_, err := Merge(refused.parts)
		assert.EqualError(t, err, refused.says)
	}
}
