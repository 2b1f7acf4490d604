// Package checker reviews a design against rule packs. It is pure: a design,
// packs and a date go in, a report in a fixed order comes out; it reads no
// clock, no file and no global.
package checker
