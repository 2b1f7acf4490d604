package expression

import (
	"math"
	"reflect"
)

func inf() float64 { return math.Inf(1) }

func typeOf(v any) reflect.Type { return reflect.TypeOf(v) }
