package reportfmt

// Brief tells whether a brief review gives all that a format shows: of what asks
// nothing of anybody, how many there are.
func Brief(f Format) bool {
	switch f.(type) {
	case textFormat, markdownFormat, linesFormat, annotationsFormat, gitlabFormat:
		return true
	}
	return false
}
