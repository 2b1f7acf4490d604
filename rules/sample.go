package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules/facts"
)

// Values lists the outcomes that a sample may expect.
func (Expected) Values() []string {
	return []string{string(Pass), string(Fail), string(Open), string(Review), string(NotApplicable)}
}

// Expected is the outcome that a sample shows.
type Expected string

// SampleRun is what became of one sample.
type SampleRun struct {
	Sample     Sample
	Got        Outcome     // worst over all subjects
	Judgements []Judgement // of a proof: where the sample does not show what it says
	Err        error       // the sample's design could not be made

	facts *facts.Facts
}

// Passed tells whether the sample showed what it says.
func (s SampleRun) Passed() bool { return s.Err == nil && string(s.Got) == string(s.Sample.Expect) }

// Prove runs the samples of a rule of the pack, in the order of the file.
func (e *Effective) Prove(rule *Compiled) []SampleRun {
	runs := make([]SampleRun, len(rule.Samples))
	for i, s := range rule.Samples {
		runs[i] = e.Run(rule, s)
	}
	return runs
}

// Run asks a rule of the pack of one sample design. A sample of no pack varies
// the base designs that this one knows.
func (e *Effective) Run(rule *Compiled, s Sample) SampleRun {
	run := e.try(rule, s)
	if run.Err == nil {
		run.tell(rule)
	}
	return run
}

// try asks for the outcome alone.
func (e *Effective) try(rule *Compiled, s Sample) SampleRun {
	if s.written.pack == nil {
		s.written = home{e.Bases, rule.base, e.Files[0]}
	}
	d, err := s.design()
	if err != nil {
		return SampleRun{Sample: s, Err: err}
	}
	f := facts.Of(d)
	return SampleRun{Sample: s, Got: rule.worst(f), facts: f}
}

// tell adds the judgements.
func (r *SampleRun) tell(rule *Compiled) {
	r.facts.Work, r.facts.Problems = 0, 0 // it is the same question once more
	r.Judgements = rule.Ask(r.facts)
}

// worst is the worst outcome of a rule over all subjects.
func (c *Compiled) worst(f *facts.Facts) Outcome {
	w := NotApplicable
	c.AskEach(f, OutcomesAlone, func(j Judgement) { w = worse(w, j.Outcome) })
	return w
}

func worse(a, b Outcome) Outcome {
	if b.Worse(a) {
		return b
	}
	return a
}

// sampleDesign lays a sample over its base design.
func (s Sample) design() (*design.Design, error) {
	base := s.written.bases[s.base()].Part
	if base == nil {
		return nil, fmt.Errorf("no base design %q", s.base()) // refused when the pack is loaded
	}
	text, err := overlay(base, s.With, s.Without)
	if err != nil {
		return nil, err
	}
	d, problems := design.LoadKnown(text)
	if len(problems) > 0 {
		p := problems[0]
		return nil, fmt.Errorf("the sample's design is invalid: %s: %s (line %d of base and changes put together)", p.Path, p.Message, p.Position.Line)
	}
	return d, nil
}
