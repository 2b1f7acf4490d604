package expression

// loop asks or does the same for every element of a list.
type loop struct {
	part
	name  string // all, any, none, one, count, filter, map
	list  term
	body  term
	depth int // how many loops are around it
}

// element is `#`, the element that a loop is at.
type elementTerm struct {
	part
	depth int
}

func (t *elementTerm) value(r *run) result { return known(r.elements[t.depth]) }

// elements runs f for every element while it says to go on. The lacks and reads are
// those of the list itself.
func (t *loop) elements(r *run, f func(element any) (on bool)) (*pile[lack], *pile[Read]) {
	var list result
	reads := r.apart(func() { list = t.list.value(r) })
	if list.lacks != nil {
		return list.lacks, reads
	}
	r.elements = append(r.elements[:t.depth], nil)
	for i := range length(list.value) {
		if err := r.scope.spend(1); err != nil {
			panic(stopped{err})
		}
		r.elements[t.depth] = element(list.value, i)
		on := f(r.elements[t.depth])
		r.elements = r.elements[:t.depth+1]
		if !on {
			break
		}
	}
	r.elements = r.elements[:t.depth]
	return nil, reads
}

func (t *loop) value(r *run) result {
	switch t.name {
	case "all", "any", "none":
		return r.plainly(func() result { return t.judge(r).result() })
	case "map":
		return t.mapped(r)
	}
	yes, unknown, lacks := t.sort(r)
	switch {
	case t.name == "one" && len(yes) > 1:
		return known(false)
	case lacks != nil:
		return result{lacks: lacks}
	case t.name == "one":
		return known(len(yes) == 1 && unknown == 0)
	case t.name == "count":
		return known(float64(len(yes)))
	}
	return known(yes)
}

func (t *loop) mapped(r *run) result {
	values := []any{}
	var lacks []*pile[lack]
	ofList, _ := t.elements(r, func(any) bool {
		v := t.body.value(r)
		values, lacks = append(values, v.value), append(lacks, v.lacks)
		return true
	})
	return unless(together(append(lacks, ofList)...), values)
}

// sort finds the elements for which the body is true, and counts those for
// which it is unknown.
func (t *loop) sort(r *run) (yes []any, unknown int, lacks *pile[lack]) {
	yes = []any{}
	var all []*pile[lack]
	ofList, _ := t.elements(r, func(element any) bool {
		v := r.plainly(func() result { return r.judge(t.body).result() })
		switch {
		case v.lacks != nil:
			unknown++
			all = append(all, v.lacks)
		case v.value.(bool):
			yes = append(yes, element)
		}
		return true
	})
	return yes, unknown, together(append(all, ofList)...)
}

// judge joins the verdicts of the elements. Without elements, and for the other
// loops, the loop stands for itself.
func (t *loop) judge(r *run) verdict {
	if t.name != "all" && t.name != "any" && t.name != "none" {
		return r.whole(t, func() result { return t.value(r) })
	}
	decides := True
	if t.name == "all" {
		decides = False
	}
	v, ok := t.joined(r, decides)
	if !ok {
		return r.whole(t, func() result { return unless(v.lacks, t.name != "any") })
	}
	if t.name == "none" {
		return v.reversed()
	}
	return v
}

// joined is the verdict of all elements together; ok is false where the list has
// none, or is not known.
func (t *loop) joined(r *run, decides Truth) (v verdict, ok bool) {
	if r.plain() {
		return t.settled(r, decides)
	}
	var of []verdict
	lacks, reads := t.elements(r, func(any) bool { of = append(of, r.judge(t.body)); return true })
	if lacks != nil || len(of) == 0 {
		return verdict{lacks: lacks}, false
	}
	v = decide(decides, of)
	v.reads = together(reads, v.reads)
	return v, true
}

// settled is joined without reasons, and goes no further than it must.
func (t *loop) settled(r *run, decides Truth) (v verdict, ok bool) {
	var unknown []*pile[lack]
	lacks, _ := t.elements(r, func(any) bool {
		v, ok = r.judge(t.body), true
		if v.truth == Unknown {
			unknown = append(unknown, v.lacks)
		}
		return v.truth != decides
	})
	if ok && v.truth != decides && len(unknown) > 0 {
		v = verdict{truth: Unknown, lacks: together(unknown...)}
	}
	if !ok {
		v.lacks = lacks
	}
	return v, ok
}
