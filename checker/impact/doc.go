// Package impact tells what a change of rules does to many designs: which rules
// and which designs come out otherwise under one pack than under another, what
// passes narrowly, and which rules never find anything.
//
// Designs are judged one at a time and only counted, so that thousands take
// little memory. Tallies can be merged in any order with the same result, so that
// the work can be spread over cores and machines.
//
// Variances of a design count for nothing here: the question is what the packs
// ask.
package impact
