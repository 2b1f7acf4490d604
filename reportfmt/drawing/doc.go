// Package drawing draws the plan and the elevations of a design as SVG, to
// scale, with the distances that a review found too short.
//
// It is pure: the same report gives the same bytes. Nothing is told by colour
// alone: every kind of thing has its own outline, hatch or line style, and its
// label begins with what it is.
package drawing
