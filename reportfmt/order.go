package reportfmt

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
)

// placed is a result with the file it is about.
type placed struct {
	File   string
	Result *checker.Result
}

// everything lists the results of a report by line, column and rule; within those
// by subject and text, so that the order is total.
func everything(r *checker.Report) []placed {
	return chosen(r, func(*checker.Result) bool { return true })
}

// problems lists those that ask something of the designer, in the same order.
func problems(r *checker.Report) []placed { return chosen(r, (*checker.Result).Problem) }

func chosen(report *checker.Report, wanted func(*checker.Result) bool) []placed {
	var all []placed
	for i := range report.Results {
		if r := &report.Results[i]; wanted(r) {
			all = append(all, placed{report.File, r})
		}
	}
	slices.SortStableFunc(all, comparePlaced)
	return all
}

// comparePlaced makes texts only where nothing else tells two results apart.
func comparePlaced(a, b placed) int {
	order := cmp.Or(
		comparePositions(a.Result.Position, b.Result.Position),
		cmp.Compare(ruleID(a.Result), ruleID(b.Result)),
	)
	if order != 0 {
		return order
	}
	return cmp.Or(
		cmp.Compare(subjects(a.Result), subjects(b.Result)),
		cmp.Compare(problemText(a.Result), problemText(b.Result)),
	)
}

func comparePositions(a, b document.Position) int {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
}

// inFile gives a position that lies in a file: the first character where a
// problem is about the file as a whole.
func inFile(p document.Position) document.Position {
	p.Line = max(p.Line, 1)
	p.Column = max(p.Column, 1)
	p.EndColumn = max(p.EndColumn, p.Column)
	return p
}
