// Package document reads TOML with the position of every key and value, and
// decodes it strictly into typed structs, reporting all mistakes in file order.
package document

// Position is a place in a file: 1-based line and 1-based column in characters
// (a byte order mark does not count), and the column one past the last character
// on that line.
type Position struct {
	Line, Column, EndColumn int
}

// Problem is one mistake in a file.
type Problem struct {
	Position Position
	Path     string // where in the document, such as "opening[2].flow"; empty for a syntax error
	Message  string // lower case, no full stop: what was found, then what was expected
	Hint     string // what to do instead; may be empty
}
