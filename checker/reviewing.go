package checker

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// reviewing is the review under one pack. What many of its results say of one thing
// or key is worked out once.
type reviewing struct {
	report    *Report // for what it is about
	pack      *rules.Effective
	request   Request
	facts     *facts.Facts
	rule      *rules.Compiled // that is asked
	advised   *Result         // what its results have in common; nil before the first
	results   shelf
	counted   map[rules.Outcome]int // results that are not listed
	unreached int
	things    map[any]Subject
	keys      map[expression.Read]*keyRead
}

// newReviewing prepares the review under one of some packs, which share what may be
// spent on a design.
func newReviewing(r *Report, pack *rules.Effective, q Request, packs int) *reviewing {
	f := facts.Of(r.Design)
	f.Packs = packs
	return &reviewing{report: r, pack: pack, request: q, facts: f, counted: map[rules.Outcome]int{}, things: map[any]Subject{}, keys: map[expression.Read]*keyRead{}}
}

// keyRead is a key that rules read.
type keyRead struct {
	Input
	given bool
	in    *Result // that lists it last
}

// all asks every rule of the pack.
func (w *reviewing) all() {
	take, telling := w.take, w.request.telling()
	for _, rule := range w.pack.Rules {
		w.rule, w.advised = rule, nil
		rule.AskEach(w.facts, telling, take)
	}
}

// take lists a judgement of the rule that is asked, or only counts it.
func (w *reviewing) take(j rules.Judgement) {
	drawn := stated(w.facts, w.rule, j.Subjects)
	if w.request.Depth == Problems && !j.Outcome.Problem() && len(drawn) == 0 {
		w.counted[j.Outcome] += max(1, j.Others)
		return
	}
	if w.advised == nil {
		w.advised = w.advise()
	}
	r := w.results.add()
	*r = *w.advised
	r.Stated = drawn
	w.fill(r, j)
	if j.Cut {
		w.unreached++
	}
}

// advise gives what all results of a rule have.
func (w *reviewing) advise() *Result {
	limits := limits(w.pack, w.rule, w.rule.Rule.Topic.System(w.report.Units))
	return &Result{Rule: &w.rule.Rule, Pack: w.rule.Pack, Limits: limits, Advice: advice(w.rule, limits)}
}

// fill prints a judgement in the design's units and gives it its place.
func (w *reviewing) fill(r *Result, j rules.Judgement) {
	r.Outcome, r.Message, r.Remedy, r.Others = j.Outcome, j.Message, j.Remedy, j.Others
	r.Subjects = w.subjects(j)
	if j.Reason != "" {
		r.Reasons = []string{j.Reason}
	}
	r.Reasons = append(r.Reasons, throughBuilding(w.facts, w.rule, j, w.report.Units)...)
	r.Comparisons = comparisons(j, w.rule.Rule.Topic.System(w.report.Units))
	r.Missing = missing(j)
	r.Inputs = w.inputs(r, j)
	r.Level = level(w.rule, j.Outcome)
	w.place(r, j)
}

func (w *reviewing) subjects(j rules.Judgement) []Subject {
	if len(j.Subjects) == 0 {
		return nil
	}
	list := make([]Subject, len(j.Subjects))
	for i, thing := range j.Subjects {
		list[i] = w.subject(thing)
		list[i].Name = w.rule.Each()[i].Name
	}
	return list
}

func (w *reviewing) subject(thing any) Subject {
	s, ok := w.things[thing]
	if !ok {
		at := design.Refer(thing)
		s = Subject{Label: design.Label(thing), ID: idOf(thing), Position: at.Position(), Pointer: at.Pointer()}
		w.things[thing] = s
	}
	return s
}

// inputs are the keys that were read, in the order of the file.
func (w *reviewing) inputs(r *Result, j rules.Judgement) []Input {
	var list []Input
	for _, e := range []expression.Explanation{j.When, j.Require} {
		for _, read := range e.Reads {
			if key := w.key(read); key.given && key.in != r {
				key.in = r
				list = append(list, key.Input)
			}
		}
	}
	slices.SortStableFunc(list, func(a, b Input) int { return inFile(a.Position, b.Position) })
	return list
}

func (w *reviewing) key(read expression.Read) *keyRead {
	key, ok := w.keys[read]
	if !ok {
		key = &keyRead{given: read.Key != "" && read.Ref.Given(read.Key)}
		if key.given {
			key.Input = Input{read.Ref.KeyName(read.Key), read.Ref.At(read.Key)}
		}
		w.keys[read] = key
	}
	return key
}

// place anchors a result: a failed comparison on the key that shows it best, an
// open one on the thing that lacks the input, all others on their first subject.
func (w *reviewing) place(r *Result, j rules.Judgement) {
	r.Position, r.Pointer = w.anchor(r)
	switch {
	case len(r.Missing) > 0:
		r.Position = r.Missing[0].Position
	case r.Outcome == rules.Fail || r.Outcome == rules.Review:
		if read, ok := tellingRead(j); ok {
			r.Position, r.Pointer = read.Ref.At(read.Key), read.Ref.Pointer()+"/"+read.Key
		}
	}
}

func (w *reviewing) anchor(r *Result) (document.Position, string) {
	if len(r.Subjects) > 0 {
		return r.Subjects[0].Position, r.Subjects[0].Pointer
	}
	dwelling := w.report.Design.Dwelling.Ref
	return dwelling.Position(), dwelling.Pointer()
}

// ordered gives the results under all packs in the order of the file, then by rule:
// the same for every run.
func ordered(reviews []*reviewing) []Result {
	var all []*Result
	for _, w := range reviews {
		for i := range w.results.count {
			all = append(all, w.results.at(i))
		}
	}
	slices.SortStableFunc(all, func(a, b *Result) int {
		return cmp.Or(inFile(a.Position, b.Position), cmp.Compare(a.Pack, b.Pack), cmp.Compare(a.Rule.ID, b.Rule.ID))
	})
	list := make([]Result, len(all))
	for i, r := range all {
		list[i] = *r
	}
	return list
}

func inFile(a, b document.Position) int {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
}

// shelf holds results that come one by one, without moving them.
type shelf struct {
	boards [][]Result
	count  int
}

const boardLength = 128

func (s *shelf) add() *Result {
	if s.count%boardLength == 0 {
		s.boards = append(s.boards, make([]Result, boardLength))
	}
	s.count++
	return s.at(s.count - 1)
}

func (s *shelf) at(i int) *Result { return &s.boards[i/boardLength][i%boardLength] }
