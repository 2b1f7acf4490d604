package envelope

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// NoThreshold is the threshold of a rule that asks no exhaust for makeup air.
func NoThreshold() q.Flow { return q.Flow(math.Inf(1)) }

// MakeupRule is how a building code asks for makeup air to one exhaust system.
// Each system is judged by itself. The thresholds are limits of a pack: the IRC
// 2018 to 2024 (M1503.6) has 400 cfm with an open-combustion appliance inside the
// air barrier, and NoThreshold without.
type MakeupRule struct {
	Above       q.Flow // makeup above this exhaust flow, with an open-combustion appliance
	AboveSealed q.Flow // the same without one
	OnlyExcess  bool   // makeup for what is above the threshold, not for the whole flow
}

// Makeup is the makeup air for an exhaust flow of 0 to 100 m3/s, 0 where none is
// asked. A flow equal to the threshold needs none. Open tells whether the
// dwelling has an appliance that is neither direct-vent nor of mechanical draft.
func (r MakeupRule) Makeup(exhaust q.Flow, open bool) (q.Flow, error) {
	threshold := r.AboveSealed
	if open {
		threshold = r.Above
	}
	err := cmp.Or(checkFlow("exhaust flow", exhaust), bounds.Check("makeup threshold", threshold, 0, NoThreshold()))
	switch {
	case err != nil:
		return 0, err
	case q.Compare(float64(exhaust), float64(threshold)) <= 0:
		return 0, nil
	case r.OnlyExcess:
		return exhaust - threshold, nil
	}
	return exhaust, nil
}

// MakeupFanRange is the rated flow that a makeup fan may have for an exhaust
// device of 0 to 100 m3/s: from the device's capacity to a tenth more. Source:
// National Building Code of Canada 2020, 9.32.3.8, read in the 2023 Alberta
// Edition and Ontario's 2024 code.
func MakeupFanRange(exhaust q.Flow) (least, most q.Flow, err error) {
	if err := checkFlow("exhaust flow", exhaust); err != nil {
		return 0, 0, err
	}
	return exhaust, 1.1 * exhaust, nil
}

// TwoLargest is the sum of the two largest of the exhaust flows, 0 to 100 m3/s
// each: what ASHRAE 62.2 compares with NetExhaustLimit. Summer cooling fans do not
// count.
func TwoLargest(exhaust ...q.Flow) (q.Flow, error) {
	var first, second q.Flow
	for _, f := range exhaust {
		if err := checkFlow("exhaust flow", f); err != nil {
			return 0, err
		}
		first, second = max(first, f), max(second, min(first, f))
	}
	return first + second, nil
}

// NetExhaustLimit is the largest net exhaust of the two largest fans in a dwelling
// with an atmospherically vented or solid-fuel appliance: 15 cfm per 100 ft2 in
// IP, 75 L/s per 100 m2 in SI, of occupiable floor area (1 m2 to 100 000 m2).
// Source: ASHRAE 62.2, section 6.4; the figure secondary, the section and its words
// from memory.
func NetExhaustLimit(floor q.Area, s q.System) (q.Flow, error) {
	if err := checkFloor(floor); err != nil {
		return 0, err
	}
	if s == q.IP {
		return q.Flow(floor * 0.15 * foot / minute), nil
	}
	return q.Flow(floor * 0.75e-3), nil
}
