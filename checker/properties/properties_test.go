package properties

import (
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
)

// property is something that must hold for every design. Its try gives how many
// cases it has seen in one, and the first that does not hold.
type property struct {
	name  string
	every int // it is tried on one of so many invented designs
	try   func(*specimen) (int, error)

	seen, broken atomic.Int64
}

var properties = []*property{
	{name: "order of tables and keys, IP and SI", every: 1, try: writtenOtherwise},
	{name: "no unit left as it was", every: 10, try: unitsLeft},
	{name: "shift, turn and mirror of the site", every: 1, try: elsewhere},
	{name: "missing input", every: 1, try: withoutInputs},
	{name: "intake moved away", every: 2, try: fartherAway},
	{name: "ducts harder to pass", every: 2, try: moreLoss},
	{name: "rules accounted for, and placed", every: 10, try: accounted},
}

// inventions is how many designs are invented; a short run invents fewer.
const inventions, fewInventions = 1500, 40

// worst is how many failures of one property are told.
const worst = 3

func TestProperties(t *testing.T) {
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // it would take a quarter of the time
	enough := inventions
	if testing.Short() {
		enough = fewInventions
	}
	known := shipped(t)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := int(next.Add(1) - 1); i < len(known)+enough; i = int(next.Add(1) - 1) {
				tryAll(t, known, i)
			}
		})
	}
	wait.Wait()
	for _, p := range properties {
		t.Logf("properties: %s: %d cases", p.name, p.seen.Load())
		require.GreaterOrEqual(t, p.seen.Load(), int64(enough/p.every*9/10), p.name)
	}
}

// tryAll tries the properties on the design of a number.
func tryAll(t *testing.T, known []*specimen, i int) {
	s, err := pick(known, i)
	if err != nil {
		t.Errorf("%s: %v", s.name, err)
		return
	}
	for _, p := range properties {
		if i >= len(known) && i%p.every > 0 || p.broken.Load() >= worst {
			continue
		}
		n, err := p.try(s)
		if p.seen.Add(int64(n)); err != nil {
			p.broken.Add(1)
			t.Errorf("%s: %s: %v", p.name, s.name, err)
		}
	}
}

// pick gives a shipped design, or else invents one, with its verdicts.
func pick(known []*specimen, i int) (*specimen, error) {
	var s *specimen
	if i < len(known) {
		s = known[i]
	} else {
		s = invented(uint64(i - len(known)))
	}
	return s, s.judge()
}
