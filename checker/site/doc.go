// Package site measures between the openings, sources and lines of a design:
// nearest edges, straight through the air, on the plan, in height, and along a
// string pulled tight outside the building. It holds no rule and knows no limit.
//
// The site has x and y on the plan and z up from the site datum, in metres.
// Walls stand counter-clockwise seen from above, so that the outside of a wall
// lies to the right of the way from its first to its second point.
package site
