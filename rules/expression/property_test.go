package expression

import (
	"errors"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const rounds = 2000

// both gives the truth of an expression by evaluation and by explanation, which
// agree with each other and with the bare machine.
func both(t testing.TB, text string, s *Scope) Truth {
	t.Helper()
	c := condition(t, text)
	truth, err := c.Truth(s)
	require.NoError(t, err, text)
	e, err := c.Explain(s)
	require.NoError(t, err, text)
	require.Equal(t, truth, e.Truth, text)
	settled, err := c.settled()
	require.NoError(t, err, text)
	out, err := byMachine(t, settled, s)
	if err == nil {
		require.Equal(t, truth, truthOf(out.(bool)), text)
	} else {
		require.True(t, allowedError(err), "%s: %v", text, err)
	}
	require.Equal(t, truth == Unknown, len(e.Missing)+len(e.Undetermined) > 0, "an unknown truth says why: %s", text)
	require.NotEmpty(t, e.Parts, text)
	return truth
}

// allowedError tells whether the machine may stop with an error.
func allowedError(err error) bool {
	var one *document.Missing
	var all document.MissingAll
	var judge *Undetermined
	return errors.As(err, &one) || errors.As(err, &all) || errors.As(err, &judge) || errors.Is(err, ErrSteps) || errors.Is(err, errBroken)
}

func TestOrderNeverMatters(t *testing.T) {
	seen := map[Truth]int{}
	for seed := range int64(rounds) {
		g := &generator{rand: rand.New(rand.NewSource(seed)), asking: true}
		text := g.condition(3)
		if len(text(false)) > maxSource-100 {
			continue
		}
		s := newScope(t)
		truth := both(t, text(false), s)
		require.Equal(t, truth, both(t, text(true), s), "%s\nmirrored %s", text(false), text(true))
		seen[truth]++
	}
	for _, truth := range []Truth{False, Unknown, True} {
		assert.Greater(t, seen[truth], rounds/20, "conditions that are %v", truth)
	}
}

// What is decided while inputs are missing stays decided, whatever they turn out
// to be: an open outcome can become anything, a pass or a fail cannot change.
func TestFillingInNeverChangesADecision(t *testing.T) {
	decided := 0
	for seed := range int64(rounds) {
		r := rand.New(rand.NewSource(seed))
		text := (&generator{rand: r}).condition(3)(false)
		s := newScope(t)
		truth := both(t, text, s)
		if truth == Unknown {
			continue
		}
		decided++
		for range 4 {
			filled := newScope(t)
			fillIn(r, filled.facts.(*world))
			got := both(t, text, filled)
			require.Equal(t, truth, got, text)
		}
	}
	assert.Greater(t, decided, rounds/10)
}

// fillIn gives some of the missing keys a random value.
func fillIn(r *rand.Rand, w *world) {
	for _, v := range w.Vents {
		give(r, &v.Height, q.Length(r.Intn(5)-1))
		give(r, &v.Flow, q.Flow(float64(r.Intn(5)-1)/30))
		give(r, &v.Number, r.Intn(4))
		give(r, &v.Open, r.Intn(2) == 0)
		give(r, &v.Tag, []string{"x", "y"}[r.Intn(2)])
		give(r, &v.Season, season([]string{"summer", "winter"}[r.Intn(2)]))
		give(r, &v.Size, size{})
		give(r, &v.Size.Width, q.Length(r.Intn(3)))
		if v.Room.To == nil && r.Intn(2) == 0 {
			v.Room.To = w.Rooms[r.Intn(2)]
		}
	}
	for _, room := range w.Rooms {
		give(r, &room.Height, q.Length(r.Intn(4)))
	}
}

// give fills a key that is missing, or leaves it.
func give[T any](r *rand.Rand, key **T, value T) {
	if *key == nil && r.Intn(2) == 0 {
		*key = &value
	}
	if _, isSize := any(value).(size); isSize && *key == nil {
		*key = &value
	}
}

// The difference that a comparison reports leads from what was found to what is
// required.
func TestDifferenceLeadsToTheRequired(t *testing.T) {
	for seed := range int64(rounds / 3) {
		g := &generator{rand: rand.New(rand.NewSource(seed))}
		text := g.leaf()(false)
		e, err := condition(t, text).Explain(newScope(t))
		if err != nil {
			continue // "#" outside of loops does not occur in leaves
		}
		for _, p := range e.Parts {
			found, ok1 := p.Found.(q.Length)
			required, ok2 := p.Required.(q.Length)
			difference, ok3 := p.Difference.(q.Length)
			if ok1 && ok2 && ok3 {
				assert.InDelta(t, float64(required), float64(found+difference), 1e-9, text)
			}
		}
	}
}
