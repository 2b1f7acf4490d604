package impact

import (
	"github.com/ventlint/ventlint/rules"
)

// State is what became of a rule or a design under a pack.
type State string

// NotHeld is the state of a rule under a pack that does not have it.
const NotHeld State = "not held"

// The states of a design, worst first: the heaviest level at which something
// fails or lacks an input, or that only a person's judgement is asked, or neither.
const (
	Review  State = "review"
	Clean   State = "clean"
	Nothing State = "nothing checked" // no rule had anything to say
)

// stateOf is the worst outcome over all subjects. One that asks something of the
// designer carries its level: "fail error".
func stateOf(rule *rules.Compiled, worst rules.Outcome) State {
	switch {
	case worst == rules.Open && rule.OpenLevel != "":
		return asking(worst, rule.OpenLevel)
	case worst == rules.Fail || worst == rules.Open:
		return asking(worst, rule.Level)
	}
	return State(worst)
}

func asking(o rules.Outcome, level rules.Level) State { return State(o) + " " + State(level) }

// fires tells whether a rule asked something: it failed, lacked an input, or left
// the question to a person.
func (s State) fires() bool {
	return s == State(rules.Review) || s.level() != ""
}

// level is the word after the outcome; empty where there is none.
func (s State) level() State {
	for _, level := range rules.Level("").Values() {
		for _, o := range []rules.Outcome{rules.Fail, rules.Open} {
			if s == asking(o, rules.Level(level)) {
				return State(level)
			}
		}
	}
	return ""
}

// designState sums the states of all rules up.
func designState(states []State) State {
	seen := map[State]bool{}
	for _, s := range states {
		seen[s] = true
		seen[s.level()] = true
	}
	for _, level := range rules.Level("").Values() {
		if seen[State(level)] {
			return State(level)
		}
	}
	switch {
	case seen[State(rules.Review)]:
		return Review
	case seen[State(rules.Pass)]:
		return Clean
	}
	return Nothing
}
