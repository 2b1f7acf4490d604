package site

// mostLengths bounds the memory of remembered lengths: 8 MB.
const mostLengths = 1 << 20

// unmeasured is less than any distance.
const unmeasured = -1

// lengths remembers a distance for each two things of a design, in a row for each
// first one. Beyond its bound it remembers no more.
type lengths struct {
	rows [][]float64
	room int
}

func newLengths(things int) lengths { return lengths{make([][]float64, things), mostLengths} }

// of is where the distance of two things is kept, unmeasured until it is written
// there; nil where none is kept.
func (l *lengths) of(first, second *place) *float64 {
	if first.index == notListed || second.index == notListed {
		return nil
	}
	row := &l.rows[first.index]
	if *row == nil {
		if l.room < len(l.rows) {
			return nil
		}
		l.room -= len(l.rows)
		*row = make([]float64, len(l.rows))
		for i := range *row {
			(*row)[i] = unmeasured
		}
	}
	return &(*row)[second.index]
}
