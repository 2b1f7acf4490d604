package reportfmt

// Brief tells whether a format shows of a result that asks nothing no more than a
// brief review gives: neither comparisons nor inputs.
func Brief(f Format) bool {
	switch f.(type) {
	case textFormat, markdownFormat, linesFormat, junitFormat, annotationsFormat, gitlabFormat:
		return true
	}
	return false
}
