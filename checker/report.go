package checker

import (
	"maps"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Report is the review of one design: every rule for every subject, in a fixed
// order, with nothing in it that depends on the machine or the clock.
type Report struct {
	File        string // as the caller names it, with forward slashes
	Design      *design.Design
	Units       quantity.System
	Date        string // the day of the review, YYYY-MM-DD
	Packs       []PackUsed
	Results     []Result
	Unlisted    map[rules.Outcome]int // results that are only counted, at that depth; nil without any
	Figures     []Figure              // computed, for the reader; the worksheet has them all
	Assumptions []Assumption
	Remarks     []Remark
	Unreached   int // rules that were not asked of all their subjects: they, or the design, ask too much
}

// PackUsed names a pack of the review.
type PackUsed struct {
	ID, Title, Edition string
	Digest             string // sha256 of the pack file and those it extends; empty where no evidence was asked for
}

// Result is one rule for one subject.
type Result struct {
	Rule        *rules.Rule
	Pack        string // id of the pack that holds the rule
	Subjects    []Subject
	Outcome     rules.Outcome
	Level       rules.Level // weight of a fail, review or open outcome; empty otherwise
	Message     string      // what was found
	Remedy      string      // what to do about it here; empty where nothing is to be done
	Advice      string      // what the rule advises in general
	Comparisons []Comparison
	Missing     []MissingInput // of an open outcome
	Reasons     []string       // why a person must judge, or why a rule does not apply or is not due
	Others      int            // further results of the rule and outcome that are not listed; this one then stands for them
	Stated      []string       // drawings' dimensions used in place of geometry
	Position    document.Position
	Pointer     string  // JSON pointer of the place in the design, "/opening/1/from_left"
	Inputs      []Input // keys of the design that decided the outcome, in file order
	Limits      []Limit // that the rule compares with
	Variance    *design.Variance
}

// Limit is a named figure of a pack, printed in the design's units.
type Limit struct {
	Name, Title, Value string
	Pack               string // id of the pack that sets it
	Basis              []rules.Basis
}

// Subject is one thing that a rule was asked of.
type Subject struct {
	Name     string // as the rule calls it, such as "intake"
	Label    string // for people: `intake "fresh"`
	ID       string // id in the design; empty for things without one
	Position document.Position
	Pointer  string // JSON pointer into the design
}

// Comparison is one compared pair of values, printed in the design's units.
type Comparison struct {
	Text       string // as the rule writes it
	Found      string
	Operator   string
	Required   string
	Difference string // how much is wanting; empty where that has no meaning
	Of         string // element of a list; empty when the subject itself is meant
	Holds      bool
}

// MissingInput is a key that the design would have to give.
type MissingInput struct {
	Key      string // such as `opening.fresh.from_left`
	Position document.Position
}

// Input is a key that was read, and where.
type Input struct {
	Key      string
	Position document.Position
}

// Figure is a computed value, printed in the design's units.
type Figure struct {
	Name, Of, Value string
	Note            string // how it was found, where that matters
}

// Assumption is a value that the design does not give and the review took.
type Assumption struct {
	Text, Basis string
}

// Counts holds how many results had each outcome; one with a variance counts
// as accepted, not under its outcome.
type Counts struct {
	Of       map[rules.Outcome]int
	Accepted int
}

// Count counts the results of a report.
func (r *Report) Count() Counts {
	c := Counts{Of: map[rules.Outcome]int{}}
	maps.Copy(c.Of, r.Unlisted)
	for i := range r.Results {
		result := &r.Results[i]
		switch {
		case result.Variance != nil:
			c.Accepted++
		case result.Others > 0:
			c.Of[result.Outcome] += result.Others
		default:
			c.Of[result.Outcome]++
		}
	}
	return c
}

// count adds results that are not listed.
func (r *Report) count(outcomes map[rules.Outcome]int) {
	for o, n := range outcomes {
		if r.Unlisted == nil {
			r.Unlisted = map[rules.Outcome]int{}
		}
		r.Unlisted[o] += n
	}
}

// Decided is how many rules had something to say about the design; 0 means that
// nothing was checked.
func (c Counts) Decided() int {
	return c.Of[rules.Fail] + c.Of[rules.Open] + c.Of[rules.Review] + c.Of[rules.Pass] + c.Accepted
}

// Problem tells whether a result asks something of the designer: it failed, an
// input is missing, or a person must judge, and no variance accepts it.
func (r *Result) Problem() bool {
	return r.Variance == nil && r.Outcome.Problem()
}

// Blocks tells whether a result weighs at least as much as the given level.
// What a person must judge never blocks.
func (r *Result) Blocks(at rules.Level) bool {
	return r.Variance == nil && (r.Outcome == rules.Fail || r.Outcome == rules.Open) && !r.Level.Below(at)
}
