package expression

import "math"

func inf() float64 { return math.Inf(1) }
