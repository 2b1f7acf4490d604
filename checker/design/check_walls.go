package design

import (
	q "github.com/ventlint/ventlint/checker/quantity"
)

// mostWalls bounds the work of comparing walls with each other.
const mostWalls = 1000

// walls refuses a footprint that cannot be. One or two walls, or walls without
// places, are part of a footprint, of which nothing more can be told.
func (c *checker) walls() {
	walls := c.design.Walls
	for _, w := range walls {
		if w.From == nil || w.To == nil {
			return
		}
	}
	for _, w := range walls {
		if w.From.spot().to(w.To.spot()) <= joint {
			c.report(w.Ref, "to", "", "%s has no length, expected two different points", Label(w))
			return
		}
	}
	if len(walls) < 3 || !c.closes(walls) {
		return
	}
	c.footprint(walls)
}

// closes tells whether each wall begins where the one before ends.
func (c *checker) closes(walls []*Wall) bool {
	closed := true
	for i, w := range walls {
		before := walls[(i+len(walls)-1)%len(walls)]
		if before.To.spot().to(w.From.spot()) <= joint {
			continue
		}
		closed = false
		if i == 0 {
			c.report(before.Ref, "to", "", "the footprint does not close: %s ends at %s, expected %s, where %s begins",
				Label(before), c.at(*before.To), c.at(*w.From), Label(w))
			continue
		}
		c.report(w.Ref, "from", "walls stand in order around the footprint", "%s begins at %s, expected %s, where %s ends",
			Label(w), c.at(*w.From), c.at(*before.To), Label(before))
	}
	return closed
}

// footprint looks at closed walls as one figure.
func (c *checker) footprint(walls []*Wall) {
	if len(walls) > mostWalls {
		c.report(walls[mostWalls].Ref, "id", "", "found wall %d, expected at most %d walls", mostWalls+1, mostWalls)
		return
	}
	sides := make(ring, len(walls))
	for i, w := range walls {
		sides[i] = segment{w.From.spot(), w.To.spot()}
	}
	if i, j, crossed := sides.crossing(); crossed {
		c.report(walls[j].Ref, "from", "", "%s crosses or touches %s, expected walls that meet at their ends only", Label(walls[j]), Label(walls[i]))
		return
	}
	if sides.area() < 0 {
		c.report(walls[0].Ref, "from", "list the walls the other way round, and swap from and to in each",
			"the walls run clockwise seen from above, expected counter-clockwise")
	}
}

// lines refuses a plan line without length.
func (c *checker) lines() {
	for _, l := range c.design.Lines {
		if l.From != nil && l.To != nil && l.From.spot().to(l.To.spot()) <= joint {
			c.report(l.Ref, "to", "", "%s has no length, expected two different points", Label(l))
		}
	}
}

// length is how long a wall is; ok is false when it does not say.
func (w *Wall) length() (length q.Length, ok bool) {
	if w.From == nil || w.To == nil {
		return 0, false
	}
	return q.Length(w.From.spot().to(w.To.spot())), true
}
