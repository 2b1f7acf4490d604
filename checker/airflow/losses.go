package airflow

import (
	"slices"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Losses are those of a whole system at one set of flows.
type Losses struct {
	Flow          q.Flow     // through the fan
	Pressure      q.Pressure // that the fan must make: both sides together
	Inlet, Outlet SideLoss
	Iterations    int // of the network solver; 0 where flows were given
}

// SideLoss is the loss of one side of the fan. Of an empty side all is zero.
type SideLoss struct {
	Pressure q.Pressure // of the critical path
	Critical string     // the end of that path
	Runs     []RunLoss  // nearer the fan first
	Ends     []EndLoss
}

// RunLoss is the loss of one run.
type RunLoss struct {
	ID       string
	Flow     q.Flow
	Sections []SectionLoss
	Stated   []StatedResult
	Loss     q.Pressure
}

// EndLoss is the loss of an opening or terminal and of the path to it.
type EndLoss struct {
	ID     string
	Flow   q.Flow
	Stated []StatedResult
	Loss   q.Pressure
	Path   []string   // runs from the fan to the end
	Sum    q.Pressure // of the path with the end
	Damper q.Pressure // what is missing to the critical path; zero where flows were found by Open
}

// Closed tells that no air passes the end.
func (e EndLoss) Closed() bool { return e.Flow == 0 }

// Run finds a run of either side by its id.
func (l *Losses) Run(id string) (RunLoss, bool) {
	for _, runs := range [][]RunLoss{l.Inlet.Runs, l.Outlet.Runs} {
		if i := slices.IndexFunc(runs, func(r RunLoss) bool { return r.ID == id }); i >= 0 {
			return runs[i], true
		}
	}
	return RunLoss{}, false
}

// End finds an end of either side by its id.
func (l *Losses) End(id string) (EndLoss, bool) {
	for _, ends := range [][]EndLoss{l.Inlet.Ends, l.Outlet.Ends} {
		if i := slices.IndexFunc(ends, func(e EndLoss) bool { return e.ID == id }); i >= 0 {
			return ends[i], true
		}
	}
	return EndLoss{}, false
}
