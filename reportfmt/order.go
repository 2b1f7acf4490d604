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

// everything lists the results of all reports by file, line, column and rule;
// within those by subject and text, so that the order is total.
func everything(b Batch) []placed {
	return chosen(b, func(*checker.Result) bool { return true })
}

// problems lists those that ask something of the designer, in the same order.
func problems(b Batch) []placed { return chosen(b, (*checker.Result).Problem) }

func chosen(b Batch, wanted func(*checker.Result) bool) []placed {
	var all []placed
	for _, report := range b.Reports {
		for i := range report.Results {
			if r := &report.Results[i]; wanted(r) {
				all = append(all, placed{report.File, r})
			}
		}
	}
	slices.SortStableFunc(all, comparePlaced)
	return all
}

// comparePlaced makes texts only where nothing else tells two results apart.
func comparePlaced(a, b placed) int {
	order := cmp.Or(
		cmp.Compare(a.File, b.File),
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
