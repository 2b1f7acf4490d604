package impact

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"maps"
	"slices"

	"github.com/ventlint/ventlint/rules"
)

// Document is a tally as it is reported: in a fixed order, the same for the same
// designs however the work was spread.
type Document struct {
	Format  string              `json:"format"` // "ventlint-impact"
	Version int                 `json:"version"`
	From    PackUsed            `json:"from"`
	To      PackUsed            `json:"to"`
	Margin  float64             `json:"margin_percent"` // within which a pass is narrow
	Longest int                 `json:"longest_list"`
	Part    *Part               `json:"part,omitempty"` // nil for the whole
	Set     Set                 `json:"set"`
	Judged  int                 `json:"designs_judged"`
	Designs []Count             `json:"designs"`
	Rules   []RuleCounts        `json:"rules"`
	Changed List[ChangedDesign] `json:"changed_designs"`
	Failed  List[FailedDesign]  `json:"failed_designs"`
}

const (
	format  = "ventlint-impact"
	version = 1
)

// PackUsed names a pack of the comparison.
type PackUsed struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Edition string `json:"edition,omitempty"`
	Digest  string `json:"digest"`
}

// Part says that a document holds every n-th design only.
type Part struct {
	Number int `json:"number"` // from 1
	Of     int `json:"of"`
}

// Set names the designs of the whole, of which a part holds some.
type Set struct {
	Designs int    `json:"designs"`
	Digest  string `json:"digest"` // of their names in order
}

// Count is how many designs went from one state to another.
type Count struct {
	From    State `json:"from"`
	To      State `json:"to"`
	Designs int   `json:"designs"`
}

// RuleCounts is what became of one rule.
type RuleCounts struct {
	Rule    string  `json:"rule"`
	Title   string  `json:"title"`
	Cases   []Count `json:"cases"`
	Near    int     `json:"near_misses"` // designs that pass narrowly under the second pack
	Nearest *Near   `json:"nearest,omitempty"`
}

// List is the first entries of a list by the names of their designs, and how many
// there are.
type List[T any] struct {
	Count  int `json:"count"`
	Listed []T `json:"listed"`
}

// SetOf names a set of designs by their names.
func SetOf(names []string) Set {
	sum := sha256.New()
	for _, name := range names {
		sum.Write([]byte(name + "\x00"))
	}
	return Set{len(names), hex.EncodeToString(sum.Sum(nil))}
}

// Document gives a tally of the comparison of some designs; part is nil where
// they are all of the set.
func (c *Comparison) Document(t *Tally, set Set, part *Part) *Document {
	d := &Document{Format: format, Version: version, From: packUsed(c.from), To: packUsed(c.to),
		Margin: round(c.margin) * 100, Longest: t.longest, Part: part, Set: set}
	d.fill(t)
	return d
}

func packUsed(e *rules.Effective) PackUsed {
	return PackUsed{e.Head.ID, e.Head.Title, e.Head.Edition, e.Digest()}
}

// fill writes the counts of a tally.
func (d *Document) fill(t *Tally) {
	d.Judged = t.Judged()
	d.Designs = counts(t.designs)
	d.Rules = []RuleCounts{}
	for _, id := range slices.Sorted(maps.Keys(t.rules)) {
		r := t.rules[id]
		d.Rules = append(d.Rules, RuleCounts{id, r.title, counts(r.cases), r.near, r.nearest})
	}
	d.Changed = list(t.changed)
	d.Failed = list(t.failed)
}

func counts(of map[change]int) []Count {
	list := []Count{}
	for c, n := range of {
		list = append(list, Count{c.from, c.to, n})
	}
	slices.SortFunc(list, func(a, b Count) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To)) })
	return list
}

func list[T named](of listed[T]) List[T] { return List[T]{of.count, append([]T{}, of.entries...)} }

// tally reads the counts back.
func (d *Document) tally() *Tally {
	t := &Tally{longest: d.Longest, designs: changes(d.Designs), rules: map[string]*ruleTally{}}
	for _, r := range d.Rules {
		t.rules[r.Rule] = &ruleTally{title: r.Title, cases: changes(r.Cases), near: r.Near, nearest: r.Nearest}
	}
	t.changed = listed[ChangedDesign]{d.Changed.Count, d.Changed.Listed}
	t.failed = listed[FailedDesign]{d.Failed.Count, d.Failed.Listed}
	return t
}

func changes(list []Count) map[change]int {
	m := map[change]int{}
	for _, c := range list {
		m[change{c.From, c.To}] += c.Designs
	}
	return m
}

// Fires tells whether the rule asked something of a design under either pack.
func (r RuleCounts) Fires() bool {
	return slices.ContainsFunc(r.Cases, func(c Count) bool { return c.From.fires() || c.To.fires() })
}

// Passes tells whether the rule had something to say to a design, and found it
// good.
func (r RuleCounts) Passes() bool {
	return slices.ContainsFunc(r.Cases, func(c Count) bool { return c.From == State(rules.Pass) || c.To == State(rules.Pass) })
}

// Changes lists the counts that went from one state to another.
func Changes(list []Count) []Count {
	return slices.DeleteFunc(slices.Clone(list), func(c Count) bool { return c.From == c.To })
}

// Decided is how many designs some rule of either pack had something to say
// about.
func (d *Document) Decided() int {
	n := 0
	for _, c := range d.Designs {
		if c.From != Nothing || c.To != Nothing {
			n += c.Designs
		}
	}
	return n
}
