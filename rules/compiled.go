package rules

import (
	"errors"
	"regexp"
	"slices"
	"sync"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
	"github.com/ventlint/ventlint/rules/facts"
)

// Compiled is a rule ready to run, with what it inherits.
type Compiled struct {
	Rule

	Pack  string            // id of the pack that holds it
	Given map[string]string // parts that another pack changed, and that pack's id

	Reached    []string // overrides of this pack that can alter its outcomes, such as `limit "height"`
	Superseded []Sample // samples of the parent, of a rule that an override reaches

	inheritedSamples int // how many of the samples are the parent's

	base    string            // default base design of its samples
	places  map[string]origin // expressions, by key
	names   expression.Names  // that its conditions were compiled with
	uses    uses
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

func newCompiled(r *Rule, pack *Pack, bases map[string]Owned[*Base]) *Compiled {
	c := &Compiled{Rule: *r, Pack: pack.Head.ID, base: pack.Head.DefaultBase, Given: map[string]string{}, places: map[string]origin{}}
	c.Samples = settled(r.Samples, home{bases, pack.Head.DefaultBase, pack})
	c.Equivalents = said(r.Equivalents, pack)
	for _, key := range []string{"when", "require", "judge_when", "says", "remedy", "each"} {
		c.places[key] = origin{r.Ref, pack.Name}
	}
	return c
}

// inherited is the rule as a pack finds it that extends its pack.
func (c *Compiled) inherited() *Compiled {
	clone := *c
	clone.Reached, clone.Superseded, clone.inheritedSamples = nil, nil, len(c.Samples)
	return &clone
}

// compile compiles every rule of the pack; all mistakes are reported at once.
func (e *Effective) compile(report *mistakes) {
	names := expression.Names{Limits: map[string]any{}, Tables: map[string]expression.Table{}}
	for name, limit := range e.Limits {
		names.Limits[name] = nil
		if v := limit.Part.Value; v != nil {
			names.Limits[name] = v.V
		}
	}
	for name, table := range e.Tables {
		names.Tables[name] = table.Part
	}
	for _, r := range e.Rules {
		if !r.rests(e.broken) {
			r.compile(names, e, report)
		}
	}
}

// rests tells whether the rule looks up one of some tables.
func (c *Compiled) rests(tables []string) bool {
	for _, name := range namesIn(tableName, c.texts()...) {
		if slices.Contains(tables, name) {
			return true
		}
	}
	return false
}

func (c *Compiled) compile(names expression.Names, e *Effective, report *mistakes) {
	l := language()
	c.each = nil
	for _, each := range c.Each() {
		list, err := l.List(each.Collection, names)
		if err != nil {
			c.reportEach(each, err, e, report)
			return
		}
		c.each = append(c.each, ranged{each.Name, list})
		names.Variables = append(names.Variables[:len(c.each)-1:len(c.each)-1], expression.Variable{Name: each.Name, Type: list.Elem()})
	}
	c.names = names
	c.findUses()
	var err error
	if c.When != "" {
		c.when, err = l.Condition(c.When, names)
		c.report("when", err, e, report)
	}
	c.require, err = l.Condition(c.Require, names)
	c.report("require", err, e, report)
	c.compileJudging(l, e, report)
	c.says, err = l.Template(c.Says, names)
	c.report("says", err, e, report)
	c.remedy, err = l.Template(c.Remedy, names)
	c.report("remedy", err, e, report)
}

func (c *Compiled) compileJudging(l *expression.Language, e *Effective, report *mistakes) {
	c.judging = nil
	if c.JudgeWhen == "" {
		return
	}
	var err error
	c.judging, err = l.Condition(c.JudgeWhen, c.names)
	c.report("judge_when", err, e, report)
	if c.Judge {
		c.report("judge_when", errJudgedTwice, e, report)
	}
}

var errJudgedTwice = errors.New("found beside judge = true, which leaves every failure to a person, expected one of them")

// uses is what a rule names in its texts: found once, since reports ask for each
// result.
type uses struct {
	limits, tables []string // decisive or printed
	distances      []string // functions that measure on the site, of when and require
}

var (
	limitName = regexp.MustCompile(`\blimit\.([A-Za-z_][A-Za-z0-9_]*)`)
	tableName = regexp.MustCompile(`\btable\.([A-Za-z_][A-Za-z0-9_]*)`)
	measuring = regexp.MustCompile(`\b(distance|horizontal|rise|clear_height|taut)\(`)
)

func (c *Compiled) findUses() {
	c.uses = uses{
		limits:    namesIn(limitName, c.texts()...),
		tables:    namesIn(tableName, c.texts()...),
		distances: namesIn(measuring, c.When, c.Require),
	}
}

// LimitsUsed names the limits that the rule compares with or prints, sorted.
func (c *Compiled) LimitsUsed() []string { return c.uses.limits }

// TablesUsed names the tables that the rule looks up, sorted.
func (c *Compiled) TablesUsed() []string { return c.uses.tables }

// Distances names the functions that the rule's conditions measure with on the
// site, such as "distance" and "rise", sorted.
func (c *Compiled) Distances() []string { return c.uses.distances }

// decisive are the names that an outcome depends on.
func (c *Compiled) decisive(pattern *regexp.Regexp) []string {
	return namesIn(pattern, append(c.collections(), c.When, c.Require, c.JudgeWhen)...)
}

// texts are all that the rule says in the language of expressions.
func (c *Compiled) texts() []string {
	return append(c.collections(), c.When, c.Require, c.JudgeWhen, c.Says, c.Remedy)
}

func (c *Compiled) collections() []string {
	var list []string
	for _, each := range c.Each() {
		list = append(list, each.Collection)
	}
	return list
}

func namesIn(pattern *regexp.Regexp, texts ...string) []string {
	seen := map[string]bool{}
	for _, text := range texts {
		for _, m := range pattern.FindAllStringSubmatch(text, -1) {
			seen[m[1]] = true
		}
	}
	return sortedKeys(seen)
}
