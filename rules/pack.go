package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
)

// Pack is one *.rules.toml file as it stands, before inheritance.
type Pack struct {
	document.Ref `toml:"-"`

	Head    Head              `toml:"pack,required"`
	Limits  map[string]*Limit `toml:"limits"`
	Tables  map[string]*Table `toml:"table"`
	Bases   map[string]*Base  `toml:"base"`
	Rules   []*Compiled       `toml:"rule"`
	Changes []*Change         `toml:"change"`
	Samples []*OwnSample      `toml:"sample"`

	Name   string `toml:"-"` // of the file, for messages
	Source string `toml:"-"`
}

// Head says what a pack is.
type Head struct {
	document.Ref `toml:"-"`

	ID           string   `toml:"id,required"`
	Title        string   `toml:"title,required"`
	Edition      string   `toml:"edition"`
	Summary      string   `toml:"summary"`
	Jurisdiction string   `toml:"jurisdiction"`
	Units        System   `toml:"units,required"` // of the numbers in the pack
	Extends      []string `toml:"extends"`
	DefaultBase  string   `toml:"default_base"`
}

// System is the unit system that a pack's numbers are in.
type System string

// Values lists the unit systems.
func (System) Values() []string { return []string{"IP", "SI"} }

// Limit is a named figure that rules compare with. A limit without a value is
// one that a local pack must set: rules that need it are for a person to judge.
type Limit struct {
	document.Ref `toml:"-"`

	Value *Value  `toml:"value"`
	Title string  `toml:"title"`
	Basis []Basis `toml:"basis,required"`
}

// Value is a quantity with its unit, or a plain number.
type Value struct{ V any }

// UnmarshalTOML reads "10 ft", 5 or 0.65.
func (v *Value) UnmarshalTOML(data any) error {
	switch x := data.(type) {
	case string:
		parsed, err := quantity.Parse(x)
		v.V = parsed
		return err
	case int64:
		v.V = int(x)
		return nil
	case float64:
		v.V = x
		return nil
	}
	return fmt.Errorf("expected a quantity such as \"10 ft\" or a number, found %T", data)
}

// Base is a named design that samples vary.
type Base struct {
	document.Ref `toml:"-"`

	Design string `toml:"design,required"`

	parsed parsed
}

// OwnSample is a sample of a rule of a parent pack: it shows what an override of
// this pack makes of the rule.
type OwnSample struct {
	Sample

	Rule string `toml:"rule,required"`
}

// Change alters a rule of a parent pack. What it does not name stays.
type Change struct {
	document.Ref `toml:"-"`

	Rule      string        `toml:"rule,required"`
	Off       bool          `toml:"off"`
	Reason    string        `toml:"reason,required"`
	Title     *string       `toml:"title"`
	Level     *Level        `toml:"level"`
	Due       *design.Stage `toml:"due"`
	When      *string       `toml:"when"`
	Require   *string       `toml:"require"`
	Says      *string       `toml:"says"`
	Remedy    *string       `toml:"remedy"`
	Caution   *string       `toml:"caution"`
	Judge     *bool         `toml:"judge"`
	JudgeWhen *string       `toml:"judge_when"`
	Basis     []Basis       `toml:"basis"`

	Equivalents []Equivalent `toml:"equivalent"`
	Samples     []Sample     `toml:"sample"`
}
