package properties

import (
	"fmt"
	"math/rand/v2"
)

// writtenOtherwise: the tables of a design, and the keys of each, may stand in any
// order, and every quantity may be given in units of the other system. Both are
// tried at once, and each alone where that makes a difference.
func writtenOtherwise(s *specimen) (int, error) {
	shuffled := sheetOf(s.text)
	shuffled.shuffle(s.r)
	err := s.same(inOtherUnits(shuffled.text()))
	if err != nil {
		return 1, fmt.Errorf("shuffled: %v; in other units: %v; both: %w", s.same(shuffled.text()), s.same(inOtherUnits(s.text)), err)
	}
	return 1, nil
}

// shuffle brings blocks and keys into another order. Walls stay in the order of
// the footprint, which may begin at any of them; tables of a table stay with it.
func (s *sheet) shuffle(r *rand.Rand) {
	var walls, at []int
	for i, b := range s.blocks {
		if b.parts[0].noun() == "wall" {
			walls = append(walls, i)
		}
		for _, p := range b.parts {
			r.Shuffle(len(p.entries), func(i, k int) { p.entries[i], p.entries[k] = p.entries[k], p.entries[i] })
		}
	}
	was := append([]*block(nil), s.blocks...)
	order := r.Perm(len(s.blocks))
	for i, from := range order {
		s.blocks[i] = was[from]
		if was[from].parts[0].noun() == "wall" {
			at = append(at, i)
		}
	}
	begin := r.IntN(max(1, len(walls)))
	for i, place := range at {
		s.blocks[place] = was[walls[(begin+i)%len(walls)]]
	}
}
