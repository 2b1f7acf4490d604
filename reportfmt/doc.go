// Package reportfmt writes reviews: one file per format, all behind one
// interface. A format is a pure function of its batch: the same batch gives the
// same bytes. No format reads a clock, an environment or a terminal.
//
// Whatever a design or a pack calls its things is shown with control characters
// made visible, so that a report cannot steer the terminal or reorder the line
// it is read on.
package reportfmt
