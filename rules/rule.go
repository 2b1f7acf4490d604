package rules

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
)

// Level is how much a failed rule weighs; the words are those of SARIF 2.1.0.
type Level string

// The levels, heaviest first.
const (
	Error   Level = "error"
	Warning Level = "warning"
	Note    Level = "note"
)

// Basis is where a requirement or a limit comes from.
type Basis struct {
	Document string `toml:"document,required"`
	Edition  string `toml:"edition"`
	Section  string `toml:"section"`
	Read     Read   `toml:"read,required"`
	Remark   string `toml:"remark"`
}

// Read tells how the writer of a pack knows a figure.
type Read string

// Values lists the ways of knowing: read in a public copy, read in a document
// that quotes the text, remembered, common practice without a source, or
// arithmetic on other rows.
func (Read) Values() []string {
	return []string{"seen", "secondary", "memory", "practice", "derived"}
}

// Rule is one requirement of a pack, as its file states it.
type Rule struct {
	document.Ref `toml:"-"`

	ID          string          `toml:"id,required"`
	Title       string          `toml:"title,required"`
	Topic       Topic           `toml:"topic,required"`
	Level       Level           `toml:"level,required"`
	OpenLevel   Level           `toml:"open_level"` // for an open outcome; the rule's level when empty
	Due         design.Stage    `toml:"due,required"`
	Ranges      []document.Pair `toml:"each"` // what each name ranges over; none: the dwelling as a whole
	When        string          `toml:"when"`
	Require     string          `toml:"require,required"`
	Says        string          `toml:"says,required"`
	Remedy      string          `toml:"remedy,required"`
	Caution     string          `toml:"caution"`
	Judge       bool            `toml:"judge"`      // when require is false a person must judge: review, not fail
	JudgeWhen   string          `toml:"judge_when"` // the same, only where this condition holds
	Aliases     []string        `toml:"aliases"`
	Basis       []Basis         `toml:"basis,required"`
	Equivalents []Equivalent    `toml:"equivalent"`
	Samples     []Sample        `toml:"sample"`
}

// Equivalent is a change of the rule that no sample can notice, and why.
type Equivalent struct {
	Change string `toml:"change,required"` // as prove tells it
	Reason string `toml:"reason,required"`

	pack string // id of the pack that says so
}

// Each binds one name of a rule to the things it ranges over.
type Each struct {
	Name       string // as used in the rule's expressions
	Collection string // expression that gives a list
}

// Each lists the names of a rule and what they range over, in the order of the
// file: a later one may depend on an earlier one.
func (r *Rule) Each() []Each {
	list := make([]Each, len(r.Ranges))
	for i, each := range r.Ranges {
		list[i] = Each{each.Key, each.Text}
	}
	return list
}

// Sample is one small design that shows what a rule does.
type Sample struct {
	document.Ref `toml:"-"`

	Name    string   `toml:"name,required"`
	Expect  Expected `toml:"expect,required"`
	Edge    bool     `toml:"edge"`    // lies exactly on the limit
	Base    string   `toml:"base"`    // named base design; the pack's default when empty
	With    string   `toml:"with"`    // TOML laid over the base: tables by key, things by id
	Without []string `toml:"without"` // keys or things taken away, such as "opening.intake.from_left"

	written home // where it was written
}

// Topic is the chapter of a review that a rule belongs to.
type Topic string

// Values lists the topics in the order of a review.
func (Topic) Values() []string {
	return []string{"rates", "openings", "ducts", "access", "equipment", "pressure", "moisture", "energy", "commissioning", "permit"}
}

// System is the one in which a rule of a topic tells quantities, in place of s: the
// pressure of a house is told in pascals.
func (t Topic) System(s quantity.System) quantity.System {
	if t == "pressure" {
		return s.House()
	}
	return s
}

// Values lists the levels.
func (Level) Values() []string { return []string{"error", "warning", "note"} }

// Below tells whether a level weighs less than another.
func (l Level) Below(other Level) bool { return l.rank() > other.rank() }

func (l Level) rank() int {
	for i, v := range l.Values() {
		if v == string(l) {
			return i
		}
	}
	return len(l.Values())
}
