package expression

import (
	"math"
	"reflect"
	"sync"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// theCalculus is the arithmetic of the language.
var theCalculus = sync.OnceValue(newCalculus)

func newCalculus() *calculus {
	c := &calculus{binary: make(map[operatorKey]*operation, 330), folds: make(map[foldKey]*operation, 150)}
	linear[q.Length](c)
	linear[q.Area](c)
	linear[q.Volume](c)
	linear[q.Flow](c)
	linear[q.Velocity](c)
	linear[q.Pressure](c)
	linear[q.TemperatureDifference](c)
	linear[q.Power](c)
	linear[q.Duration](c)
	linear[q.AirChange](c)
	linear[q.Efficacy](c)
	linear[q.Ratio](c)
	linear[q.ThermalResistance](c)
	linear[q.Loudness](c)
	linear[q.Slope](c)
	linear[q.Mass](c)
	ranked[q.SoundLevel](c) // decibels do not add up
	c.numbers()
	c.temperatures()
	c.products()
	c.ratios()
	return c
}

var quantities = reflect.TypeFor[q.Length]().PkgPath()

// isQuantity tells whether the calculus knows a type as a quantity.
func isQuantity(t reflect.Type) bool {
	return t.Kind() == reflect.Float64 && t.PkgPath() == quantities
}

// ranked quantities can be compared, and have a least and a greatest.
func ranked[Q ~float64](c *calculus) {
	compares[Q, Q](c)
	fold[Q](c, "min", func(a, b float64) float64 { return min(a, b) })
	fold[Q](c, "max", func(a, b float64) float64 { return max(a, b) })
}

// linear quantities can be added and scaled. One divided by another is a ratio.
func linear[Q ~float64](c *calculus) {
	ranked[Q](c)
	define[Q, Q, Q](c, "+", plus)
	define[Q, Q, Q](c, "-", minus)
	define[Q, Q, q.Ratio](c, "/", over)
	define[Q, float64, Q](c, "*", times)
	define[float64, Q, Q](c, "*", times)
	define[Q, float64, Q](c, "/", over)
	define[Q, q.Ratio, Q](c, "*", times)
	define[q.Ratio, Q, Q](c, "*", times)
	define[Q, q.Ratio, Q](c, "/", over)
	total[Q](c)
	alter[Q, Q](c, "-", func(a float64) float64 { return -a })
	alter[Q, Q](c, "abs", math.Abs)
}

// numbers are plain: divided by each other they stay plain, and a fraction of
// one can be rounded.
func (c *calculus) numbers() {
	linear[float64](c)
	define[float64, float64, float64](c, "/", over)
	for name, f := range map[string]func(float64) float64{"round": math.Round, "floor": floor, "ceil": ceil} {
		alter[float64, float64](c, name, f)
		alter[q.Ratio, float64](c, name, f)
	}
}

// slack keeps floor and ceil from seeing a whole number that arithmetic has
// missed by a hair: 300 ft2 / 100 ft2 is 3.
const slack = 1e-9

func floor(v float64) float64 { return math.Floor(v + slack*math.Max(1, math.Abs(v))) }
func ceil(v float64) float64  { return math.Ceil(v - slack*math.Max(1, math.Abs(v))) }

// temperatures have no zero to count from: only their differences add up.
func (c *calculus) temperatures() {
	ranked[q.Temperature](c)
	define[q.Temperature, q.Temperature, q.TemperatureDifference](c, "-", minus)
	define[q.Temperature, q.TemperatureDifference, q.Temperature](c, "+", plus)
	define[q.TemperatureDifference, q.Temperature, q.Temperature](c, "+", plus)
	define[q.Temperature, q.TemperatureDifference, q.Temperature](c, "-", minus)
}

func (c *calculus) products() {
	multiply[q.Length, q.Length, q.Area](c)
	multiply[q.Length, q.Area, q.Volume](c)
	multiply[q.Velocity, q.Area, q.Flow](c)
	multiply[q.AirChange, q.Volume, q.Flow](c)
	multiply[q.Efficacy, q.Power, q.Flow](c)
	multiply[q.Flow, q.Duration, q.Volume](c)
	multiply[q.Velocity, q.Duration, q.Length](c)
	multiply[q.Pressure, q.Flow, q.Power](c)
	define[q.AirChange, q.Duration, float64](c, "*", times)
	define[q.Duration, q.AirChange, float64](c, "*", times)
	define[q.Slope, q.Length, q.Length](c, "*", times)
	define[q.Length, q.Slope, q.Length](c, "*", times)
	define[q.Length, q.Slope, q.Length](c, "/", over)
}

// multiply declares A*B = C with B*A = C, C/A = B and C/B = A.
func multiply[A, B, C ~float64](c *calculus) {
	define[A, B, C](c, "*", times)
	define[B, A, C](c, "*", times)
	define[C, A, B](c, "/", over)
	define[C, B, A](c, "/", over)
}

// ratios are numbers that were worth a type: they meet computed plain numbers
// and slopes. A plain number that is written out is
// refused there by the compiler: it may lack its % sign.
func (c *calculus) ratios() {
	define[q.Ratio, float64, q.Ratio](c, "*", times)
	define[float64, q.Ratio, q.Ratio](c, "*", times)
	define[q.Ratio, q.Ratio, q.Ratio](c, "*", times)
	define[q.Ratio, float64, q.Ratio](c, "+", plus)
	define[float64, q.Ratio, q.Ratio](c, "+", plus)
	define[q.Ratio, float64, q.Ratio](c, "-", minus)
	define[float64, q.Ratio, q.Ratio](c, "-", minus)
	define[float64, q.Ratio, float64](c, "/", over)
	compares[q.Ratio, float64](c)
	compares[float64, q.Ratio](c)
	compares[q.Ratio, q.Slope](c)
	compares[q.Slope, q.Ratio](c)
	define[q.Ratio, q.Slope, q.Slope](c, "-", minus)
	define[q.Slope, q.Ratio, q.Slope](c, "-", minus)
}
