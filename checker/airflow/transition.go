package airflow

import (
	"cmp"
	"fmt"
)

// Refer moves a loss coefficient from the velocity of one shape to that of
// another that carries the same flow: C1 = C0 (A1/A0)^2. Source: ASHRAE Fundamentals
// 2021, chapter 21, equation 31.
func Refer(coefficient float64, from, to Shape) (float64, error) {
	ratio, err := areaRatio(to, from)
	return coefficient * ratio * ratio, err
}

// AbruptEnlargement is the loss coefficient of a sudden step to a larger duct, (1 -
// A1/A2)^2, referred to the velocity before it. A smaller duct is an error.
// Source: an engineering reference site's table of minor losses of duct fittings.
func AbruptEnlargement(before, after Shape) (float64, error) {
	ratio, err := areaRatio(before, after)
	if err == nil && ratio > 1 {
		err = fmt.Errorf("%v opens into %v, expected a larger duct", before, after)
	}
	if err != nil {
		return 0, err
	}
	return (1 - ratio) * (1 - ratio), nil
}

// TaperedEnlargement is that of a taper under 8 degrees, 0.15 (1 - A1/A2)^2.
// Source: as AbruptEnlargement.
func TaperedEnlargement(before, after Shape) (float64, error) {
	c, err := AbruptEnlargement(before, after)
	return 0.15 * c, err
}

func areaRatio(a, b Shape) (float64, error) {
	if err := cmp.Or(a.given(), b.given()); err != nil {
		return 0, err
	}
	return float64(a.Area() / b.Area()), nil
}
