package rules

import (
	"fmt"
	"reflect"
	"slices"
)

// reach notes which inherited rules an override of this pack can alter the
// outcome of, and sets their inherited samples aside: they show what the parent
// asks.
func (e *Effective) reach(before figures) {
	for _, r := range e.Rules {
		for _, name := range r.decisive(limitName) {
			if old, ok := before.limits[name]; ok && !sameLimit(old.Part, e.Limits[name].Part) {
				r.Reached = append(r.Reached, fmt.Sprintf("limit %q", name))
			}
		}
		for _, name := range r.decisive(tableName) {
			if old, ok := before.tables[name]; ok && !sameTable(old.Part, e.Tables[name].Part) {
				r.Reached = append(r.Reached, fmt.Sprintf("table %q", name))
			}
		}
		if len(r.Reached) > 0 {
			r.Superseded = r.Samples[:r.inheritedSamples]
			r.Samples = r.Samples[r.inheritedSamples:]
			r.inheritedSamples = 0
		}
	}
}

func sameLimit(a, b *Limit) bool {
	if a.Value == nil || b.Value == nil {
		return a.Value == b.Value
	}
	return reflect.DeepEqual(a.Value.V, b.Value.V)
}

// sameTable tells whether two tables give the same cells for the same inputs.
func sameTable(a, b *Table) bool {
	return a == b || a.result == b.result && sameAxis(a.Row, b.Row) && sameAxis(a.Column, b.Column) && reflect.DeepEqual(a.values, b.values)
}

func sameAxis(a, b *Axis) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.kind == b.kind && a.Read == b.Read && a.Open == b.Open && slices.Equal(a.edges, b.edges)
}

// SameOutcomes tells whether two rules, each of its pack, give the same outcomes
// for every design: they say and compare the same.
func SameOutcomes(a *Effective, x *Compiled, b *Effective, y *Compiled) bool {
	if x.When != y.When || x.Require != y.Require || x.Judge != y.Judge || x.JudgeWhen != y.JudgeWhen || x.Due != y.Due || !slices.Equal(x.Each(), y.Each()) {
		return false
	}
	for _, name := range x.decisive(limitName) {
		if !sameLimit(a.Limits[name].Part, b.Limits[name].Part) {
			return false
		}
	}
	for _, name := range x.decisive(tableName) {
		if !sameTable(a.Tables[name].Part, b.Tables[name].Part) {
			return false
		}
	}
	return true
}
