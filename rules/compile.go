package rules

import (
	"errors"
	"slices"

	"github.com/ventlint/ventlint/rules/expression"
)

// compiling is the pack whose rules are compiled.
type compiling struct {
	pack   *Effective
	names  expression.Names
	lists  map[string]*expression.List // by text and the names before
	known  bool                        // the texts are sound: they are compiled when they are first asked
	report *mistakes
}

// compile compiles every rule of the pack; all mistakes are reported at once. A
// rule that is as its parent has it is compiled already.
func (e *Effective) compile(known bool, report *mistakes) {
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
	work := &compiling{e, names, map[string]*expression.List{}, known, report}
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
	for _, each := range c.Each() {
		list, err := work.list(each.Collection, c.names)
		if err != nil {
			c.reportEach(each, err, work.pack, work.report)
			return
		}
		c.each = append(c.each, ranged{each.Name, list})
		c.names.Variables = append(slices.Clip(c.names.Variables), expression.Variable{Name: each.Name, Type: list.Elem()})
	}
	c.when, c.judging = nil, nil
	if c.When != "" {
		c.when = c.condition("when", c.When, work)
	}
	c.require = c.condition("require", c.Require, work)
	if c.JudgeWhen != "" {
		c.judging = c.condition("judge_when", c.JudgeWhen, work)
		if c.Judge {
			c.report("judge_when", errJudgedTwice, work.pack, work.report)
		}
	}
	c.says = c.message("says", c.Says, work)
	c.remedy = c.message("remedy", c.Remedy, work)
}

var errJudgedTwice = errors.New("found beside judge = true, which leaves every failure to a person, expected one of them")

// list compiles what a rule ranges over; many rules range over the same.
func (w *compiling) list(text string, names expression.Names) (*expression.List, error) {
	key := text
	for _, v := range names.Variables {
		key += "\n" + v.Name + " " + v.Type.String()
	}
	if list := w.lists[key]; list != nil {
		return list, nil
	}
	list, err := language().List(text, names)
	w.lists[key] = list
	return list, err
}

func (c *Compiled) condition(key, text string, work *compiling) *expression.Condition {
	if work.known {
		return language().KnownCondition(text, c.names)
	}
	condition, err := language().Condition(text, c.names)
	c.report(key, err, work.pack, work.report)
	return condition
}

func (c *Compiled) message(key, text string, work *compiling) *expression.Template {
	if work.known {
		return language().KnownTemplate(text, c.names)
	}
	message, err := language().Template(text, c.names)
	c.report(key, err, work.pack, work.report)
	return message
}
