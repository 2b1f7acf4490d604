package rules

import (
	"sync"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// Compiled is a rule ready to run, with what it inherits. A pack is read into these:
// the rest is filled in when it is laid over its parents.
type Compiled struct {
	Rule

	Pack  string            // id of the pack that holds it
	Given map[string]string // parts that another pack changed, and that pack's id

	Reached    []string // overrides of this pack that can alter its outcomes, such as `limit "height"`
	Superseded []Sample // samples of the parent, of a rule that an override reaches

	inheritedSamples int // how many of the samples are the parent's

	ranges  []Each            // as Rule.Each lists them
	base    string            // default base design of its samples
	written origin            // where it stands
	changed map[string]origin // where the texts stand that other packs changed, by key
	names   expression.Names  // that its conditions were compiled with
	uses    *uses
	each    []ranged
	when    *expression.Condition // nil: always
	require *expression.Condition
	judging *expression.Condition // of judge_when; nil: never
	says    *expression.Template
	remedy  *expression.Template
}

// ranged is one name of a rule and the list it ranges over.
type ranged struct {
	name string
	list *expression.List
}

// origin is the table and file in which an expression stands.
type origin struct {
	ref  document.Ref
	file string
}

// language is built once: it depends on the program alone.
var language = sync.OnceValue(func() *expression.Language {
	l, err := expression.New(facts.Vocabulary())
	if err != nil {
		panic("the vocabulary of rules is broken: " + err.Error()) // a defect of the program, found by every test
	}
	return l
})

// begin makes a rule of a pack one that can be compiled.
func (c *Compiled) begin(pack *Pack, bases map[string]Owned[*Base]) {
	c.Pack, c.base = pack.Head.ID, pack.Head.DefaultBase
	c.Given, c.uses = map[string]string{}, &uses{}
	c.ranges, c.written = c.Rule.Each(), origin{c.Ref, pack.Name}
	c.Samples = settled(c.Samples, home{bases, pack.Head.DefaultBase, pack})
	c.Equivalents = said(c.Equivalents, pack)
}

// place is where a text of the rule stands.
func (c *Compiled) place(key string) origin {
	if place, ok := c.changed[key]; ok {
		return place
	}
	return c.written
}

// inherited is the rule as a pack finds it that extends its pack.
func (c *Compiled) inherited() *Compiled {
	clone := *c
	clone.Reached, clone.Superseded, clone.inheritedSamples = nil, nil, len(c.Samples)
	clone.uses = &uses{}
	return &clone
}

// Each lists the names of the rule and what they range over, in the order of the
// file: a later one may depend on an earlier one.
func (c *Compiled) Each() []Each { return c.ranges }

// LimitsUsed names the limits that the rule compares with or prints, sorted.
func (c *Compiled) LimitsUsed() []string { return c.used().limits }

// TablesUsed names the tables that the rule looks up, sorted.
func (c *Compiled) TablesUsed() []string { return c.used().tables }

// Distances names the functions that the rule's conditions measure with on the
// site, such as "distance" and "rise", sorted.
func (c *Compiled) Distances() []string { return c.used().distances }

// decisive are the names that an outcome depends on.
func (c *Compiled) decisive(kind named) []string {
	return namesIn(kind, append(c.collections(), c.When, c.Require, c.JudgeWhen)...)
}

// texts are all that the rule says in the language of expressions.
func (c *Compiled) texts() []string {
	return append(c.collections(), c.When, c.Require, c.JudgeWhen, c.Says, c.Remedy)
}

func (c *Compiled) collections() []string {
	list := make([]string, 0, len(c.Each())+5) // with room for the other texts
	for _, each := range c.Each() {
		list = append(list, each.Collection)
	}
	return list
}
