// Package moistair computes moist air and what a recovery core does to it.
//
// A State is air of one dry bulb, humidity ratio and pressure; its methods give
// the other properties. A Core exchanges heat, and with a membrane or wheel also
// moisture, between outdoor and indoor air: Core.Run gives the supply air, the
// exhaust air, the condensate and what was recovered. FrostOnset tells how cold
// it may get before a core freezes. Rating turns listed recovery efficiencies
// into the effectiveness that a Core needs.
//
// Moist air is a mixture of perfect gases with the constants of ASHRAE
// Fundamentals, chapter 1 (from memory), good to 0.7 % from -50 to 50 C at sea
// level (the same chapter, 2017 edition). Saturation pressures are those of
// Hyland and Wexler, over ice below the triple point. Everything is SI: kelvins
// on the absolute scale, pascals, kilograms of dry air. Inputs outside the stated
// ranges give a *bounds.Error; no function panics or gives NaN.
package moistair
