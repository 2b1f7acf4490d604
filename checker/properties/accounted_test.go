package properties

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/BurntSushi/toml"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

const today = "2026-03-31"

// review reviews a design against a part of the rules of a pack.
func (s *specimen) review() (*checker.Report, *rules.Effective, error) {
	d, err := load(s.text)
	if err != nil {
		return nil, nil, err
	}
	names := rules.BuiltIn()
	whole, err := library.Pack(names[s.r.IntN(len(names))])
	if err != nil {
		return nil, nil, err
	}
	pack := *whole
	pack.Rules = chosen(s.r, whole.Rules, share)
	return checker.Review(d, checker.Request{File: "house.vent.toml", Packs: []*rules.Effective{&pack}, Date: today}), &pack, nil
}

// accounted: every rule has one result for each of its subjects, and every result
// stands at a place of the file. A case is a result.
func accounted(s *specimen) (int, error) {
	report, pack, err := s.review()
	if err != nil {
		return 0, err
	}
	if err := oneForEach(report, pack); err != nil {
		return len(report.Results), err
	}
	f := newFile(s.text)
	for i := range report.Results {
		if err := f.holds(&report.Results[i]); err != nil {
			return i + 1, fmt.Errorf("%s: %w", report.Results[i].Rule.ID, err)
		}
	}
	return len(report.Results), nil
}

// oneForEach counts the results of every rule. A rule that ranges over whole lists
// has as many as there are combinations; any other has none twice.
func oneForEach(report *checker.Report, pack *rules.Effective) error {
	results, seen := map[string][]rules.Outcome{}, map[string]bool{}
	for _, r := range report.Results {
		results[r.Rule.ID] = append(results[r.Rule.ID], r.Outcome)
		about := r.Rule.ID
		for _, s := range r.Subjects {
			about += " " + s.Pointer
		}
		if seen[about] {
			return fmt.Errorf("%s has two results", about)
		}
		seen[about] = true
	}
	for _, rule := range pack.Rules {
		got := results[rule.ID]
		n, known := combinations(report.Design, rule)
		if n == 0 || slices.Contains(got, rules.NotDue) {
			n = 1 // which says so
		}
		if len(got) == 0 || known && len(got) != n {
			return fmt.Errorf("%s has %d results, expected %d", rule.ID, len(got), n)
		}
	}
	return nil
}

// combinations counts the subjects of a rule; not known where it chooses among them.
func combinations(d *design.Design, rule *rules.Compiled) (n int, known bool) {
	n = 1
	for _, each := range rule.Each() {
		size := -1
		for _, root := range facts.Vocabulary().Roots {
			if root.Name == each.Collection && root.Type.Kind() == reflect.Slice {
				size = reflect.ValueOf(root.Get(facts.Of(d))).Len()
			}
		}
		if size < 0 {
			return 1, false
		}
		n *= size
	}
	return n, true
}

// file is a design file as any reader of text and of TOML sees it.
type file struct {
	lines  []string
	values map[string]any
}

func newFile(text string) *file {
	f := &file{lines: strings.Split(text, "\n")}
	if _, err := toml.Decode(text, &f.values); err != nil {
		panic(err) // it has been loaded
	}
	return f
}

// holds tells what of a result does not stand in the file.
func (f *file) holds(r *checker.Result) error {
	places, pointers := []document.Position{r.Position}, []string{r.Pointer}
	for _, s := range r.Subjects {
		places, pointers = append(places, s.Position), append(pointers, s.Pointer)
	}
	for _, m := range r.Missing {
		places = append(places, m.Position)
	}
	for _, in := range r.Inputs {
		places = append(places, in.Position)
	}
	for _, at := range places {
		if at.Line < 1 || at.Line > len(f.lines) || at.Column < 1 || at.EndColumn < at.Column || at.EndColumn > len([]rune(f.lines[at.Line-1]))+1 {
			return fmt.Errorf("the place %v is not in the file", at)
		}
	}
	for _, pointer := range pointers {
		if !f.leadsTo(pointer) {
			return fmt.Errorf("%q points to nothing", pointer)
		}
	}
	return nil
}

// leadsTo follows a JSON pointer.
func (f *file) leadsTo(pointer string) bool {
	at := reflect.ValueOf(f.values)
	for _, step := range strings.Split(pointer, "/")[1:] {
		for at.Kind() == reflect.Interface {
			at = at.Elem()
		}
		i, err := strconv.Atoi(step)
		switch {
		case at.Kind() == reflect.Map:
			at = at.MapIndex(reflect.ValueOf(step))
		case at.Kind() == reflect.Slice && err == nil && i < at.Len():
			at = at.Index(i)
		default:
			return false
		}
		if !at.IsValid() {
			return false
		}
	}
	return true
}
