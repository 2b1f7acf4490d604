package airflow

import (
	"cmp"
	"math"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// AssumedCompression is what released flexible duct settles to, for designs that
// do not state it. Installed without care it comes near 30 %. Source: a trade
// article on flexible ducts gives both shares; taking 15 % is practice.
const AssumedCompression q.Ratio = 0.15

const (
	mostCompression q.Ratio  = 0.45
	leastTested     q.Length = 0.1524
	mostTested      q.Length = 0.254
)

// Compressed is how much more a flexible duct loses than fully stretched.
type Compressed struct {
	Factor       float64 // pressure drop correction factor, 1 when fully stretched
	Extrapolated bool    // the diameter is not among those measured, 6 to 10 in
}

// CompressionFactor is the pressure drop correction factor of flexible duct, 1 +
// 0.58 K exp(-0.00496 D) with D in mm and K = 100 (L_stretched - L)/L_stretched. It
// multiplies the friction of the installed length L with the roughness of fully
// stretched duct, 0.9 mm. Compression is from 0 to 45 %, the most that was measured.
// Source: ASHRAE Fundamentals 2021, chapter 21, equations 22 and 23.
func CompressionFactor(diameter q.Length, compression q.Ratio) (Compressed, error) {
	err := cmp.Or(
		bounds.Check("size of a flexible duct", diameter, leastSide, mostSide),
		bounds.Check("compression of flexible duct", compression, 0, mostCompression))
	if err != nil {
		return Compressed{}, err
	}
	percent := 100 * float64(bounds.Clamp(compression, 0, mostCompression))
	size := float64(diameter)
	return Compressed{
		Factor:       1 + 0.58*percent*math.Exp(-4.96*size),
		Extrapolated: percent > 0 && (q.Compare(size, float64(leastTested)) < 0 || q.Compare(size, float64(mostTested)) > 0),
	}, nil
}
