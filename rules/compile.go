package rules

import (
	"errors"
	"slices"

	"github.com/ventlint/ventlint/rules/expression"
)

// compiling is the pack whose rules are compiled.
type compiling struct {
	pack       *Effective
	names      expression.Names
	lists      map[wording]*expression.List // many rules range over the same
	conditions map[wording]*expression.Condition
	known      bool // the texts are sound: they are compiled when they are first asked
	report     *mistakes
}

// wording is a text with the subjects that it can name: what means the same in all
// rules of a pack.
type wording struct{ text, subjects string }

// compile compiles every rule of the pack; all mistakes are reported at once. A
// rule that is as its parent has it is compiled already.
func (e *Effective) compile(known bool, report *mistakes) {
	names := expression.Names{Limits: make(map[string]any, len(e.Limits)), Tables: make(map[string]expression.Table, len(e.Tables))}
	for name, limit := range e.Limits {
		names.Limits[name] = nil
		if v := limit.Part.Value; v != nil {
			names.Limits[name] = v.V
		}
	}
	for name, table := range e.Tables {
		names.Tables[name] = table.Part
	}
	conditions := make(map[wording]*expression.Condition, 2*len(e.Rules))
	work := &compiling{e, names, map[wording]*expression.List{}, conditions, known, report}
	for _, r := range e.Rules {
		if !r.rests(e.broken) && !r.means(names, e.Head.ID) {
			r.compile(work)
		}
	}
}

// rests tells whether the rule looks up one of some tables.
func (c *Compiled) rests(tables []string) bool {
	if len(tables) == 0 {
		return false
	}
	return slices.ContainsFunc(namesIn(tableName, c.texts()...), func(name string) bool { return slices.Contains(tables, name) })
}

// means tells whether a rule was compiled with the same texts and figures.
func (c *Compiled) means(names expression.Names, pack string) bool {
	if c.require == nil {
		return false
	}
	for part, by := range c.Given {
		if by == pack && part != "sample" {
			return false
		}
	}
	for _, name := range c.used().limits {
		if names.Limits[name] != c.names.Limits[name] {
			return false
		}
	}
	for _, name := range c.used().tables {
		if names.Tables[name] != c.names.Tables[name] {
			return false
		}
	}
	return true
}

func (c *Compiled) compile(work *compiling) {
	c.each, c.names = nil, work.names
	subjects := ""
	for _, each := range c.Each() {
		list, err := work.list(wording{each.Collection, subjects}, c.names)
		if err != nil {
			c.reportEach(each, err, work.pack, work.report)
			return
		}
		c.each = append(c.each, ranged{each.Name, list})
		c.names.Variables = append(slices.Clip(c.names.Variables), expression.Variable{Name: each.Name, Type: list.Elem()})
		subjects += each.Name + " " + list.Elem().String() + "\n"
	}
	c.when, c.judging = nil, nil
	if c.When != "" {
		c.when = c.condition("when", wording{c.When, subjects}, work)
	}
	c.require = c.condition("require", wording{c.Require, subjects}, work)
	if c.JudgeWhen != "" {
		c.judging = c.condition("judge_when", wording{c.JudgeWhen, subjects}, work)
		if c.Judge {
			c.report("judge_when", errJudgedTwice, work.pack, work.report)
		}
	}
	c.says = c.message("says", c.Says, work)
	c.remedy = c.message("remedy", c.Remedy, work)
}

var errJudgedTwice = errors.New("found beside judge = true, which leaves every failure to a person, expected one of them")

// list compiles what a rule ranges over.
func (w *compiling) list(what wording, names expression.Names) (*expression.List, error) {
	if list := w.lists[what]; list != nil {
		return list, nil
	}
	list, err := language().List(what.text, names)
	w.lists[what] = list
	return list, err
}

func (c *Compiled) condition(key string, what wording, work *compiling) *expression.Condition {
	if same := work.conditions[what]; same != nil {
		return same
	}
	condition, err := work.compiled(what.text, c.names)
	c.report(key, err, work.pack, work.report)
	work.conditions[what] = condition
	return condition
}

func (w *compiling) compiled(text string, names expression.Names) (*expression.Condition, error) {
	if w.known {
		return language().KnownCondition(text, names), nil
	}
	return language().Condition(text, names)
}

func (c *Compiled) message(key, text string, work *compiling) *expression.Template {
	if work.known {
		return language().KnownTemplate(text, c.names)
	}
	message, err := language().Template(text, c.names)
	c.report(key, err, work.pack, work.report)
	return message
}
