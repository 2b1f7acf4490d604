package rules

import (
	"fmt"
	"reflect"
	"slices"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
)

// ownLimits lays the limits of a pack over those of its parents. One of another
// dimension is refused, and the parent's stays.
func (e *Effective) ownLimits(pack *Pack, report *mistakes) {
	for _, name := range sortedKeys(pack.Limits) {
		limit := pack.Limits[name]
		old, overrides := e.Limits[name]
		if overrides && limit.Value != nil && old.Part.Value != nil {
			if was, is := kindOf(old.Part.Value.V), kindOf(limit.Value.V); was != is {
				report.add(limit.At("value"), limit.KeyPath("value"),
					fmt.Sprintf("found %s, expected %s, as pack %q gives limit %q", withArticle(is), withArticle(was), old.Pack, name), "")
				continue
			}
		}
		e.Limits[name] = Owned[*Limit]{limit, pack.Head.ID, pack.Name}
	}
}

// kindOf names what a figure is; whole numbers and fractions are one kind.
func kindOf(v any) string {
	t := reflect.TypeOf(v)
	if t.Kind() == reflect.Int || t == reflect.TypeFor[float64]() {
		return "plain number"
	}
	return quantity.NameOf(t)
}

func kindName(t reflect.Type) string { return kindOf(reflect.Zero(t).Interface()) }

func withArticle(noun string) string {
	if noun != "" && slices.Contains([]byte("aeiou"), noun[0]) {
		return "an " + noun
	}
	return "a " + noun
}

// ownTables lays the tables of a pack over those of its parents. One that cannot
// be read, or that takes or gives other dimensions, is refused, and the parent's
// stays.
func (e *Effective) ownTables(pack *Pack, report *mistakes) {
	for _, name := range sortedKeys(pack.Tables) {
		table := pack.Tables[name]
		before := report.count()
		table.prepare(report)
		if old, overrides := e.Tables[name]; overrides && report.count() == before {
			table.fits(name, old, report)
		}
		if report.count() > before {
			e.broken = append(e.broken, name)
			continue
		}
		e.Tables[name] = Owned[*Table]{table, pack.Head.ID, pack.Name}
	}
}

// fits reports where a table does not take the place of a parent's.
func (t *Table) fits(name string, old Owned[*Table], report *mistakes) {
	was := old.Part
	differ := func(ref document.Ref, key, what string, found, wanted reflect.Type) {
		if found != wanted {
			report.add(ref.At(key), ref.KeyPath(key), fmt.Sprintf("found %s of %s, expected %s, as pack %q gives table %q",
				what, withArticle(kindName(found)), withArticle(kindName(wanted)), old.Pack, name), "")
		}
	}
	differ(t.Ref, "value", "cells", t.result, was.result)
	if (t.Column == nil) != (was.Column == nil) {
		report.add(t.Position(), t.Path(), fmt.Sprintf("found %s, expected %s, as pack %q gives table %q", t.axes(), was.axes(), old.Pack, name), "")
		return
	}
	differ(t.Row.Ref, "unit", "rows", t.Row.kind, was.Row.kind)
	if t.Column != nil {
		differ(t.Column.Ref, "unit", "columns", t.Column.kind, was.Column.kind)
	}
}

func (t *Table) axes() string {
	if t.Column == nil {
		return "rows alone"
	}
	return "rows and columns"
}

// checkUsed refuses a limit or table that overrides nothing and that no rule
// uses: most likely its name is misspelled, and the override has no effect.
func (e *Effective) checkUsed(pack *Pack, before figures, report *mistakes) {
	limits, tables := map[string]bool{}, map[string]bool{}
	for _, r := range e.Rules {
		for _, name := range namesIn(limitName, r.texts()...) {
			limits[name] = true
		}
		for _, name := range namesIn(tableName, r.texts()...) {
			tables[name] = true
		}
	}
	for _, name := range sortedKeys(pack.Limits) {
		unused(name, "limit", limits, sortedKeys(before.limits), pack.Limits[name].Ref, report)
	}
	for _, name := range sortedKeys(pack.Tables) {
		unused(name, "table", tables, sortedKeys(before.tables), pack.Tables[name].Ref, report)
	}
}

func unused(name, what string, used map[string]bool, inherited []string, ref document.Ref, report *mistakes) {
	if used[name] || slices.Contains(inherited, name) || !goodName(name) {
		return
	}
	message := fmt.Sprintf("no rule uses %s %q", what, name)
	if len(inherited) > 0 {
		message += ", and it overrides none of a parent"
	}
	report.add(ref.Position(), ref.Path(), message, report.near(name, append(inherited, sortedKeys(used)...)))
}
