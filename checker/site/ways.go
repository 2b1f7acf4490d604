package site

import "math"

// ways are the shortest ways on the plan around the footprint, between all the
// corners that a string can bend at.
type ways struct {
	length [][]float64
	next   [][]int // the corner that comes first on the way
}

// findWays lets straight strings between corners that see each other meet.
func (b *building) findWays() ways {
	n := len(b.corners)
	w := ways{make([][]float64, n), make([][]int, n)}
	for i := range n {
		w.length[i], w.next[i] = make([]float64, n), make([]int, n)
	}
	for i := range n {
		for k := range i {
			length := math.Inf(1)
			if b.clear(b.corner(i), b.corner(k)) {
				length = b.corner(k).minus(b.corner(i)).length()
			}
			w.length[i][k], w.length[k][i] = length, length
			w.next[i][k], w.next[k][i] = k, i
		}
	}
	for over := range n {
		w.lead(over)
	}
	return w
}

// lead shortens the ways that are shorter by way of one corner.
func (w ways) lead(over int) {
	for i := range w.length {
		first := w.length[i][over]
		for k, second := range w.length[over] {
			if length := first + second; length < w.length[i][k] {
				w.length[i][k], w.next[i][k] = length, w.next[i][over]
			}
		}
	}
}

// along gives the corners of a way, its ends included.
func (w ways) along(from, to int) []int {
	list := []int{from}
	for from != to {
		from = w.next[from][to]
		list = append(list, from)
	}
	return list
}
