package rules

import (
	"fmt"
	"maps"
	"math"
	"reflect"

	"github.com/ventlint/ventlint/rules/expression"
)

// mutant is a change of a rule. The changed rule is made when it is tried; one that
// does not compile is no mutant.
type mutant struct {
	Mutant
	make func() (*Compiled, error)
}

// mutants lists every single change of a rule: of its conditions, of the limits
// that they compare with, and of the tables that they read.
func (e *Effective) mutants(rule *Compiled) []mutant {
	list := rule.conditionMutants("require", rule.require)
	if rule.when != nil {
		list = append(list, rule.conditionMutants("when", rule.when)...)
		always := *rule
		always.when = nil
		list = append(list, rule.without("when", &always))
	}
	if rule.judging != nil {
		list = append(list, rule.conditionMutants("judge_when", rule.judging)...)
		never := *rule
		never.judging = nil
		list = append(list, rule.without("judge_when", &never))
	}
	for _, name := range rule.decisive(limitName) {
		list = append(list, e.limitMutants(rule, name)...)
	}
	for _, name := range rule.decisive(tableName) {
		list = append(list, e.tableMutants(rule, name)...)
	}
	return list
}

// without is the rule without one of its conditions.
func (c *Compiled) without(part string, changed *Compiled) mutant {
	at := c.place(part)
	return mutant{Mutant{"the whole condition left out", part, at.file, at.ref.At(part)}, func() (*Compiled, error) { return changed, nil }}
}

// conditionMutants takes the variants of a condition.
func (c *Compiled) conditionMutants(part string, condition *expression.Condition) []mutant {
	var list []mutant
	text, _ := c.place(part).ref.Text(part)
	for _, v := range condition.Variants() {
		m := Mutant{v.Change, part, c.place(part).file, text.Span(v.Offset, v.Length)}
		list = append(list, mutant{m, func() (*Compiled, error) { return c.with(part, v.Source) }})
	}
	return list
}

// with is the rule with another condition.
func (c *Compiled) with(part, source string) (*Compiled, error) {
	changed, err := language().Condition(source, c.names)
	rule := *c
	switch part {
	case "when":
		rule.when = changed
	case "judge_when":
		rule.judging = changed
	default:
		rule.require = changed
	}
	return &rule, err
}

// nudge moves a figure beyond any tolerance: a whole number by one, any other by
// a hundredth.
func nudge(value any, up bool) any {
	v := reflect.ValueOf(value)
	sign := 1.0
	if !up {
		sign = -1
	}
	if v.CanInt() {
		return int(v.Int()) + int(sign)
	}
	f := v.Float()
	if f == math.Trunc(f) && v.Type() == reflect.TypeFor[float64]() {
		return f + sign
	}
	return reflect.ValueOf(f + sign*max(math.Abs(f)/100, 1e-6)).Convert(v.Type()).Interface()
}

func (e *Effective) limitMutants(rule *Compiled, name string) []mutant {
	limit := e.Limits[name]
	if limit.Part.Value == nil {
		return nil
	}
	var list []mutant
	for word, up := range map[string]bool{"raised": true, "lowered": false} {
		m := Mutant{fmt.Sprintf("limit %q %s", name, word), "limit", limit.file, limit.Part.At("value")}
		list = append(list, mutant{m, func() (*Compiled, error) {
			names := rule.names
			names.Limits = maps.Clone(names.Limits)
			names.Limits[name] = nudge(limit.Part.Value.V, up)
			return rule.recompiled(names)
		}})
	}
	return sorted(list)
}

func (e *Effective) tableMutants(rule *Compiled, name string) []mutant {
	table := e.Tables[name]
	var list []mutant
	for word, factor := range map[string]float64{"raised": 1.01, "lowered": 0.99} {
		m := Mutant{fmt.Sprintf("cells of table %q %s", name, word), "table", table.file, table.Part.At("cells")}
		list = append(list, mutant{m, func() (*Compiled, error) {
			names := rule.names
			names.Tables = maps.Clone(names.Tables)
			names.Tables[name] = table.Part.scaled(factor)
			return rule.recompiled(names)
		}})
	}
	return sorted(list)
}

func (t *Table) scaled(factor float64) *Table {
	changed := *t
	changed.values = make([][]float64, len(t.values))
	for i, row := range t.values {
		for _, v := range row {
			changed.values[i] = append(changed.values[i], v*factor)
		}
	}
	return &changed
}

// sorted puts the two directions of a figure in a fixed order.
func sorted(list []mutant) []mutant {
	if list[0].Change > list[1].Change {
		list[0], list[1] = list[1], list[0]
	}
	return list
}

// recompiled is the rule with other names behind its conditions.
func (c *Compiled) recompiled(names expression.Names) (*Compiled, error) {
	rule := *c
	var err error
	if rule.require, err = language().Condition(c.Require, names); err != nil {
		return nil, err
	}
	if c.when != nil {
		if rule.when, err = language().Condition(c.When, names); err != nil {
			return nil, err
		}
	}
	if c.judging != nil {
		rule.judging, err = language().Condition(c.JudgeWhen, names)
	}
	return &rule, err
}
