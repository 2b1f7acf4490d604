package airflow

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// star is ends straight at the unit, each with a loss by the square of its flow.
func star(t testing.TB, atOne ...q.Pressure) *side {
	t.Helper()
	var runs []Run
	var ends []End
	for i, loss := range atOne {
		id := string(rune('a' + i))
		runs = append(runs, Run{ID: "to " + id, From: "unit", To: id, Losses: []StatedLoss{{"all", loss, 1, 2}}})
		ends = append(ends, End{ID: id})
	}
	return &newSystem(t, runs, ends).outlet
}

// flowsOf gives the flows of a side with so much at each end.
func flowsOf(t *side, atEnds ...float64) assignment {
	a := make(assignment, len(t.branches))
	next := len(atEnds)
	for i := len(a) - 1; i >= 0; i-- {
		if a[i] = a.sum(t.branches[i].children); t.branches[i].run < 0 {
			next--
			a[i] = atEnds[next]
		}
	}
	return a
}

// TestUnevennessByHand compares with the way of the most air: at flows of 2, 1 and 1
// m3/s it loses 80 Pa, the others 100 Pa and 60 Pa.
func TestUnevennessByHand(t *testing.T) {
	s := star(t, 20, 100, 60)
	assert.InDelta(t, (100.0-80)/100, s.uneven(flowsOf(s, 2, 1, 0), 3), 1e-12)
	assert.InDelta(t, (80.0-60)/80, s.uneven(flowsOf(s, 2, 1, 1), 4), 1e-12)
	assert.Zero(t, s.uneven(flowsOf(s, 1, 0, 0), 1), "one way only")
}

// TestUnevenWaysOfNextToNoAir: a way with less than 1e-50 of the total does not count,
// nor a junction with less than 1e-30 of it; with more they do.
func TestUnevenWaysOfNextToNoAir(t *testing.T) {
	s := star(t, 20, 100)
	assert.Zero(t, s.uneven(flowsOf(s, 100, 1e-49), 100))
	assert.InDelta(t, 1, s.uneven(flowsOf(s, 100, 1e-47), 100), 1e-12)

	tee := newSystem(t, []Run{
		{ID: "trunk", From: "unit", To: "tee"},
		{ID: "a", From: "tee", To: "A", Losses: []StatedLoss{{"all", 20, 1, 2}}},
		{ID: "b", From: "tee", To: "B", Losses: []StatedLoss{{"all", 100, 1, 2}}},
	}, []End{{ID: "A"}, {ID: "B"}}).outlet
	for atTee, want := range map[float64]float64{1e-29: 0, 1e-27: 0.8} {
		assert.InDelta(t, want, tee.uneven(flowsOf(&tee, atTee/2, atTee/2), 100), 1e-12, "%v", atTee)
	}
}

// TestPowerLawsSideBySide by hand: what loses Q and what loses Q^2 together carry 4 + 2
// m3/s at a loss of 4 Pa; both Q^2 and 4 Q^2 carry 2 + 1 m3/s at 4 Pa.
func TestPowerLawsSideBySide(t *testing.T) {
	for _, c := range []struct {
		p              powers
		total          float64
		loss, exponent float64
	}{
		{powers{flow: []float64{1, 1}, loss: []float64{1, 1}, exponent: []float64{1, 2}}, 6, 4, 6 / (4.0/1 + 2.0/2)},
		{powers{flow: []float64{3, 0.5}, loss: []float64{9, 1}, exponent: []float64{2, 2}}, 3, 4, 2},
	} {
		loss, exponent := c.p.parallel([]int{0, 1}, c.total)
		assert.InEpsilon(t, c.loss, loss, 1e-12)
		assert.InEpsilon(t, c.exponent, exponent, 1e-12)
		loss, exponent = c.p.parallel([]int{1}, c.p.flow[1])
		assert.Equal(t, [2]float64{c.p.loss[1], c.p.exponent[1]}, [2]float64{loss, exponent}, "alone")
	}
}

// TestTheStartIsTheSameForEveryEnd also where an end lies behind the first run.
func TestTheStartIsTheSameForEveryEnd(t *testing.T) {
	runs, ends := house(t)
	require.Equal(t, "trunk", runs[1].ID)
	s := newSystem(t, append(runs[1:], runs[0]), ends)
	a := s.outlet.begin(0.06, nil)
	for i, b := range s.outlet.branches {
		if b.run < 0 {
			assert.InDelta(t, 0.02, a[i], 1e-12, b.id)
		} else {
			assert.InDelta(t, a.sum(b.children), a[i], 1e-12, b.id)
		}
	}
	again := s.outlet.begin(0.03, a)
	require.Len(t, again, len(a))
	for i := range a {
		assert.InDelta(t, a[i]/2, again[i], 1e-12)
	}
}
