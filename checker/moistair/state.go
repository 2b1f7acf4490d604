package moistair

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// The range of air that this package computes: any weather and any room.
const (
	Coldest         q.Temperature = freezing - 70
	Hottest         q.Temperature = freezing + 60
	LowestPressure  q.Pressure    = 30_000  // at some 9200 m above the sea
	HighestPressure q.Pressure    = 120_000 // at some 1450 m below it
)

// molarRatio is the molar mass of water over that of dry air.
const molarRatio = 0.621945

// State is moist air at one place. Only the From functions and the results of
// this package make one, so that every State holds air that can exist: between
// Coldest and Hottest, LowestPressure and HighestPressure, and not above
// saturation. The zero State is no air: all its properties are zero.
type State struct {
	dryBulb  float64 // K
	humidity float64 // kg/kg
	pressure float64 // Pa
}

// FromHumidityRatio is air of a dry bulb, humidity ratio and total pressure. The
// humidity ratio may be from 0 to that of saturated air.
func FromHumidityRatio(dryBulb q.Temperature, w HumidityRatio, p q.Pressure) (State, error) {
	s, err := dryAir(dryBulb, p)
	if err != nil {
		return State{}, err
	}
	most := HumidityRatio(saturatedRatio(s.dryBulb, s.pressure))
	if err := bounds.Check("humidity ratio", w, 0, most); err != nil {
		return State{}, err
	}
	s.humidity = float64(bounds.Clamp(w, 0, most))
	return s, nil
}

// FromRelativeHumidity is air of a dry bulb, relative humidity (0 to 1, vapor
// pressure over saturation pressure; over ice below 0.01 C) and total pressure:
// W = 0.621945 pw/(p - pw). Source: ASHRAE Fundamentals, chapter 1, from memory.
func FromRelativeHumidity(dryBulb q.Temperature, rh q.Ratio, p q.Pressure) (State, error) {
	s, err := dryAir(dryBulb, p)
	if err != nil {
		return State{}, err
	}
	if err := bounds.Check("relative humidity", rh, 0, 1); err != nil {
		return State{}, err
	}
	s.humidity = ratioOf(float64(bounds.Clamp(rh, 0, 1))*saturation(s.dryBulb), s.pressure)
	return s, nil
}

// FromDewPoint is air of a dry bulb, dew point (frost point below 0.01 C; at
// least -100 C and at most the dry bulb) and total pressure.
func FromDewPoint(dryBulb, dewPoint q.Temperature, p q.Pressure) (State, error) {
	s, err := dryAir(dryBulb, p)
	if err != nil {
		return State{}, err
	}
	if err := bounds.Check("dew point", dewPoint, coldestSaturation, s.DryBulb()); err != nil {
		return State{}, err
	}
	s.humidity = saturatedRatio(min(float64(dewPoint), s.dryBulb), s.pressure)
	return s, nil
}

// dryAir is air without vapor yet. A value at an end of the range may lie beyond
// it by rounding.
func dryAir(dryBulb q.Temperature, p q.Pressure) (State, error) {
	if err := bounds.Check("dry bulb temperature", dryBulb, Coldest, Hottest); err != nil {
		return State{}, err
	}
	if err := bounds.Check("air pressure", p, LowestPressure, HighestPressure); err != nil {
		return State{}, err
	}
	t := bounds.Clamp(dryBulb, Coldest, Hottest)
	return State{float64(t), 0, float64(bounds.Clamp(p, LowestPressure, HighestPressure))}, nil
}

// check refuses the zero State.
func (s State) check(what string) error {
	if s == (State{}) {
		return fmt.Errorf("%s is not given, expected a state of air", what)
	}
	return nil
}

func ratioOf(vapor, p float64) float64 { return molarRatio * vapor / (p - vapor) }

func vaporOf(w, p float64) float64 { return p * w / (molarRatio + w) }

func saturatedRatio(t, p float64) float64 { return ratioOf(saturation(t), p) }
