package airflow

import (
	"fmt"
	"strings"
)

// Fault is what is wrong with the layout of a system.
type Fault string

// The faults. What a LayoutError's IDs are stands beside each.
const (
	NoRuns      Fault = "there are no runs"                           // the fan
	TooManyRuns Fault = "there are more than 1000 runs"               // the fan
	Nameless    Fault = "needs a name, and a run two different nodes" // the run or end
	Repeated    Fault = "stands for more than one run or end"         // the name
	Loop        Fault = "form a loop, expected a tree around the fan" // runs
	Against     Fault = "blows against the run that it joins"         // the run, and the one nearer the fan
	Dangling    Fault = "leads to no opening, terminal or other run"  // the run, and its node
	Unconnected Fault = "is not connected with the fan"               // a run or end
)

// LayoutError is a system that is not a tree on each side of its fan.
type LayoutError struct {
	Fault Fault
	IDs   []string
}

// Error quotes the names and tells the fault.
func (e *LayoutError) Error() string {
	return fmt.Sprintf("%s: %s", quoted(e.IDs), e.Fault)
}

func quoted(names []string) string {
	return `"` + strings.Join(names, `", "`) + `"`
}

const mostRuns = 1000

func checkNames(fan string, runs []Run, ends []End) error {
	switch {
	case len(runs) == 0:
		return &LayoutError{NoRuns, []string{fan}}
	case len(runs) > mostRuns || len(ends) > 2*mostRuns:
		return &LayoutError{TooManyRuns, []string{fan}}
	}
	seen := map[string]bool{}
	for _, r := range runs {
		if r.ID == "" || r.From == "" || r.To == "" || r.From == r.To {
			return &LayoutError{Nameless, []string{r.ID}}
		}
		if seen[r.ID] {
			return &LayoutError{Repeated, []string{r.ID}}
		}
		seen[r.ID] = true
	}
	for _, e := range ends {
		if e.ID == "" {
			return &LayoutError{Nameless, []string{e.ID}}
		}
		if seen[e.ID] || e.ID == fan {
			return &LayoutError{Repeated, []string{e.ID}}
		}
		seen[e.ID] = true
	}
	return nil
}
