package expression

// pile is a collection that grows by laying piles together. They are shared, not
// copied, so that a value used many times costs no more than once.
type pile[T any] struct {
	items    []T
	piles    []*pile[T]
	opposite bool // all in it is meant the other way round
}

func pileOf[T any](items ...T) *pile[T] { return &pile[T]{items: items} }

// together lays piles together; nil ones are empty.
func together[T any](piles ...*pile[T]) *pile[T] {
	var last *pile[T]
	count := 0
	for _, p := range piles {
		if p != nil {
			last = p
			count++
		}
	}
	if count <= 1 {
		return last
	}
	full := make([]*pile[T], 0, count)
	for _, p := range piles {
		if p != nil {
			full = append(full, p)
		}
	}
	return &pile[T]{piles: full}
}

// reversed gives the same pile, meant the other way round.
func (p *pile[T]) reversed() *pile[T] {
	if p == nil {
		return nil
	}
	return &pile[T]{piles: []*pile[T]{p}, opposite: true}
}

// visit is a pile as met on one way to it.
type visit[T any] struct {
	pile     *pile[T]
	opposite bool
}

// each calls f for every item, in order, once for each way it is meant.
func (p *pile[T]) each(f func(item T, opposite bool)) {
	if p != nil {
		p.walk(false, &once[visit[T]]{}, f)
	}
}

func (p *pile[T]) walk(opposite bool, seen *once[visit[T]], f func(item T, opposite bool)) {
	if !seen.first(visit[T]{p, opposite}) {
		return
	}
	if p.opposite {
		opposite = !opposite
	}
	for _, item := range p.items {
		f(item, opposite)
	}
	for _, inner := range p.piles {
		inner.walk(opposite, seen, f)
	}
}
