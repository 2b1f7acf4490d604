package envelope

import (
	"errors"
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Operation is one set of fans that run together. Makeup is outdoor air that
// comes in for an exhaust, by fan or through an opening sized for it. Running
// names the devices, where they are known.
type Operation struct {
	Name                    string
	Running                 []string
	Exhaust, Supply, Makeup []q.Flow
}

// House is a dwelling in one operating state. Imbalance is incoming air, supply
// and makeup, minus outgoing; Pressure is indoor minus outdoor.
type House struct {
	Operation
	Incoming, Outgoing, Imbalance q.Flow
	Pressure                      q.Pressure
}

// Pressures gives the house pressure in each operating state, in their order, by
// Leakage.Pressure of the imbalance. Flows are from 0 to 100 m3/s each.
func (l Leakage) Pressures(states ...Operation) ([]House, error) {
	houses := make([]House, 0, len(states))
	for _, o := range states {
		h, err := l.house(o)
		if err != nil {
			return nil, fmt.Errorf("operating state %q: %w", o.Name, err)
		}
		houses = append(houses, h)
	}
	return houses, nil
}

func (l Leakage) house(o Operation) (House, error) {
	out, err := sum("exhaust flow", o.Exhaust)
	if err != nil {
		return House{}, err
	}
	in, err := sum("supply flow", o.Supply)
	if err != nil {
		return House{}, err
	}
	makeup, err := sum("makeup flow", o.Makeup)
	if err != nil {
		return House{}, err
	}
	h := House{Operation: o, Incoming: in + makeup, Outgoing: out, Imbalance: in + makeup - out}
	h.Pressure, err = l.Pressure(h.Imbalance)
	return h, err
}

func sum(what string, flows []q.Flow) (total q.Flow, err error) {
	for _, f := range flows {
		if err := checkFlow(what, f); err != nil {
			return 0, err
		}
		total += f
	}
	return total, nil
}

// Lowest is the house of the deepest depressurization, the first of equals.
// Without houses it is an error.
func Lowest(houses []House) (House, error) {
	if len(houses) == 0 {
		return House{}, errors.New("no operating state, expected one or more")
	}
	lowest := houses[0]
	for _, h := range houses[1:] {
		if h.Pressure < lowest.Pressure {
			lowest = h
		}
	}
	return lowest, nil
}

// Depressurization is how far the house is below outdoors, at least 0: what the
// limits of combustion appliances are about.
func (h House) Depressurization() q.Pressure { return max(0, -h.Pressure) }
