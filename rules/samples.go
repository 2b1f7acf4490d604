package rules

import (
	"fmt"
	"maps"
	"slices"
)

// home is where a sample was written: the base designs that its pack knows stay
// its own, whatever a local pack gives the same name to.
type home struct {
	bases map[string]Owned[*Base]
	usual string // base design of a sample that names none
	pack  *Pack
}

// addSamples adds samples of a pack to the rule.
func (c *Compiled) addSamples(samples []Sample, from home) {
	c.Given["sample"] = from.pack.Head.ID
	if from.usual == "" {
		from.usual = c.base
	}
	c.Samples = append(slices.Clip(c.Samples), settled(samples, from)...)
}

func settled(samples []Sample, from home) []Sample {
	list := slices.Clone(samples)
	for i := range list {
		list[i].written = from
	}
	return list
}

// File is the name of the pack file that holds the sample.
func (s *Sample) File() string { return s.written.pack.Name }

// Pack is the id of the pack that holds the sample.
func (s *Sample) Pack() string { return s.written.pack.Head.ID }

// Varies gives the base design that the sample varies, and its name in the pack
// that holds the sample.
func (s *Sample) Varies() (name string, base *Base) {
	return s.base(), s.written.bases[s.base()].Part
}

// base names the base design of the sample.
func (s *Sample) base() string {
	if s.Base != "" {
		return s.Base
	}
	return s.written.usual
}

// addSamples adds the [[sample]] tables of a pack to the rules of its parents.
func (e *Effective) addSamples(pack *Pack, report *mistakes) {
	for _, s := range pack.Samples {
		r := e.Rule(s.Rule)
		switch {
		case r == nil:
			report.add(s.At("rule"), s.KeyPath("rule"), e.unknownRule(s.Rule, pack), e.nearRule(s.Rule, report))
		case r.Pack == pack.Head.ID:
			report.add(s.At("rule"), s.KeyPath("rule"), fmt.Sprintf("rule %q is this pack's own", s.Rule), "give its samples as [[rule.sample]]")
		default:
			r.Given = maps.Clone(r.Given)
			r.addSamples([]Sample{s.Sample}, home{e.Bases, pack.Head.DefaultBase, pack})
		}
	}
}

// mostSampled bounds the designs that the samples of a rule make, in bytes: all of
// them are held while the rule is changed.
const mostSampled = 1 << 20

// size is about how many bytes the design of the sample has.
func (s *Sample) size() int {
	if base := s.written.bases[s.base()].Part; base != nil {
		return len(base.Design)
	}
	return 0
}

// checkSamples refuses samples of this pack that cannot show anything.
func (e *Effective) checkSamples(pack *Pack, report *mistakes) {
	for _, r := range e.Rules {
		named := map[string]bool{}
		room := mostSampled
		for i := range r.Samples {
			s := &r.Samples[i]
			if s.written.pack != pack {
				continue
			}
			r.checkSample(s, e.unsettled, report)
			if room -= s.size(); room < 0 {
				report.add(s.Position(), s.KeyPath("name"), fmt.Sprintf("the designs of the samples of rule %q are larger than %d bytes together", r.ID, mostSampled),
					"vary a smaller base design, or leave out samples")
				break
			}
			if named[s.Name] {
				report.add(s.At("name"), s.KeyPath("name"), fmt.Sprintf("rule %q has a sample %q already", r.ID, s.Name), "")
			}
			named[s.Name] = true
		}
	}
}

func (c *Compiled) checkSample(s *Sample, unsettled map[string][2]string, report *mistakes) {
	switch name := s.base(); {
	case name == "":
		report.add(s.Position(), s.KeyPath("base"), fmt.Sprintf("the sample %q has no base design", s.Name), "name one in base, or in default_base of [pack]")
	case s.written.bases[name].Part == nil:
		report.add(s.At("base"), s.KeyPath("base"), fmt.Sprintf("no base design %q", name), report.near(name, sortedKeys(s.written.bases)))
	}
	if of, both := unsettled[s.base()]; both {
		report.add(s.At("base"), s.KeyPath("base"), fmt.Sprintf("packs %q and %q both hold a base design %q", of[0], of[1], s.base()),
			"say which base design holds by giving it in this pack")
	}
	switch {
	case s.Expect == "fail" && c.Judge:
		report.add(s.At("expect"), s.KeyPath("expect"), fmt.Sprintf("rule %q never fails, since a person must judge it; expected review", c.ID), "")
	case s.Expect == "notApplicable" && c.When == "" && len(c.Each()) == 0:
		report.add(s.At("expect"), s.KeyPath("expect"), fmt.Sprintf("rule %q applies to every design: it has no when and no each", c.ID), "")
	}
}
