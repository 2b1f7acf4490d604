package reportfmt

import (
	"io"

	"github.com/ventlint/ventlint/checker"
)

// Run writes the reports of one run while its reviews come in, and keeps none of
// them. What grows with the number of designs is small: the names of files and
// where their parts lie, and the mistakes of designs that could not be reviewed.
type Run struct {
	setting  Setting
	writers  []writer
	failures []Failure
	reviewed int
	blocked  bool
}

// Setting is what is known before the first review.
type Setting struct {
	Baseline *Baseline // the review to compare with; nil: none
	Gate     Gate
	Tool     Tool
}

// Output is one report of a run.
type Output struct {
	Format  Format
	To      io.Writer
	Options Options
	Aside   func() Scratch // where parts wait for their place; nil: memory
}

// Scratch holds parts of a report whose place is known only at the end.
type Scratch interface {
	io.Writer
	io.ReaderAt
}

// reviewed is a review, and how it differs from the baseline.
type reviewed struct {
	*checker.Report
	changes *changes
}

// Begin begins the reports of a run.
func Begin(s Setting, outputs ...Output) *Run {
	run := &Run{setting: s}
	for _, o := range outputs {
		if o.Aside == nil {
			o.Aside = func() Scratch { return &memory{} }
		}
		run.writers = append(run.writers, o.Format.begin(s, o))
	}
	return run
}

// Add writes one review, the next in the order of the run. The only error is one
// of writing.
func (run *Run) Add(report *checker.Report) error {
	r := &reviewed{report, run.setting.Baseline.changes(report)}
	run.reviewed++
	run.blocked = run.blocked || run.setting.Gate.blocks(r)
	return run.every(func(w writer) error { return w.report(r) })
}

// Fail tells of the next design that could not be reviewed. Those stand last in
// reports.
func (run *Run) Fail(f Failure) { run.failures = append(run.failures, f) }

// End writes what is left to write. The only error is one of writing.
func (run *Run) End() error {
	for _, f := range run.failures {
		if err := run.every(func(w writer) error { return w.failure(f) }); err != nil {
			return err
		}
	}
	return run.every(writer.end)
}

func (run *Run) every(f func(writer) error) error {
	for _, w := range run.writers {
		if err := f(w); err != nil {
			return err
		}
	}
	return nil
}

// Count tells how many designs were reviewed, and how many could not be.
func (run *Run) Count() (reviewed, failed int) { return run.reviewed, len(run.failures) }

// Blocked tells whether any result so far makes the review fail.
func (run *Run) Blocked() bool { return run.blocked }

// Batch is all of a small run at once.
type Batch struct {
	Setting
	Reports  []*checker.Report
	Failures []Failure
	Options  Options
}

// Write writes a batch in one format. The only error is one of the writer.
func Write(w io.Writer, f Format, b Batch) error {
	run := Begin(b.Setting, Output{Format: f, To: w, Options: b.Options})
	for _, r := range b.Reports {
		if err := run.Add(r); err != nil {
			return err
		}
	}
	for _, failed := range b.Failures {
		run.Fail(failed)
	}
	return run.End()
}
