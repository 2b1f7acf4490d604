package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
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
	Got        Outcome // worst over all subjects
	Judgements []Judgement
	Err        error // the sample's design could not be made
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

// Run asks a rule of the pack of one sample design.
func (e *Effective) Run(rule *Compiled, s Sample) SampleRun {
	d, err := e.sampleDesign(rule, s)
	if err != nil {
		return SampleRun{Sample: s, Err: err}
	}
	judgements := rule.Ask(facts.Of(d))
	return SampleRun{Sample: s, Got: worst(judgements), Judgements: judgements}
}

func worst(judgements []Judgement) Outcome {
	w := NotApplicable
	for _, j := range judgements {
		if j.Outcome.Worse(w) {
			w = j.Outcome
		}
	}
	return w
}

// sampleDesign lays a sample over its base design.
func (e *Effective) sampleDesign(rule *Compiled, s Sample) (*design.Design, error) {
	name := s.Base
	if name == "" {
		name = rule.base
	}
	base, ok := e.Bases[name]
	if !ok {
		hint := document.Near(name, sortedKeys(e.Bases))
		if hint != "" {
			hint = fmt.Sprintf("; did you mean %q?", hint)
		}
		return nil, fmt.Errorf("no base design %q%s", name, hint)
	}
	text, err := overlay(base.Part.Design, s.With, s.Without)
	if err != nil {
		return nil, err
	}
	d, problems := design.Load("sample", text)
	if len(problems) > 0 {
		p := problems[0]
		return nil, fmt.Errorf("the sample's design is invalid: %s: %s (line %d of base and changes put together)", p.Path, p.Message, p.Position.Line)
	}
	return d, nil
}
