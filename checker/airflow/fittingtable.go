package airflow

import (
	"fmt"
	"slices"
	"sync"
)

// KnownFitting is a fitting with a published loss coefficient. It is referred to
// the velocity of the section that it is listed in: for a branch fitting that is
// the branch, for a straight-through one the duct behind it.
type KnownFitting struct {
	Name        string
	Coefficient float64
	Miter       bool // multiplied by MiterFactor
	Source      string
	Provenance  Provenance
	Remark      string
}

// Times is a number of such fittings.
func (k KnownFitting) Times(count int) Fitting {
	return Fitting{Name: k.Name, Count: count, Coefficient: k.Coefficient, Miter: k.Miter}
}

const (
	elbowTable    = "SMACNA HVAC Systems Duct Design, 4th edition, table A-7"
	handbook      = "ASHRAE Fundamentals 2021, chapter 21"
	referenceSite = "an engineering reference site, minor losses of duct fittings"
	oneRatio      = "for a fifth of the flow into a quarter of the area, flow dividing; in real designs 0.23 to 0.58 were computed for 45 degree entry tees"
)

// knownFittings is put together when a duct first names one of them.
var knownFittings = sync.OnceValue(func() []KnownFitting {
	return slices.Concat(smoothElbows(), goredElbows(), miteredElbows(), takeoffs, ductEnds, others)
})

// KnownFittings lists the fittings with published coefficients.
func KnownFittings() []KnownFitting { return slices.Clone(knownFittings()) }

// smoothElbows are round die-stamped elbows: coefficients at 90 degrees by radius
// of the centre line over diameter, and factors for other angles.
func smoothElbows() []KnownFitting {
	radii := [][2]float64{{0.5, 0.71}, {0.75, 0.33}, {1, 0.22}, {1.5, 0.15}, {2, 0.13}, {2.5, 0.12}}
	angles := [][2]float64{{90, 1}, {45, 0.60}, {30, 0.45}, {60, 0.78}, {20, 0.31}, {75, 0.90}, {110, 1.13}, {130, 1.20}, {150, 1.28}, {180, 1.40}}
	var list []KnownFitting
	for _, angle := range angles {
		for _, r := range radii {
			k := KnownFitting{Name: fmt.Sprintf("smooth elbow %v, r/D %v", angle[0], r[0]), Coefficient: angle[1] * r[1], Source: elbowTable + " A and its note 1", Provenance: Seen}
			if r[0] == 1.5 {
				k.Remark = "newer data give 0.11 for 90 degrees at 200 mm"
			}
			list = append(list, k)
		}
	}
	return list
}

// goredElbows are round elbows of 3 to 7 pieces.
func goredElbows() []KnownFitting {
	var list []KnownFitting
	add := func(angle, pieces int, radius, c float64, source, remark string) {
		list = append(list, KnownFitting{Name: fmt.Sprintf("gored elbow %d, %d pieces, r/D %v", angle, pieces, radius), Coefficient: c, Source: source, Provenance: Seen, Remark: remark})
	}
	radii := []float64{0.75, 1, 1.5, 2}
	for _, row := range []struct {
		pieces int
		c      []float64
	}{{4, []float64{0.50, 0.37, 0.27, 0.24}}, {5, []float64{0.46, 0.33, 0.24, 0.19}}, {3, []float64{0.54, 0.42, 0.34, 0.33}}} {
		for i, c := range row.c {
			add(90, row.pieces, radii[i], c, elbowTable+" B", "column order of the table was reconstructed")
		}
	}
	add(90, 3, 0.5, 0.98, elbowTable+" B", "")
	add(90, 7, 2.5, 0.11, handbook+", table 20", "")
	add(60, 3, 1.5, 0.19, handbook+", table 20", "")
	return list
}

// miteredElbows have one joint and no vanes.
func miteredElbows() []KnownFitting {
	var list []KnownFitting
	for _, m := range [][2]float64{{90, 1.2}, {45, 0.34}, {30, 0.16}, {60, 0.55}, {20, 0.08}, {75, 0.81}} {
		list = append(list, KnownFitting{Name: fmt.Sprintf("mitered elbow %v", m[0]), Coefficient: m[1], Miter: true, Source: elbowTable + " C", Provenance: Seen, Remark: "round"})
	}
	for _, m := range [][2]float64{{0.25, 1.3}, {1, 1.2}, {2, 1.1}, {4, 0.92}, {8, 0.83}} {
		list = append(list, KnownFitting{Name: fmt.Sprintf("rectangular mitered elbow 90, H/W %v", m[0]), Coefficient: m[1], Source: elbowTable + " D", Provenance: Seen})
	}
	return append(list,
		KnownFitting{Name: "sharp elbow 90", Coefficient: 1.3, Source: referenceSite, Provenance: Seen, Remark: "coarse"},
		KnownFitting{Name: "sharp elbow 90 with vanes", Coefficient: 0.7, Source: referenceSite, Provenance: Seen, Remark: "coarse"},
		KnownFitting{Name: "sharp elbow 45", Coefficient: 0.5, Source: referenceSite, Provenance: Seen, Remark: "coarse"})
}
