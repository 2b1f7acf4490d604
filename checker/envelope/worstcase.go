package envelope

import (
	"cmp"
	"fmt"
	"slices"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Device is equipment that moves air across the envelope while it runs: an
// exhaust fan or hood with its interlocked makeup, a dryer, a supply fan, or a
// ventilator with both flows.
type Device struct {
	Name            string
	Exhaust, Supply q.Flow
	Makeup          q.Flow // comes in whenever the device runs
	Continuous      bool   // runs in every state
}

// imbalance is what the device adds to the house when it runs.
func (d Device) imbalance() q.Flow { return d.Supply + d.Makeup - d.Exhaust }

// WorstCase is the operating state of the deepest depressurization: the
// continuous devices and every one that takes out more than it brings in. A
// ventilator that stops its supply to defrost is given a second time, without
// Supply. Flows are from 0 to 100 m3/s. Source: worst-case tests of combustion
// safety, every exhausting device on.
func WorstCase(devices ...Device) (Operation, error) {
	return running("every exhaust on", devices, func(d Device) bool { return d.imbalance() < 0 })
}

// HighestCase is the operating state of the highest pressure: the continuous
// devices and every one that brings in more than it takes out. A high pressure
// pushes indoor moisture into cold walls. Flows are from 0 to 100 m3/s.
func HighestCase(devices ...Device) (Operation, error) {
	return running("every supply on", devices, func(d Device) bool { return d.imbalance() > 0 })
}

func running(name string, devices []Device, on func(d Device) bool) (Operation, error) {
	n := len(devices)
	o := Operation{Name: name, Running: slices.Grow([]string(nil), n),
		Exhaust: slices.Grow([]q.Flow(nil), n), Supply: slices.Grow([]q.Flow(nil), n), Makeup: slices.Grow([]q.Flow(nil), n)}
	for _, d := range devices {
		if err := d.check(); err != nil {
			return Operation{}, fmt.Errorf("device %q: %w", d.Name, err)
		}
		if d.Continuous || on(d) {
			o.add(d)
		}
	}
	return o, nil
}

func (d Device) check() error {
	return cmp.Or(checkFlow("exhaust flow", d.Exhaust), checkFlow("supply flow", d.Supply), checkFlow("makeup flow", d.Makeup))
}

func (o *Operation) add(d Device) {
	o.Running = append(o.Running, d.Name)
	o.Exhaust = append(o.Exhaust, d.Exhaust)
	o.Supply = append(o.Supply, d.Supply)
	o.Makeup = append(o.Makeup, d.Makeup)
}
