package document

import (
	"cmp"
	"slices"
)

// Sort puts problems into file order; those of one place stay in the order in
// which they were found.
func Sort(problems []Problem) {
	slices.SortStableFunc(problems, func(a, b Problem) int {
		return cmp.Or(
			cmp.Compare(a.Position.Line, b.Position.Line),
			cmp.Compare(a.Position.Column, b.Position.Column),
		)
	})
}

// Limit sorts problems and cuts off what is beyond MaxProblems; the last one
// listed then says that there are more.
func Limit(problems []Problem) []Problem {
	Sort(problems)
	if len(problems) <= MaxProblems {
		return problems
	}
	return append(problems[:MaxProblems:MaxProblems], Problem{
		Position: problems[MaxProblems].Position,
		Message:  "found more mistakes from here on, which are not listed",
	})
}
