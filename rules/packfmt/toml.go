package packfmt

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/rules"
)

// TOML writes a pack with all it inherits as one pack file: it extends nothing,
// loads, judges alike, and its samples prove. Limits, tables and base designs
// that no rule uses are left out.
func TOML(w io.Writer, e *rules.Effective) error {
	t := &tomlFile{pack: e, bases: map[*rules.Base]string{}}
	t.gather()
	t.head()
	t.limits()
	t.tables()
	for _, base := range t.order {
		t.line("\n[base.%s]\n# of %s\ndesign = %s", key(t.bases[base.base]), base.pack, value(base.base.Design))
	}
	for _, r := range t.rules {
		t.rule(r)
	}
	_, err := io.WriteString(w, t.b.String())
	return err
}

// tomlFile is a pack file as it is being written.
type tomlFile struct {
	b     strings.Builder
	pack  *rules.Effective
	rules []shownRule
	bases map[*rules.Base]string // names by which samples know them
	order []usedBase
}

// shownRule is a rule and its samples.
type shownRule struct {
	*rules.Compiled
	samples []rules.Sample
}

type usedBase struct {
	base *rules.Base
	pack string
}

// gather finds the samples and the base designs that they vary. Two designs of
// one name, of two packs, get names of their own.
func (t *tomlFile) gather() {
	taken := map[string]bool{}
	for _, r := range t.pack.Rules {
		samples := t.pack.Shown(r)
		t.rules = append(t.rules, shownRule{r, samples})
		for i := range samples {
			name, base := samples[i].Varies()
			if _, known := t.bases[base]; known {
				continue
			}
			for n := 2; taken[name]; n++ {
				name = fmt.Sprintf("%s-%d", strings.TrimSuffix(name, fmt.Sprintf("-%d", n-1)), n)
			}
			taken[name] = true
			t.bases[base] = name
			t.order = append(t.order, usedBase{base, samples[i].Pack()})
		}
	}
}

func (t *tomlFile) line(format string, args ...any) { fmt.Fprintf(&t.b, format+"\n", args...) }

// text writes a key with a text, unless it is empty.
func (t *tomlFile) text(name, text string) {
	if text != "" {
		t.line("%s = %s", name, value(text))
	}
}

func (t *tomlFile) head() {
	h := t.pack.Head
	t.line("# Pack %s with all it inherits, in one file.\n# sha256:%s", h.ID, t.pack.Digest())
	for _, off := range t.pack.Off {
		t.line("# switched off by %s: %s (%s)", off.Pack, off.Rule, strings.Join(strings.Fields(off.Reason), " "))
	}
	t.line("\n[pack]")
	t.text("id", h.ID)
	t.text("title", h.Title)
	t.text("edition", h.Edition)
	t.text("summary", h.Summary)
	t.text("jurisdiction", h.Jurisdiction)
	t.text("units", string(h.Units))
}

func (t *tomlFile) limits() {
	used := usedNames(t.pack, (*rules.Compiled).LimitsUsed)
	for _, name := range used {
		limit := t.pack.Limits[name]
		t.line("\n[limits.%s]\n# of %s", key(name), limit.Pack)
		if v := limit.Part.Value; v != nil {
			written, isText := limit.Part.Text("value")
			if isText {
				t.text("value", written.Value)
			} else {
				t.line("value = %s", value(v.V))
			}
		}
		t.text("title", limit.Part.Title)
		t.basis(limit.Part.Basis)
	}
}

// usedNames lists what the rules of a pack use, in order.
func usedNames(e *rules.Effective, of func(*rules.Compiled) []string) []string {
	used := map[string]bool{}
	for _, r := range e.Rules {
		for _, name := range of(r) {
			used[name] = true
		}
	}
	return slices.Sorted(maps.Keys(used))
}

func (t *tomlFile) tables() {
	for _, name := range usedNames(t.pack, (*rules.Compiled).TablesUsed) {
		owned := t.pack.Tables[name]
		table := owned.Part
		t.line("\n[table.%s]\n# of %s", key(name), owned.Pack)
		t.text("title", table.Title)
		t.line("value = %s", value(table.Unit))
		t.line("row = %s", axis(table.Row))
		if table.Column != nil {
			t.line("column = %s", axis(table.Column))
		}
		t.text("never", table.Never)
		t.text("unlimited", table.Unlimited)
		t.line("cells = [")
		for _, row := range table.Cells {
			t.line("  %s,", value(row))
		}
		t.line("]")
		t.basis(table.Basis)
	}
}

func axis(a *rules.Axis) string {
	open := ""
	if a.Open {
		open = ", open = true"
	}
	return fmt.Sprintf("{ input = %s, unit = %s, read = %s, edges = %s%s }", value(a.Input), value(a.Unit), value(string(a.Read)), value(a.Edges), open)
}

func (t *tomlFile) basis(list []rules.Basis) {
	t.line("basis = [")
	for _, b := range list {
		parts := []string{"document = " + value(b.Document)}
		for _, part := range [][2]string{{"edition", b.Edition}, {"section", b.Section}, {"read", string(b.Read)}, {"remark", b.Remark}} {
			if part[1] != "" {
				parts = append(parts, part[0]+" = "+value(part[1]))
			}
		}
		t.line("  { %s },", strings.Join(parts, ", "))
	}
	t.line("]")
}

func (t *tomlFile) rule(r shownRule) {
	t.line("\n[[rule]]\n# of %s", r.Pack)
	for _, part := range slices.Sorted(maps.Keys(r.Given)) {
		t.line("# %s by %s", part, r.Given[part])
	}
	t.text("id", r.ID)
	t.text("title", r.Title)
	t.text("topic", string(r.Topic))
	t.text("level", string(r.Level))
	t.text("open_level", string(r.OpenLevel))
	t.text("due", string(r.Due))
	t.each(r)
	t.text("when", r.When)
	t.text("require", r.Require)
	t.text("says", r.Says)
	t.text("remedy", r.Remedy)
	t.text("caution", r.Caution)
	if r.Judge {
		t.line("judge = true")
	}
	t.text("judge_when", r.JudgeWhen)
	if len(r.Aliases) > 0 {
		t.line("aliases = %s", value(r.Aliases))
	}
	t.basis(r.Basis)
	for _, x := range r.Equivalents {
		t.line("\n[[rule.equivalent]]")
		t.text("change", x.Change)
		t.text("reason", x.Reason)
	}
	t.samples(r)
}

func (t *tomlFile) each(r shownRule) {
	var list []string
	for _, e := range r.Each() {
		list = append(list, key(e.Name)+" = "+value(e.Collection))
	}
	if len(list) > 0 {
		t.line("each = { %s }", strings.Join(list, ", "))
	}
}

// samples writes the samples of a rule; of two of one name, the second tells its
// pack.
func (t *tomlFile) samples(r shownRule) {
	taken := map[string]bool{}
	for i := range r.samples {
		s := &r.samples[i]
		name := s.Name
		for taken[name] {
			name += " (" + s.Pack() + ")"
		}
		taken[name] = true
		t.line("\n[[rule.sample]]")
		t.text("name", name)
		t.text("expect", string(s.Expect))
		if s.Edge {
			t.line("edge = true")
		}
		_, base := s.Varies()
		t.text("base", t.bases[base])
		t.text("with", s.With)
		if len(s.Without) > 0 {
			t.line("without = %s", value(s.Without))
		}
	}
}
