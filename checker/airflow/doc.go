// Package airflow computes the pressure that ducts take from moving air, how air
// divides among them, and what a fan delivers through them.
//
// Air has a density and a viscosity. A Section is a length of one duct with its
// fittings; its Loss at a flow is the Darcy-Weisbach equation with every figure
// on the way to it. A System is the tree of runs on both sides of a fan, from
// the outdoor openings through the fan to the terminals: System.Design sums it
// at given flows, finds the critical path and the damper loss of each other end;
// System.Open divides a flow among ends that have no damper. System.MeetDamped
// and System.MeetOpen find where a fan Curve meets the system.
//
// Losses are of total pressure, so a change of velocity counts only through the
// coefficients of fittings. House pressure, wind, stack effect and leaks of ducts
// are left out. Air has the same density all along a system. Everything is SI: a
// coefficient is a plain number, referred to the velocity of the section that
// lists it. Inputs outside the stated ranges give an error; no function panics or
// gives NaN.
package airflow
