package site

import "math"

// station is a place along a string: how far along on the plan, and how high.
type station struct{ along, height float64 }

// mostStations are those of a string over two walls: its ends and the walls.
const mostStations = 4

// profile is the stations of a string, in order.
type profile struct {
	list [mostStations]station
	n    int
}

func (p *profile) add(way, height float64) {
	along := way
	if p.n > 0 {
		along += p.list[p.n-1].along
	}
	p.list[p.n] = station{along, height}
	p.n++
}

// next is the station at which a string bends next, after one, when it is pulled
// tight over all of them: the one that it rises to most steeply.
func (p *profile) next(at int) int {
	from, best := p.list[at], at+1
	for k := at + 2; k < p.n; k++ {
		a, b := p.list[best], p.list[k]
		if (b.height-from.height)*(a.along-from.along) >= (a.height-from.height)*(b.along-from.along) {
			best = k
		}
	}
	return best
}

// pulled is a string pulled tight over stations.
type pulled struct {
	length             float64
	withWay            [mostStations]float64 // how it grows with the way before each station
	withStart, withEnd float64               // and with the heights of both ends
}

func (p *profile) pull() pulled {
	var s pulled
	for from := 0; from < p.n-1; {
		to := p.next(from)
		run := p.list[to].along - p.list[from].along
		rise := p.list[to].height - p.list[from].height
		if part := math.Hypot(run, rise); part > 0 {
			s.length += part
			for k := from + 1; k <= to; k++ {
				s.withWay[k] = run / part
			}
			if from == 0 {
				s.withStart = -rise / part
			}
			if to == p.n-1 {
				s.withEnd = rise / part
			}
		}
		from = to
	}
	return s
}

// heightAt is how high a string pulled tight over stations is along its way.
func (p *profile) heightAt(along float64) float64 {
	for from := 0; from < p.n-1; {
		to := p.next(from)
		a, b := p.list[from], p.list[to]
		if along <= b.along && b.along > a.along {
			return a.height + (b.height-a.height)*(along-a.along)/(b.along-a.along)
		}
		from = to
	}
	return p.list[p.n-1].height
}
