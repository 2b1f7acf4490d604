package airflow

import (
	"fmt"
	"math"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// EndFlow is the flow that one end gets.
type EndFlow struct {
	End  string
	Flow q.Flow
}

// Undamped solves a tree in which no balancing damper is set: every path from the
// fan loses the same pressure. It gives the flow of each end, in the order of the
// tree. The pressure is from 0 to 5 kPa.
func Undamped(branches []*Branch, pressure q.Pressure, air Air) ([]EndFlow, error) {
	if _, err := Paths(branches, 1, air); err != nil { // every section can be computed
		return nil, err
	}
	if pressure < 0 || pressure > 5000 || math.IsNaN(float64(pressure)) {
		return nil, fmt.Errorf("pressure \"%v\" is out of range, expected 0 to 5 kPa", pressure)
	}
	var flows []EndFlow
	for _, b := range branches {
		b.solve(float64(pressure), air, &flows)
	}
	return flows, nil
}

// UndampedPressure is the pressure at which the ends of an undamped tree together
// get a flow.
func UndampedPressure(branches []*Branch, flow q.Flow, air Air) (q.Pressure, error) {
	if _, err := Paths(branches, 1, air); err != nil {
		return 0, err
	}
	p := root(0, 5000, func(p float64) float64 {
		var total q.Flow
		for _, b := range branches {
			total += b.solve(p, air, nil)
		}
		return float64(total - flow)
	})
	return q.Pressure(p), nil
}

// solve gives the flow of a branch across which a pressure lies, and adds the
// flows of its ends to a list.
func (b *Branch) solve(pressure float64, air Air, flows *[]EndFlow) q.Flow {
	if b.End != nil {
		flow := q.Flow(root(0, float64(mostFlow), func(v float64) float64 { return b.endLoss(q.Flow(v), air) - pressure }))
		if flows != nil {
			*flows = append(*flows, EndFlow{b.End.ID, flow})
		}
		return flow
	}
	through := func(beyond float64) (total q.Flow) {
		for _, next := range b.Beyond {
			total += next.solve(beyond, air, nil)
		}
		return total
	}
	beyond := root(0, pressure, func(p float64) float64 {
		loss, _ := b.Section.Loss(min(through(p), mostFlow), air) // checked before
		return float64(loss.Total) + p - pressure
	})
	for _, next := range b.Beyond {
		next.solve(beyond, air, flows)
	}
	return through(beyond)
}

func (b *Branch) endLoss(flow q.Flow, air Air) float64 {
	loss, _ := b.Section.Loss(flow, air) // checked before
	for _, stated := range b.End.Stated {
		loss.Total += stated.at(flow)
	}
	return float64(loss.Total)
}

// root finds where a rising function crosses zero between two places, by the
// method of Ridders inside a bracket, in at most 200 steps; an end of the bracket
// where it does not cross.
func root(low, high float64, f func(float64) float64) float64 {
	a, b := f(low), f(high)
	if a >= 0 || b <= 0 {
		if a >= 0 {
			return low
		}
		return high
	}
	for range 200 {
		middle := (low + high) / 2
		m := f(middle)
		if m == 0 || high-low <= 1e-14*math.Abs(middle) {
			return middle
		}
		x := middle - (middle-low)*m/math.Sqrt(m*m-a*b)
		if !(x > low && x < high) {
			x = middle
		}
		v := f(x)
		low, a, high, b = narrow(low, a, high, b, middle, m)
		if x > low && x < high {
			low, a, high, b = narrow(low, a, high, b, x, v)
		}
		if math.Abs(v) < 1e-13 {
			return x
		}
	}
	return (low + high) / 2
}

func narrow(low, a, high, b, x, v float64) (float64, float64, float64, float64) {
	if v < 0 {
		return x, v, high, b
	}
	return low, a, x, v
}
