package design

import "slices"

// ducts refuses ducts of two shapes, and runs of ducts that lead back to where
// they begin.
func (c *checker) ducts() {
	next := map[*Duct][]*Duct{}
	for _, u := range c.design.Ducts {
		c.oneShape(u.Ref)
		if u.From != nil && u.To != nil && *u.From == *u.To {
			c.report(u.Ref, "to", "", "found %q at both ends, expected two different things", *u.To)
			continue
		}
		if to, ok := c.ductAt(u.To); ok {
			next[u] = append(next[u], to)
		}
		if from, ok := c.ductAt(u.From); ok {
			next[from] = append(next[from], u)
		}
	}
	if u := circular(c.design.Ducts, next); u != nil {
		c.report(u.Ref, "id", "", "%s leads back to itself, expected air that ends somewhere", Label(u))
	}
}

func (c *checker) ductAt(id *string) (*Duct, bool) {
	if id == nil {
		return nil, false
	}
	u, ok := c.byID[*id].(*Duct)
	return u, ok
}

// circular finds a duct from which the air comes back to it; nil when there is
// none. It takes away ducts that lead nowhere until none is left, and then
// follows the air from any that stays.
func circular(ducts []*Duct, next map[*Duct][]*Duct) *Duct {
	before, left := map[*Duct][]*Duct{}, map[*Duct]int{}
	var done []*Duct
	for _, u := range ducts {
		for _, to := range next[u] {
			before[to] = append(before[to], u)
		}
		if left[u] = len(next[u]); left[u] == 0 {
			done = append(done, u)
		}
	}
	for len(done) > 0 {
		u := done[len(done)-1]
		done = done[:len(done)-1]
		for _, from := range before[u] {
			if left[from]--; left[from] == 0 {
				done = append(done, from)
			}
		}
	}
	stays := func(u *Duct) bool { return left[u] > 0 }
	first := slices.IndexFunc(ducts, stays)
	if first < 0 {
		return nil
	}
	seen := map[*Duct]bool{}
	u := ducts[first]
	for ; !seen[u]; u = next[u][slices.IndexFunc(next[u], stays)] {
		seen[u] = true
	}
	return u
}
