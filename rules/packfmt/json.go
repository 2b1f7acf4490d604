package packfmt

import (
	"encoding/json"
	"io"
	"maps"
	"slices"

	"github.com/ventlint/ventlint/rules"
)

// jsonPack is an effective pack as JSON.
type jsonPack struct {
	Format       string      `json:"format"`
	Version      int         `json:"version"`
	ID           string      `json:"id"`
	Title        string      `json:"title"`
	Edition      string      `json:"edition,omitempty"`
	Jurisdiction string      `json:"jurisdiction,omitempty"`
	Summary      string      `json:"summary,omitempty"`
	Units        string      `json:"units"`
	Digest       string      `json:"digest"`
	Extends      []string    `json:"extends"`
	Limits       []jsonLimit `json:"limits"`
	Tables       []jsonTable `json:"tables"`
	Rules        []jsonRule  `json:"rules"`
	Off          []jsonOff   `json:"switched_off"`
}

type jsonLimit struct {
	Name  string      `json:"name"`
	Pack  string      `json:"pack"`
	Value any         `json:"value"` // as the pack writes it; null where it is not set
	Title string      `json:"title,omitempty"`
	Basis []jsonBasis `json:"basis"`
}

type jsonTable struct {
	Name   string      `json:"name"`
	Pack   string      `json:"pack"`
	Title  string      `json:"title"`
	Unit   string      `json:"unit"`
	Row    *jsonAxis   `json:"row"`
	Column *jsonAxis   `json:"column,omitempty"`
	Cells  []any       `json:"cells"`
	Basis  []jsonBasis `json:"basis"`
}

type jsonAxis struct {
	Input string    `json:"input"`
	Unit  string    `json:"unit"`
	Read  string    `json:"read"`
	Edges []float64 `json:"edges"`
	Open  bool      `json:"open,omitempty"`
}

type jsonRule struct {
	ID        string            `json:"id"`
	Pack      string            `json:"pack"`
	Given     map[string]string `json:"changed_by,omitempty"` // parts, and the packs that changed them
	Title     string            `json:"title"`
	Topic     string            `json:"topic"`
	Level     string            `json:"level"`
	OpenLevel string            `json:"open_level,omitempty"`
	Due       string            `json:"due"`
	Each      []jsonEach        `json:"each,omitempty"`
	When      string            `json:"when,omitempty"`
	Require   string            `json:"require"`
	Says      string            `json:"says"`
	Remedy    string            `json:"remedy"`
	Caution   string            `json:"caution,omitempty"`
	Judge     bool              `json:"judge,omitempty"`
	JudgeWhen string            `json:"judge_when,omitempty"`
	Aliases   []string          `json:"aliases,omitempty"`
	Limits    []string          `json:"limits,omitempty"`
	Tables    []string          `json:"tables,omitempty"`
	Basis     []jsonBasis       `json:"basis"`
	Samples   []jsonSample      `json:"samples"`
}

type jsonEach struct {
	Name string `json:"name"`
	Of   string `json:"of"`
}

type jsonSample struct {
	Name   string `json:"name"`
	Pack   string `json:"pack"`
	Expect string `json:"expect"`
	Edge   bool   `json:"edge,omitempty"`
}

type jsonBasis struct {
	Document string `json:"document"`
	Edition  string `json:"edition,omitempty"`
	Section  string `json:"section,omitempty"`
	Read     string `json:"read"`
	Remark   string `json:"remark,omitempty"`
}

type jsonOff struct {
	Rule   string `json:"rule"`
	Pack   string `json:"pack"`
	Reason string `json:"reason"`
}

// JSON writes a pack with all it inherits.
func JSON(w io.Writer, e *rules.Effective) error {
	h := e.Head
	p := jsonPack{Format: "ventlint-pack", Version: 1, ID: h.ID, Title: h.Title, Edition: h.Edition, Jurisdiction: h.Jurisdiction, Summary: h.Summary,
		Units: string(h.Units), Digest: e.Digest(), Extends: append([]string{}, h.Extends...),
		Limits: []jsonLimit{}, Tables: []jsonTable{}, Rules: []jsonRule{}, Off: []jsonOff{}}
	for _, name := range slices.Sorted(maps.Keys(e.Limits)) {
		p.Limits = append(p.Limits, limitOf(name, e.Limits[name]))
	}
	for _, name := range slices.Sorted(maps.Keys(e.Tables)) {
		t := e.Tables[name]
		p.Tables = append(p.Tables, jsonTable{name, t.Pack, t.Part.Title, t.Part.Unit, axisOf(t.Part.Row), axisOf(t.Part.Column), t.Part.Cells, basisOf(t.Part.Basis)})
	}
	for _, r := range e.Rules {
		p.Rules = append(p.Rules, ruleOf(e, r))
	}
	for _, off := range e.Off {
		p.Off = append(p.Off, jsonOff{off.Rule, off.Pack, off.Reason})
	}
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(p)
}

func limitOf(name string, l rules.Owned[*rules.Limit]) jsonLimit {
	limit := jsonLimit{Name: name, Pack: l.Pack, Title: l.Part.Title, Basis: basisOf(l.Part.Basis)}
	if l.Part.Value != nil {
		limit.Value = l.Part.Value.V
		if text, ok := l.Part.Text("value"); ok {
			limit.Value = text.Value
		}
	}
	return limit
}

func axisOf(a *rules.Axis) *jsonAxis {
	if a == nil {
		return nil
	}
	return &jsonAxis{a.Input, a.Unit, string(a.Read), a.Edges, a.Open}
}

func basisOf(list []rules.Basis) []jsonBasis {
	all := []jsonBasis{}
	for _, b := range list {
		all = append(all, jsonBasis{b.Document, b.Edition, b.Section, string(b.Read), b.Remark})
	}
	return all
}

func ruleOf(e *rules.Effective, r *rules.Compiled) jsonRule {
	rule := jsonRule{ID: r.ID, Pack: r.Pack, Given: r.Given, Title: r.Title, Topic: string(r.Topic), Level: string(r.Level), OpenLevel: string(r.OpenLevel),
		Due: string(r.Due), When: r.When, Require: r.Require, Says: r.Says, Remedy: r.Remedy, Caution: r.Caution, Judge: r.Judge, JudgeWhen: r.JudgeWhen,
		Aliases: r.Aliases, Limits: r.LimitsUsed(), Tables: r.TablesUsed(), Basis: basisOf(r.Basis), Samples: []jsonSample{}}
	for _, each := range r.Each() {
		rule.Each = append(rule.Each, jsonEach{each.Name, each.Collection})
	}
	for _, s := range e.Shown(r) {
		rule.Samples = append(rule.Samples, jsonSample{s.Name, s.Pack(), string(s.Expect), s.Edge})
	}
	return rule
}
