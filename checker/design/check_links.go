package design

import (
	"slices"

	"github.com/ventlint/ventlint/checker/document"
)

// links finds the things that the links of a design lead to.
func (c *checker) links() {
	d := c.design
	for _, p := range c.placed {
		resolve(c, p.ref, "wall", p.where.Wall)
	}
	for _, v := range d.Ventilators {
		resolve(c, v.Ref, "room", v.Room)
	}
	for _, t := range d.Terminals {
		resolve(c, t.Ref, "room", t.Room)
	}
	for _, a := range d.Appliances {
		resolve(c, a.Ref, "room", a.Room)
	}
	if d.Commissioning != nil {
		for _, m := range d.Commissioning.Measured {
			resolve(c, m.Ref, "terminal", m.Terminal)
		}
	}
}

// resolve finds the thing that one link leads to; key is also the word for what
// it must be.
func resolve[T any](c *checker, of document.Ref, key string, link *Link[T]) {
	if link == nil {
		return
	}
	fits := func(thing any) bool { _, ok := thing.(*T); return ok }
	if thing := c.target(of, key, link.ID, "a "+key, fits); thing != nil {
		link.To = thing.(*T)
	}
}

// references looks up the ids that may lead to things of several kinds.
func (c *checker) references() {
	d := c.design
	for _, o := range d.Openings {
		c.refer(o.Ref, "serves", o.Serves, "a ventilator or appliance", moves)
	}
	for _, u := range d.Ducts {
		c.refer(u.Ref, "from", u.From, ductEnd, joins)
		c.refer(u.Ref, "to", u.To, ductEnd, joins)
	}
	for _, a := range d.Appliances {
		c.refer(a.Ref, "connected_to", a.ConnectedTo, "a ventilator", isVentilator)
	}
	for _, v := range d.Variances {
		c.refer(v.Ref, "subject", v.Subject, "one of its parts", func(any) bool { return true })
	}
}

const ductEnd = "an opening, ventilator, terminal, appliance or duct"

func isVentilator(thing any) bool { _, ok := thing.(*Ventilator); return ok }

// moves tells whether air may pass a thing on its way to an opening.
func moves(thing any) bool {
	switch thing.(type) {
	case *Ventilator, *Appliance:
		return true
	}
	return false
}

// joins tells whether a duct may begin or end at a thing.
func joins(thing any) bool {
	switch thing.(type) {
	case *Opening, *Terminal, *Duct:
		return true
	}
	return moves(thing)
}

func (c *checker) refer(of document.Ref, key string, id *string, noun string, fits func(any) bool) {
	if id != nil {
		c.target(of, key, *id, noun, fits)
	}
}

// target finds a thing by its id. It reports an id that leads nowhere, or to a
// thing that does not fit, and then gives nil.
func (c *checker) target(of document.Ref, key, id, noun string, fits func(any) bool) any {
	thing := c.byID[id]
	switch {
	case thing == nil:
		c.report(of, key, c.near(id, c.idsOf(noun, fits)), "found %.64q, which is no id of this design, expected the id of %s", id, noun)
		return nil
	case !fits(thing):
		c.report(of, key, c.near(id, c.idsOf(noun, fits)), "found the id of %s, expected the id of %s", Label(thing), noun)
		return nil
	}
	return thing
}

// idsOf lists the ids of the things that fit a noun, in alphabetical order.
func (c *checker) idsOf(noun string, fits func(any) bool) []string {
	if ids, ok := c.byNoun[noun]; ok {
		return ids
	}
	var ids []string
	for id, thing := range c.byID {
		if fits(thing) {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	c.byNoun[noun] = ids
	return ids
}
