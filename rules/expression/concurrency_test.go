package expression

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// One set of compiled expressions serves many goroutines, each with its own scope.
func TestConcurrentUse(t *testing.T) {
	l, n := newLanguage(t), ruleNames()
	compiled := map[string]*Condition{}
	for text := range truths {
		compiled[text] = condition(t, text)
	}
	message, err := l.Template("{inlet.id} {outlet.flow} {gap(inlet, outlet)}", n)
	assert.NoError(t, err)
	list, err := l.List("filter(vents, .kind == 'outlet')", n)
	assert.NoError(t, err)
	w := newWorld(t)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			s := NewScope(w, 10_000_000)
			s.Subjects = []any{w.Vents[0], w.Vents[1]}
			for text, want := range truths {
				truth, err := compiled[text].Truth(s)
				assert.NoError(t, err)
				assert.Equal(t, want, truth, text)
				e, err := compiled[text].Explain(s)
				assert.NoError(t, err)
				assert.Equal(t, want, e.Truth, text)
			}
			assert.Equal(t, `a (not given: flow of vent "b") 2000 mm`, message.Text(s, q.SI))
			items, err := list.Items(s)
			assert.NoError(t, err)
			assert.Len(t, items, 2)
			_, err = l.Condition("inlet.x > 1 m and gap(inlet, outlet) > limit.gap", n)
			assert.NoError(t, err)
		})
	}
	all.Wait()
}
