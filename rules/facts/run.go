package facts

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// joints are how the ducts of a design meet, with what was found of them, each
// worked out once.
type joints struct {
	before, after map[*design.Duct][]*design.Duct
	runs          map[*design.Duct]found
	reached       map[*design.Duct]*reach
}

// found is the run of a duct, or why it is not known.
type found struct {
	list []*design.Duct
	err  error
}

// reach is where ducts that are joined with each other lead.
type reach struct {
	ends    map[string]bool // ids of things that are named at an end
	missing error           // an end that is not said
}

func (f *Facts) joints() *joints {
	if f.joined != nil {
		return f.joined
	}
	j := &joints{map[*design.Duct][]*design.Duct{}, map[*design.Duct][]*design.Duct{}, map[*design.Duct]found{}, map[*design.Duct]*reach{}}
	done := map[[2]*design.Duct]bool{}
	meet := func(first, second *design.Duct) {
		if pair := [2]*design.Duct{first, second}; first != nil && second != nil && !done[pair] {
			done[pair] = true
			j.after[first], j.before[second] = append(j.after[first], second), append(j.before[second], first)
		}
	}
	for _, d := range f.Design.Ducts {
		meet(f.ductAt(d.From), d)
		meet(d, f.ductAt(d.To))
	}
	f.joined = j
	return j
}

// ductAt is the duct of an id; nil where there is none.
func (f *Facts) ductAt(id *string) *design.Duct {
	if id == nil {
		return nil
	}
	d, _ := f.Design.Find(*id).(*design.Duct)
	return d
}

// run is the sections that the same air passes one after the other, in its
// direction: from an end, the unit or a branching to the next. A duct whose end is
// not said, and that no other duct names, may go on: its run is not known.
func (f *Facts) run(duct *design.Duct) ([]*design.Duct, error) {
	j := f.joints()
	if r, known := j.runs[duct]; known {
		return r.list, r.err
	}
	first := duct
	for d := j.only(j.before, j.after, first); d != nil; d = j.only(j.before, j.after, first) {
		first = d
	}
	list := []*design.Duct{first}
	for d := j.only(j.after, j.before, first); d != nil; d = j.only(j.after, j.before, d) {
		list = append(list, d)
	}
	last := list[len(list)-1]
	r := found{list, cmp.Or(j.unsaid(first, j.before, first.From, "from"), j.unsaid(last, j.after, last.To, "to"))}
	for _, d := range list {
		j.runs[d] = r
	}
	return r.list, r.err
}

// only is the one duct that goes on from an end and that nothing else joins there;
// nil where the run ends. No run leads back to itself: the loader refuses that.
func (j *joints) only(on, back map[*design.Duct][]*design.Duct, d *design.Duct) *design.Duct {
	if ahead := on[d]; len(ahead) == 1 && len(back[ahead[0]]) == 1 {
		return ahead[0]
	}
	return nil
}

// unsaid is the error of an end that neither the duct nor another one tells.
func (j *joints) unsaid(d *design.Duct, on map[*design.Duct][]*design.Duct, end *string, key string) error {
	if end == nil && len(on[d]) == 0 {
		return &document.Missing{Ref: d.Ref, Key: key}
	}
	return nil
}

// joinedTo tells whether a duct leads to or from a ventilator, through other ducts
// too. Where none is found and an end of a duct on the way is not said, it could.
func (f *Facts) joinedTo(duct *design.Duct, unit *design.Ventilator) (bool, error) {
	r := f.joints().reach(duct)
	if r.ends[unit.ID] {
		return true, nil
	}
	return false, r.missing
}

// reach follows all ducts that are joined with one.
func (j *joints) reach(duct *design.Duct) *reach {
	if r, known := j.reached[duct]; known {
		return r
	}
	r := &reach{ends: map[string]bool{}}
	list := []*design.Duct{duct}
	j.reached[duct] = r
	for i := 0; i < len(list); i++ {
		d := list[i]
		for _, end := range []*string{d.From, d.To} {
			if end != nil {
				r.ends[*end] = true
			}
		}
		r.missing = cmp.Or(r.missing, j.unsaid(d, j.before, d.From, "from"), j.unsaid(d, j.after, d.To, "to"))
		for _, other := range slices.Concat(j.before[d], j.after[d]) {
			if j.reached[other] == nil {
				j.reached[other] = r
				list = append(list, other)
			}
		}
	}
	return r
}
