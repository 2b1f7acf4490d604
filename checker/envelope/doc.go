// Package envelope computes the leakage of a dwelling and the pressure that its
// fans put it under.
//
// A Leakage is the power law of a blower-door test. From it follow the flow at a
// pressure, the pressure that an unbalanced flow makes, the leakage area, and with
// climate the yearly infiltration of ASHRAE 62.2 and its credit. Pressures gives
// the house pressure in a set of operating states, WorstCase the one with every
// exhaust on; Tolerances tells what combustion appliances bear, and the makeup
// functions how much air codes ask for.
//
// House pressure is indoor minus outdoor: positive where supply is larger. Wind
// and stack are left out of it, so it is the pressure that the fans add. Flows are
// of standard density; at elevation they differ by less than 7 % below 600 m.
// Inputs outside the stated ranges give a *bounds.Error; no function panics or
// gives NaN.
package envelope
