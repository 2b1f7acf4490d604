package rules

import (
	"bytes"
	"fmt"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"

	"github.com/ventlint/ventlint/checker/document"
)

// overlay lays a fragment over a base design and takes keys or things away.
// Tables are laid over by key, things by their id; a thing with a new id is
// added; any other list takes the place of the base's.
func overlay(base *Base, with string, without []string) (string, error) {
	design, err := base.values()
	if err != nil {
		return "", err
	}
	fragment, err := values("with", with)
	if err != nil {
		return "", err
	}
	layOver(design, fragment)
	for _, path := range without {
		if !remove(design, strings.Split(path, ".")) {
			return "", fmt.Errorf("without %q: the design does not hold it", path)
		}
	}
	var text bytes.Buffer
	if err := toml.NewEncoder(&text).Encode(design); err != nil {
		return "", fmt.Errorf("the sample's design cannot be written: %w", err)
	}
	return text.String(), nil
}

// parsed is a base design as values, read once for all samples.
type parsed struct {
	once   sync.Once
	values map[string]any
	err    error
}

// values gives the base design as plain values, which the caller may change.
func (b *Base) values() (map[string]any, error) {
	b.parsed.once.Do(func() { b.parsed.values, b.parsed.err = values("base design", b.Design) })
	if b.parsed.err != nil {
		return nil, b.parsed.err
	}
	return copied(b.parsed.values).(map[string]any), nil
}

// copied is a copy of a value that TOML can hold.
func copied(value any) any {
	switch v := value.(type) {
	case map[string]any:
		m := make(map[string]any, len(v))
		for key, each := range v {
			m[key] = copied(each)
		}
		return m
	case []map[string]any:
		list := make([]map[string]any, len(v))
		for i, each := range v {
			list[i] = copied(each).(map[string]any)
		}
		return list
	case []any:
		list := make([]any, len(v))
		for i, each := range v {
			list[i] = copied(each)
		}
		return list
	}
	return value
}

// values reads TOML as plain values, within the limits of package document.
func values(what, text string) (map[string]any, error) {
	if _, problems := document.Parse(what, []byte(text)); len(problems) > 0 {
		p := problems[0]
		return nil, fmt.Errorf("%s, line %d: %s", what, p.Position.Line, p.Message)
	}
	m := map[string]any{}
	_, err := toml.Decode(text, &m)
	return m, err
}

func layOver(base, over map[string]any) {
	for key, value := range over {
		table, isTable := value.(map[string]any)
		list, isList := thingsOf(value)
		below, hasTable := base[key].(map[string]any)
		things, hasList := thingsOf(base[key])
		switch {
		case isTable && hasTable:
			layOver(below, table)
		case isList && hasList:
			base[key] = layThings(things, list)
		default:
			base[key] = value
		}
	}
}

// thingsOf gives a list of tables, however it was written; false when the list
// has none or holds anything without an id.
func thingsOf(value any) ([]map[string]any, bool) {
	var things []map[string]any
	switch v := value.(type) {
	case []map[string]any:
		things = v
	case []any:
		for _, each := range v {
			table, ok := each.(map[string]any)
			if !ok {
				return nil, false
			}
			things = append(things, table)
		}
	}
	for _, t := range things {
		if t["id"] == nil {
			return nil, false
		}
	}
	return things, len(things) > 0
}

func layThings(base, over []map[string]any) []map[string]any {
	for _, thing := range over {
		if same := byID(base, thing["id"]); same != nil {
			layOver(same, thing)
			continue
		}
		base = append(base, thing)
	}
	return base
}

func byID(things []map[string]any, id any) map[string]any {
	for _, t := range things {
		if t["id"] == id {
			return t
		}
	}
	return nil
}

// remove takes a key or a thing away; false when there is none.
func remove(table map[string]any, path []string) bool {
	value, ok := table[path[0]]
	if !ok {
		return false
	}
	if len(path) == 1 {
		delete(table, path[0])
		return true
	}
	if below, ok := value.(map[string]any); ok {
		return remove(below, path[1:])
	}
	if things, ok := thingsOf(value); ok {
		return removeThing(table, path, things)
	}
	return false
}

func removeThing(table map[string]any, path []string, things []map[string]any) bool {
	thing := byID(things, path[1])
	if thing == nil {
		return false
	}
	if len(path) > 2 {
		return remove(thing, path[2:])
	}
	var kept []map[string]any
	for _, t := range things {
		if t["id"] != path[1] {
			kept = append(kept, t)
		}
	}
	table[path[0]] = kept
	if len(kept) == 0 {
		delete(table, path[0])
	}
	return true
}
