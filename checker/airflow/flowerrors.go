package airflow

import (
	"fmt"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// UnknownFlows are ends whose flow neither is stated nor follows from others.
type UnknownFlows struct{ Ends []string }

// Error names the ends.
func (e *UnknownFlows) Error() string {
	return fmt.Sprintf("%s: flow is not known", quoted(e.Ends))
}

// FlowMismatch is a stated flow that does not agree with the flows beyond it by
// more than FlowTolerance.
type FlowMismatch struct {
	ID            string // run or end; the fan where both sides differ
	Stated, Found q.Flow // of the fan: inlet and outlet
}

// Error gives both flows, in SI.
func (e *FlowMismatch) Error() string {
	return fmt.Sprintf("%q: flow %q is stated, the others add up to %q", e.ID, e.Stated, e.Found)
}
