package facts

import (
	"cmp"
	"slices"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
)

// run is the sections that the same air passes one after the other, in its
// direction: from an end, the unit or a branching to the next. A duct whose end is
// not said, and that no other duct names, may go on: its run is not known.
func (f *Facts) run(duct *design.Duct) ([]*design.Duct, error) {
	list := []*design.Duct{duct}
	for {
		before, err := f.next(list[0], f.upstream, f.downstream)
		if err != nil {
			return nil, err
		}
		if before == nil || slices.Contains(list, before) {
			break
		}
		list = slices.Insert(list, 0, before)
	}
	for {
		last := list[len(list)-1]
		after, err := f.next(last, f.downstream, f.upstream)
		if err != nil {
			return nil, err
		}
		if after == nil || slices.Contains(list, after) {
			return list, nil
		}
		list = append(list, after)
	}
}

// joinedTo tells whether a duct leads to or from a ventilator, through other ducts
// too. Where none is found and an end of a duct on the way is not said, it could.
func (f *Facts) joinedTo(duct *design.Duct, unit *design.Ventilator) (bool, error) {
	var missing error
	list := []*design.Duct{duct}
	for i := 0; i < len(list); i++ {
		if is(list[i].From, unit.ID) || is(list[i].To, unit.ID) {
			return true, nil
		}
		for _, side := range []joined{f.upstream, f.downstream} {
			others, err := side(list[i])
			missing = cmp.Or(missing, err)
			for _, other := range others {
				if !slices.Contains(list, other) {
					list = append(list, other)
				}
			}
		}
	}
	return false, missing
}

// joined are the ducts at one end of a duct, an error where the end is not said.
type joined func(*design.Duct) ([]*design.Duct, error)

func (f *Facts) upstream(d *design.Duct) ([]*design.Duct, error) {
	return f.joined(d, d.From, "from", func(other *design.Duct) *string { return other.To })
}

func (f *Facts) downstream(d *design.Duct) ([]*design.Duct, error) {
	return f.joined(d, d.To, "to", func(other *design.Duct) *string { return other.From })
}

func (f *Facts) joined(d *design.Duct, end *string, key string, facing func(*design.Duct) *string) ([]*design.Duct, error) {
	var list []*design.Duct
	for _, other := range f.Design.Ducts {
		if other != d && (is(facing(other), d.ID) || is(end, other.ID)) {
			list = append(list, other)
		}
	}
	if len(list) == 0 && end == nil {
		return nil, &document.Missing{Ref: d.Ref, Key: key}
	}
	return list, nil
}

// next is the one duct that goes on from an end and that nothing else joins there;
// nil where the run ends.
func (f *Facts) next(d *design.Duct, on, back joined) (*design.Duct, error) {
	ahead, err := on(d)
	if err != nil || len(ahead) != 1 {
		return nil, err
	}
	behind, err := back(ahead[0])
	if err != nil || len(behind) != 1 {
		return nil, err
	}
	return ahead[0], nil
}
