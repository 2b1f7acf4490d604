package impact

import (
	"cmp"
	"slices"
)

// Tally counts cases. Its size does not grow with the number of designs, but for
// the lists, which end at a length.
type Tally struct {
	longest int // of each list
	designs map[change]int
	rules   map[string]*ruleTally
	changed listed[ChangedDesign]
	failed  listed[FailedDesign]
}

// ruleTally counts the cases of one rule.
type ruleTally struct {
	title   string
	cases   map[change]int
	near    int
	nearest *Near
}

// ChangedDesign is a design that comes out otherwise, or a rule of which does.
type ChangedDesign struct {
	Design string       `json:"design"`
	From   State        `json:"from"`
	To     State        `json:"to"`
	Rules  []RuleChange `json:"rules"`
	More   int          `json:"more,omitempty"` // rules beyond those listed
}

// RuleChange is a rule of one design that comes out otherwise.
type RuleChange struct {
	Rule string `json:"rule"`
	From State  `json:"from"`
	To   State  `json:"to"`
}

// FailedDesign is a design that could not be judged.
type FailedDesign struct {
	Design  string `json:"design"`
	Problem string `json:"problem"`
}

// NewTally makes an empty tally of a comparison whose lists end at a length.
func (c *Comparison) NewTally(longest int) *Tally {
	t := &Tally{longest: longest, designs: map[change]int{}, rules: map[string]*ruleTally{}}
	for _, p := range c.pairs {
		t.rules[p.id] = &ruleTally{title: p.title(), cases: map[change]int{}}
	}
	return t
}

// rulesOfDesign is how many changed rules of one design are listed.
const rulesOfDesign = 10

// Add counts a case of the comparison that the tally was made for.
func (t *Tally) Add(c *Comparison, of Case) {
	t.designs[change{of.From, of.To}]++
	var changes []RuleChange
	for i, r := range of.rules {
		id := c.pairs[i].id
		counted := t.rules[id]
		counted.cases[r.change]++
		if r.near != nil {
			counted.near++
			counted.nearest = nearer(counted.nearest, r.near)
		}
		if r.from != r.to && (r.from.fires() || r.to.fires() || r.from != NotHeld && r.to != NotHeld) {
			changes = append(changes, RuleChange{id, r.from, r.to})
		}
	}
	if of.From != of.To || len(changes) > 0 {
		more := max(0, len(changes)-rulesOfDesign)
		t.changed.add(ChangedDesign{of.Design, of.From, of.To, changes[:len(changes)-more], more}, t.longest)
	}
}

// Fail counts a design that could not be judged.
func (t *Tally) Fail(name, problem string) { t.failed.add(FailedDesign{name, problem}, t.longest) }

// Merge adds the counts of another tally of the same comparison.
func (t *Tally) Merge(o *Tally) {
	addCounts(t.designs, o.designs)
	for id, r := range o.rules {
		own := t.rules[id]
		if own == nil {
			own = &ruleTally{title: r.title, cases: map[change]int{}}
			t.rules[id] = own
		}
		addCounts(own.cases, r.cases)
		own.near += r.near
		own.nearest = nearer(own.nearest, r.nearest)
	}
	t.changed.merge(o.changed, t.longest)
	t.failed.merge(o.failed, t.longest)
}

func addCounts(to, from map[change]int) {
	for c, n := range from {
		to[c] += n
	}
}

// Judged is how many designs were judged.
func (t *Tally) Judged() int { return sum(t.designs) }

// Failed is how many designs could not be judged.
func (t *Tally) Failed() int { return t.failed.count }

// Decided is how many of them some rule of either pack had something to say
// about.
func (t *Tally) Decided() int { return t.Judged() - t.designs[change{Nothing, Nothing}] }

func sum(counts map[change]int) int {
	n := 0
	for _, c := range counts {
		n += c
	}
	return n
}

// named is an entry of a list, in the order of its design.
type named interface{ name() string }

func (c ChangedDesign) name() string { return c.Design }
func (f FailedDesign) name() string  { return f.Design }

// listed is a list that keeps its first entries by name, and counts all.
type listed[T named] struct {
	count   int
	entries []T
}

func (l *listed[T]) add(entry T, longest int) {
	l.count++
	l.insert(entry, longest)
}

func (l *listed[T]) insert(entry T, longest int) {
	at, _ := slices.BinarySearchFunc(l.entries, entry, func(a, b T) int { return cmp.Compare(a.name(), b.name()) })
	if at >= longest {
		return
	}
	l.entries = slices.Insert(l.entries, at, entry)
	l.entries = l.entries[:min(len(l.entries), longest)]
}

func (l *listed[T]) merge(o listed[T], longest int) {
	l.count += o.count
	for _, entry := range o.entries {
		l.insert(entry, longest)
	}
}
