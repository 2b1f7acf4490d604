package rules

import (
	"fmt"
	"regexp"
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

	base    string            // default base design of its samples
	places  map[string]origin // expressions, by key
	names   expression.Names  // that its conditions were compiled with
	uses    uses
	each    []ranged
	when    *expression.Condition // nil: always
	require *expression.Condition
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

func newCompiled(r *Rule, pack *Pack) *Compiled {
	c := &Compiled{Rule: *r, Pack: pack.Head.ID, base: pack.Head.DefaultBase, Given: map[string]string{}, places: map[string]origin{}}
	for _, key := range []string{"when", "require", "says", "remedy", "each"} {
		c.places[key] = origin{r.Ref, pack.Name}
	}
	return c
}

// change lays a [[change]] of a pack over the rule.
func (c *Compiled) change(by *Change, pack *Pack) {
	given := map[string]string{}
	for k, v := range c.Given {
		given[k] = v
	}
	places := map[string]origin{}
	for k, v := range c.places {
		places[k] = v
	}
	c.Given, c.places = given, places
	text := func(key string, to *string, from *string) {
		if from != nil {
			*to = *from
			c.Given[key] = pack.Head.ID
			c.places[key] = origin{by.Ref, pack.Name}
		}
	}
	text("title", &c.Title, by.Title)
	text("when", &c.When, by.When)
	text("require", &c.Require, by.Require)
	text("says", &c.Says, by.Says)
	text("remedy", &c.Remedy, by.Remedy)
	text("caution", &c.Caution, by.Caution)
	if by.Due != nil {
		c.Due, c.Given["due"] = *by.Due, pack.Head.ID
	}
	if by.Level != nil {
		c.Level, c.Given["level"] = *by.Level, pack.Head.ID
	}
	if by.Judge != nil {
		c.Judge, c.Given["judge"] = *by.Judge, pack.Head.ID
	}
	if len(by.Basis) > 0 {
		c.Basis, c.Given["basis"] = by.Basis, pack.Head.ID
	}
	if len(by.Samples) > 0 {
		c.Samples, c.Given["sample"] = by.Samples, pack.Head.ID
	}
}

// compile compiles every rule of the pack; all mistakes are reported at once.
func (e *Effective) compile(report *mistakes) {
	names := expression.Names{Limits: map[string]any{}, Tables: map[string]expression.Table{}}
	for _, name := range sortedKeys(e.Limits) {
		names.Limits[name] = nil
		if v := e.Limits[name].Part.Value; v != nil {
			names.Limits[name] = v.V
		}
	}
	for _, name := range sortedKeys(e.Tables) {
		table := e.Tables[name]
		if table.Part.values == nil {
			report.in(table.fileIn(e), func(m *mistakes) { table.Part.prepare(m) })
		}
		if table.Part.values != nil {
			names.Tables[name] = table.Part
		}
	}
	if report.count() > 0 {
		return
	}
	for _, r := range e.Rules {
		r.compile(names, report)
	}
}

func (o Owned[T]) fileIn(e *Effective) string {
	for _, f := range e.Files {
		if f.Head.ID == o.Pack {
			return f.Name
		}
	}
	return ""
}

func (c *Compiled) compile(names expression.Names, report *mistakes) {
	l := language()
	c.each = nil
	for _, e := range c.Each() {
		list, err := l.List(e.Collection, names)
		if err != nil {
			c.reportEach(e, err, report)
			return
		}
		c.each = append(c.each, ranged{e.Name, list})
		names.Variables = append(names.Variables[:len(c.each)-1:len(c.each)-1], expression.Variable{Name: e.Name, Type: list.Elem()})
	}
	c.names = names
	c.findUses()
	var err error
	if c.When != "" {
		c.when, err = l.Condition(c.When, names)
		c.report("when", err, report)
	}
	c.require, err = l.Condition(c.Require, names)
	c.report("require", err, report)
	c.says, err = l.Template(c.Says, names)
	c.report("says", err, report)
	c.remedy, err = l.Template(c.Remedy, names)
	c.report("remedy", err, report)
}

func (c *Compiled) report(key string, err error, report *mistakes) {
	if err == nil {
		return
	}
	place := c.places[key]
	at, hint, message := place.ref.At(key), "", err.Error()
	if e, ok := err.(*expression.Error); ok {
		message, hint = e.Message, e.Hint
		if text, ok := place.ref.Text(key); ok {
			at = text.Position(e.Offset)
		}
	}
	report.in(place.file, func(m *mistakes) {
		m.add(at, place.ref.KeyPath(key), fmt.Sprintf("rule %q, %s: %s", c.ID, key, message), hint)
	})
}

func (c *Compiled) reportEach(e Each, err error, report *mistakes) {
	place := c.places["each"]
	message, hint := err.Error(), ""
	if e, ok := err.(*expression.Error); ok {
		message, hint = e.Message, e.Hint
	}
	report.in(place.file, func(m *mistakes) {
		m.add(place.ref.At("each"), place.ref.KeyPath("each"), fmt.Sprintf("rule %q, each %s: %s", c.ID, e.Name, message), hint)
	})
}

// uses is what a rule names in its texts: found once, since reports ask for each
// result.
type uses struct {
	limits, tables []string // decisive or printed
	measures       bool
}

var (
	limitName = regexp.MustCompile(`\blimit\.([A-Za-z_][A-Za-z0-9_]*)`)
	tableName = regexp.MustCompile(`\btable\.([A-Za-z_][A-Za-z0-9_]*)`)
	measuring = regexp.MustCompile(`\b(distance|horizontal|rise|clear_height|taut)\(`)
)

func (c *Compiled) findUses() {
	c.uses = uses{
		limits:   namesIn(limitName, c.When, c.Require, c.Says, c.Remedy),
		tables:   namesIn(tableName, c.When, c.Require, c.Says, c.Remedy),
		measures: measuring.MatchString(c.When) || measuring.MatchString(c.Require),
	}
}

// LimitsUsed names the limits that the rule compares with or prints, sorted.
func (c *Compiled) LimitsUsed() []string { return c.uses.limits }

// TablesUsed names the tables that the rule looks up, sorted.
func (c *Compiled) TablesUsed() []string { return c.uses.tables }

// Measures tells whether the rule asks for distances on the site.
func (c *Compiled) Measures() bool { return c.uses.measures }

// decisive are the names that an outcome depends on.
func (c *Compiled) decisive(pattern *regexp.Regexp) []string {
	return namesIn(pattern, c.When, c.Require)
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
