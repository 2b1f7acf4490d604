package properties

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"

	"slices"
	"sync"

	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// specimen is a design to try a property on.
type specimen struct {
	name  string // file or seed
	text  string
	rules []*rules.Compiled // that are asked
	r     *rand.Rand
	whole verdicts // of the design as it is
}

func (s *specimen) judge() error {
	d, err := load(s.text)
	if err == nil {
		s.whole = ask(facts.Of(d), s.rules)
	}
	return err
}

// share is how many of all rules an invented design is asked.
const share = 20

// library keeps the packs compiled for all tests.
var library = rules.NewLibrary(nil)

// allRules are those of every shipped pack.
var allRules = sync.OnceValue(func() []*rules.Compiled {
	var list []*rules.Compiled
	for _, name := range rules.BuiltIn() {
		pack, err := library.Pack(name)
		if err != nil {
			panic(err)
		}
		list = append(list, pack.Rules...)
	}
	return list
})

func invented(seed uint64) *specimen {
	s := &specimen{name: fmt.Sprintf("seed %d", seed), text: designtest.House(seed), r: rand.New(rand.NewPCG(seed, 0xca5e))}
	all := allRules()
	step := (len(all) + share - 1) / share
	for i := s.r.IntN(step); i < len(all); i += step {
		s.rules = append(s.rules, all[i])
	}
	return s
}

// shipped are all valid designs of the project.
func shipped(t testing.TB) []*specimen {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "designs", "*", "*.vent.toml"))
	require.NoError(t, err)
	var list []*specimen
	for _, file := range files {
		if filepath.Base(filepath.Dir(file)) == "err" {
			continue
		}
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		list = append(list, &specimen{name: filepath.Base(file), text: string(text), rules: allRules(), r: rand.New(rand.NewPCG(uint64(len(list)), 0xca5e))})
	}
	require.GreaterOrEqual(t, len(list), 6)
	return list
}

// chosen draws some of a list, in its order.
func chosen[T any](r *rand.Rand, list []T, n int) []T {
	picked := r.Perm(len(list))[:min(n, len(list))]
	slices.Sort(picked)
	var some []T
	for _, i := range picked {
		some = append(some, list[i])
	}
	return some
}
