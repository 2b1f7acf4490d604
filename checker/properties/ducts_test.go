package properties

import (
	"fmt"
	"math/rand/v2"

	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/facts"
)

// function is one that rules call, about a side of a ventilator.
func function[R any](name string) func(*facts.Facts, *design.Ventilator, facts.SideWord) (R, error) {
	for _, f := range facts.Vocabulary().Functions {
		if f.Name == name {
			return func(about *facts.Facts, u *design.Ventilator, side facts.SideWord) (r R, err error) {
				v, err := f.Call.Do(about, u, side)
				if err == nil {
					r = v.(R)
				}
				return r, err
			}
		}
	}
	panic("rules have no function " + name)
}

var (
	externalLoss = function[q.Pressure]("external_loss")
	delivered    = function[q.Flow]("delivered")
)

// moreLoss: more length, another elbow, less diameter and more flow never lose less
// pressure, and more resistance never delivers more air.
func moreLoss(s *specimen) (int, error) {
	d, err := load(s.text)
	if err != nil || len(d.Ventilators) != 1 || len(d.Ducts) == 0 {
		return 0, err
	}
	fitOut(d, s.r)
	seen := 0
	was := airOf(d)
	for _, name := range []string{"length", "elbow", "diameter", "flow"} {
		harder(d, name, s.r)
		is := airOf(d)
		for side := range is {
			if was[side].err != nil || is[side].err != nil {
				continue
			}
			seen++
			if is[side].loss < was[side].loss*(1-1e-9) {
				return seen, fmt.Errorf("more %s: %s loses %v, lost %v", name, side, is[side].loss, was[side].loss)
			}
			if name != "flow" && is[side].delivered > was[side].delivered*(1+1e-6) {
				return seen, fmt.Errorf("more %s: %s delivers %v, delivered %v", name, side, is[side].delivered, was[side].delivered)
			}
		}
		was = is
	}
	return seen, nil
}

// air is what one side of a ventilator loses and delivers; nothing is delivered
// where the design gives no fan curve.
type air struct {
	loss      q.Pressure
	delivered q.Flow
	err       error
}

func airOf(d *design.Design) map[facts.SideWord]air {
	f := facts.Of(d)
	all := map[facts.SideWord]air{}
	for _, side := range []facts.SideWord{"supply", "extract"} {
		var a air
		a.loss, a.err = externalLoss(f, d.Ventilators[0], side)
		a.delivered, _ = delivered(f, d.Ventilators[0], side)
		all[side] = a
	}
	return all
}

// fitOut gives the ducts of a design what an invented one lacks, so that their
// losses can be worked out: fittings, stated losses, and flows that add up.
func fitOut(d *design.Design, r *rand.Rand) {
	if d.Dwelling.Elevation == nil {
		d.Dwelling.Elevation = new(q.Length(0))
	}
	for _, duct := range d.Ducts {
		if duct.Diameter == nil {
			duct.Width, duct.Height = new(q.Length(0.25)), new(q.Length(0.1))
		}
		duct.Length, duct.Compression = or(duct.Length, 3), or(duct.Compression, 0.04)
		duct.Material = or(duct.Material, "galvanized-steel")
		duct.Fittings = []*design.Fitting{{Kind: "elbow", Count: new(1 + r.IntN(4)), LossCoefficient: new(0.1 + r.Float64())}}
	}
	for _, o := range d.Openings {
		o.Loss, o.LossFlow = or(o.Loss, q.Pressure(5+10*r.Float64())), or(o.LossFlow, 0.03)
	}
	sums := map[design.Airstream]q.Flow{}
	for _, t := range d.Terminals {
		t.Loss, t.LossFlow, t.Flow = or(t.Loss, 3), or(t.LossFlow, 0.012), or(t.Flow, 0.01)
		sums[t.Airstream] += *t.Flow
	}
	d.Ventilators[0].SupplyFlow, d.Ventilators[0].ExtractFlow = new(sums["supply-air"]), new(sums["extract-air"])
}

func or[T any](given *T, otherwise T) *T {
	if given != nil {
		return given
	}
	return &otherwise
}

// harder makes the ducts harder to pass in one way: some of them, or, by their
// diameter and their flow, all.
func harder(d *design.Design, how string, r *rand.Rand) {
	k := 1 + 0.5*r.Float64()
	switch how {
	case "length":
		for _, duct := range chosen(r, d.Ducts, 1+r.IntN(3)) {
			*duct.Length *= q.Length(k)
		}
	case "elbow":
		for _, duct := range chosen(r, d.Ducts, 1+r.IntN(3)) {
			*duct.Fittings[0].Count++
		}
	case "diameter":
		for _, duct := range d.Ducts {
			if duct.Diameter != nil {
				*duct.Diameter /= q.Length(k)
			}
		}
	case "flow":
		for _, t := range d.Terminals {
			*t.Flow *= q.Flow(k)
		}
		*d.Ventilators[0].SupplyFlow *= q.Flow(k)
		*d.Ventilators[0].ExtractFlow *= q.Flow(k)
	}
}
