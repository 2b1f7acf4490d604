package reportfmt

import "github.com/ventlint/ventlint/checker"

// Depth is how deep a review must go to give all that a format shows.
func Depth(f Format) checker.Depth {
	switch f.(type) {
	case textFormat, markdownFormat, linesFormat, annotationsFormat, gitlabFormat, sarifFormat:
		return checker.Problems
	case junitFormat:
		return checker.Outcomes
	}
	return checker.Evidence
}
