package drawing

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
)

// Marks is what a review adds to the drawings of a design.
type Marks struct {
	Dimensions []Dimension
	Clearances []Clearance
	Tags       []Tag
}

// Way is how a dimension runs.
type Way int

// The ways of dimensions.
const (
	Straight Way = iota // the shortest way between two things
	Level               // on the plan between two things
	Upright             // from what lies below a thing to its bottom edge
	Around              // the shortest way between two things outside the house
)

// Dimension is a distance that a finding is about.
type Dimension struct {
	Way             Way
	From, To        design.Placed // To is nil for an upright one
	Number          int
	Found, Required string
}

// Clearance is a distance that rules ask around an intake, in any direction or on
// the plan alone. Some rules let go of it where heights differ enough.
type Clearance struct {
	Around  *design.Opening
	Reach   q.Length
	Printed string   // the reach in the design's units
	OnPlan  bool     // it counts on the plan alone
	Broken  bool     // a finding says that something lies within it
	For     []string // titles of the rules that ask it
}

// Tag is the number of a finding about a thing, where no dimension shows it.
type Tag struct {
	On     design.Placed
	Number int
}

var (
	between     = pattern(`^(distance|horizontal|taut)\((\w+), (\w+)\) >= `)
	aboveGround = pattern(`^clear_height\((\w+)\) >= `)
	namedLimit  = pattern(`>= \(?.*?limit\.(\w+)\)?$`)
)

// pattern is compiled when it is first asked for: only drawings need it.
func pattern(text string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}

// Mark gives the marks of a review: a dimension or a tag for each finding about
// something with a place, and the clearances of every rule that was asked.
func Mark(r *checker.Report, findings []Finding) Marks {
	var m Marks
	for _, f := range findings {
		m.finding(r.Design, f)
	}
	for i := range r.Results {
		m.clearances(r.Design, &r.Results[i])
	}
	slices.SortStableFunc(m.Clearances, func(a, b Clearance) int {
		return strings.Compare(a.Around.ID, b.Around.ID)*4 + sign(float64(a.Reach-b.Reach))
	})
	return m
}

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// subjectsOf finds the subjects of a result that have a place, by the names that
// the rule calls them.
func subjectsOf(d *design.Design, r *checker.Result) map[string]design.Placed {
	found := map[string]design.Placed{}
	for _, s := range r.Subjects {
		if p, ok := d.Find(s.ID).(design.Placed); ok && s.ID != "" {
			found[s.Name] = p
		}
	}
	return found
}

func (m *Marks) finding(d *design.Design, f Finding) {
	placed, before := subjectsOf(d, f.Result), len(m.Dimensions)
	if f.Result.Outcome != rules.Open {
		for _, c := range f.Result.Comparisons {
			if !c.Holds {
				m.dimension(placed, f.Number, c)
			}
		}
	}
	if len(m.Dimensions) > before {
		return
	}
	for _, s := range f.Result.Subjects {
		if p := placed[s.Name]; p != nil {
			m.Tags = append(m.Tags, Tag{p, f.Number})
		}
	}
}

// dimension adds what a comparison measures, unless it measures no way.
func (m *Marks) dimension(placed map[string]design.Placed, number int, c checker.Comparison) {
	dim := Dimension{Number: number, Found: c.Found, Required: c.Required}
	if p := between().FindStringSubmatch(c.Text); p != nil {
		dim.Way, dim.From, dim.To = wayOf(p[1]), placed[p[2]], placed[p[3]]
		if dim.From != nil && dim.To != nil && !slices.Contains(m.Dimensions, dim) {
			m.Dimensions = append(m.Dimensions, dim)
		}
	} else if p := aboveGround().FindStringSubmatch(c.Text); p != nil && placed[p[1]] != nil {
		dim.Way, dim.From = Upright, placed[p[1]]
		m.Dimensions = append(m.Dimensions, dim)
	}
}

func wayOf(function string) Way {
	switch function {
	case "horizontal":
		return Level
	case "taut":
		return Around
	}
	return Straight
}

// clearances adds the distances that a rule asks around intakes.
func (m *Marks) clearances(d *design.Design, r *checker.Result) {
	if r.Outcome == rules.NotApplicable || r.Outcome == rules.NotDue {
		return
	}
	placed := subjectsOf(d, r)
	for _, c := range r.Comparisons {
		p := between().FindStringSubmatch(c.Text)
		if p == nil || wayOf(p[1]) == Around {
			continue // what a corner shields is no outline
		}
		printed, reach := reachOf(r, c)
		for _, name := range p[2:] {
			around, ok := placed[name].(*design.Opening)
			if ok && around.Kind == "intake" && reach > 0 {
				m.add(Clearance{around, reach, printed, wayOf(p[1]) == Level, r.Problem() && r.Outcome != rules.Open && !c.Holds, []string{r.Rule.Title}})
			}
		}
	}
}

// reachOf is the length that a comparison asks for: as it was compared, else the
// limit that it names; 0 where neither is a length.
func reachOf(r *checker.Result, c checker.Comparison) (string, q.Length) {
	printed := c.Required
	if p := namedLimit().FindStringSubmatch(c.Text); printed == "" && p != nil {
		for _, l := range r.Limits {
			if l.Name == p[1] {
				printed = l.Value
			}
		}
	}
	length, err := q.ParseAs[q.Length](printed)
	if err != nil {
		return "", 0
	}
	return printed, length
}

// add puts a clearance to one of the same reach, if there is one.
func (m *Marks) add(c Clearance) {
	for i := range m.Clearances {
		old := &m.Clearances[i]
		if old.Around == c.Around && old.OnPlan == c.OnPlan && q.Compare(float64(old.Reach), float64(c.Reach)) == 0 {
			old.Broken = old.Broken || c.Broken
			if !slices.Contains(old.For, c.For[0]) {
				old.For = append(old.For, c.For[0])
			}
			return
		}
	}
	m.Clearances = append(m.Clearances, c)
}
