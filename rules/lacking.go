package rules

import (
	"errors"
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
)

func unknown(err error) expression.Explanation {
	e := expression.Explanation{Truth: expression.Unknown}
	var one *document.Missing
	var many document.MissingAll
	var judge *expression.Undetermined
	switch {
	case errors.As(err, &many):
		e.Missing = append(e.Missing, many...)
	case errors.As(err, &one):
		e.Missing = append(e.Missing, *one)
	case errors.As(err, &judge):
		e.Undetermined = []string{judge.Reason}
	default:
		e.Undetermined = []string{"could not be evaluated: " + err.Error()}
	}
	return e
}

// join adds what an unknown condition and an unknown requirement lack.
func join(when, require expression.Explanation) expression.Explanation {
	var e expression.Explanation
	for _, part := range []expression.Explanation{when, require} {
		if part.Truth == expression.Unknown {
			e.Missing = append(e.Missing, part.Missing...)
			e.Undetermined = append(e.Undetermined, part.Undetermined...)
		}
	}
	return e
}

// wanting is open where an input is missing: giving it may settle the rule.
func wanting(e expression.Explanation) Outcome {
	if len(e.Missing) > 0 {
		return Open
	}
	return Review
}

// mostNamed is how many missing inputs a message names; the result has them all.
const mostNamed = 50

func saying(e expression.Explanation) string {
	if len(e.Missing) == 0 {
		return reason(e)
	}
	names := distinct(e.Missing)
	if more := len(names) - mostNamed; more > 0 {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("and %d more", more))
	}
	return "needs " + strings.Join(names, ", ")
}

func distinct(missing []document.Missing) []string {
	seen := map[string]bool{}
	var names []string
	for _, m := range missing {
		if name := m.Ref.KeyName(m.Key); !seen[name] {
			seen[name] = true
			names = append(names, name)
		}
	}
	return names
}

func reason(e expression.Explanation) string { return strings.Join(e.Undetermined, "; ") }
