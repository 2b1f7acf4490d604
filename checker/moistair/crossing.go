package moistair

// crossing finds where a quantity that grows from low to high stops lying below
// its target: the largest x up to which below holds, to the last bit. Halving a
// range of temperatures takes some 60 steps; the bound is there for good.
func crossing(low, high float64, below func(x float64) bool) float64 {
	for range 128 {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			break
		}
		if below(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
