package rules

import "github.com/ventlint/ventlint/rules/facts"

// Proving is the proof of a pack, rule by rule, within one pool of work: neither a
// hostile pack nor one that grew too large takes all time.
type Proving struct {
	pack *Effective
	left int // of the work
}

// mostProof bounds the work of the proof of one pack. None that ships takes an eighth.
const mostProof = 20_000_000

// What a proof spends beside judging, as it takes time: making the design of a sample,
// and compiling a changed rule, each by the bytes that are read.
const (
	designWork  = 200 // and a unit for every few bytes
	bytesOfUnit = 20
	changeWork  = 50 // and a unit for every byte
)

// Proving begins the proof of the pack.
func (e *Effective) Proving() *Proving { return &Proving{e, mostProof} }

// run runs samples, as long as there is work left.
func (v *Proving) run(p *Proof, samples []Sample, take func(SampleRun)) {
	for i, s := range samples {
		if v.left <= 0 {
			p.Untried += len(samples) - i
			return
		}
		run := v.pack.try(p.Rule, s)
		if run.Err == nil && !run.Passed() {
			run.tell(p.Rule)
		}
		v.left -= designWork + run.Sample.size()/bytesOfUnit + run.work()
		take(run)
	}
}

// work is what a run has taken: outcomes and, of one that is wrong, once more with
// what tells them.
func (r *SampleRun) work() int {
	switch {
	case r.facts == nil:
		return 0
	case r.Passed():
		return deciding(r.facts)
	}
	return 2*deciding(r.facts) + stepWork*(r.facts.Told.Problems+r.facts.Told.Rest)
}

// deciding is the work that went into outcomes: a proof tells no problem.
func deciding(f *facts.Facts) int { return f.Work - problemWork*f.Problems }

// mutate tries the changes of a rule, as long as there is work left.
func (v *Proving) mutate(p *Proof) {
	used := map[string]bool{}
	for _, m := range v.pack.mutants(p.Rule) {
		v.left -= changeWork + len(p.Rule.Require) + len(p.Rule.When) + len(p.Rule.JudgeWhen)
		changed, err := m.make()
		if err != nil {
			continue
		}
		noticed := v.noticed(changed, p.Runs)
		if v.left <= 0 {
			p.Unchanged = true
			return
		}
		p.Mutants++
		switch {
		case noticed:
		case p.Rule.excuses(m.Change):
			p.Excused++
			used[m.Change] = true
		default:
			p.Survivors = append(p.Survivors, m.Mutant)
		}
	}
	for _, x := range p.Rule.Equivalents {
		if !used[x.Change] && x.pack == v.pack.Head.ID {
			p.Unneeded = append(p.Unneeded, x)
		}
	}
}

// noticed tells whether any sample shows otherwise under a changed rule, as far as
// there is work left.
func (v *Proving) noticed(changed *Compiled, runs []SampleRun) bool {
	for _, run := range runs {
		if v.left <= 0 {
			break
		}
		run.facts.Work, run.facts.Problems = 0, 0 // each asks as if alone
		got := changed.worst(run.facts)
		v.left -= deciding(run.facts)
		if got != run.Got {
			return true
		}
	}
	return false
}
