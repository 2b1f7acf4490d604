package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

// What is remembered is what is measured, in both orders and at every time.
func TestDistanceIsRemembered(t *testing.T) {
	dice := newDice(31)
	for range 50 {
		d := lotDesign(dice)
		s, fresh := New(d), New(d)
		for _, first := range placesOf(d) {
			for _, second := range placesOf(d) {
				m, err := fresh.Measure(first, second)
				for range 2 {
					length, again := s.Distance(first, second)
					assert.Equal(t, err, again)
					assert.Equal(t, m.Length, length)
				}
				kept := float64(m.Length)
				if err != nil {
					kept = unmeasured
				}
				assert.EqualValues(t, kept, *s.distances.of(s.places[first], s.places[second]))
			}
		}
	}
}

// lotDesign has things in all places, and one in none.
func lotDesign(dice dice) *design.Design {
	d := &design.Design{Openings: []*design.Opening{opening("nowhere", design.Placement{})}}
	for _, thing := range dice.lot().things {
		switch thing := thing.(type) {
		case *design.Opening:
			d.Openings = append(d.Openings, thing)
		case *design.BuildingOpening:
			d.BuildingOpenings = append(d.BuildingOpenings, thing)
		case *design.Source:
			d.Sources = append(d.Sources, thing)
		case *design.Line:
			d.Lines = append(d.Lines, thing)
		}
	}
	return d
}

func placesOf(d *design.Design) []design.Placed {
	var list []design.Placed
	for _, thing := range d.Things() {
		if placed, is := thing.(design.Placed); is {
			list = append(list, placed)
		}
	}
	return list
}

// Things that are none of the design's, as tests and drawings may ask of, are measured
// each time.
func TestWhatIsNotListedIsNotRemembered(t *testing.T) {
	l := newLengths(2)
	one, two := &place{index: 0}, &place{index: 1}
	strange := new(newPlace(source("strange", ground(1, 1, 1)), notListed))
	assert.Nil(t, l.of(one, strange))
	assert.Nil(t, l.of(strange, two))
	assert.EqualValues(t, unmeasured, *l.of(one, two))
	assert.Negative(t, unmeasured, "which no distance is")
}

// A crowd is measured as ever when there is no more room to remember it.
func TestLengthsAreBounded(t *testing.T) {
	l := newLengths(3)
	l.room = 6
	places := []*place{{index: 0}, {index: 1}, {index: 2}}
	*l.of(places[0], places[2]) = 5
	require.NotNil(t, l.of(places[1], places[0]), "two rows of three are the whole room")
	assert.Nil(t, l.of(places[2], places[0]))
	assert.EqualValues(t, 5, *l.of(places[0], places[2]))
	assert.EqualValues(t, unmeasured, *l.of(places[0], places[1]))
	assert.EqualValues(t, unmeasured, *l.of(places[1], places[2]))
}
