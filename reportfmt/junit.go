package reportfmt

import (
	"bufio"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// junitFormat writes the XML that hosts of builds read as results of tests: a
// suite for each design, a case for each rule and its subjects. A case fails
// where the result makes the review fail, so that a host shows what the exit code
// says. What asks something without failing, what a variance accepts, and what
// does not apply is skipped, with the reason. A design that could not be
// reviewed, and a review in which nothing was checked, is an error.
type junitFormat struct{}

func (junitFormat) Name() string { return "junit" }

func (junitFormat) begin(s Setting, o Output) writer {
	return &junitWriter{to: o.To, gate: s.Gate, all: junitSuites{Name: driverName, Time: "0"}, suites: parts{aside: o.Aside()}}
}

// junitWriter lays the suites aside: the element around them counts them.
type junitWriter struct {
	to     io.Writer
	gate   Gate
	all    junitSuites // without its suites
	suites parts
}

func (w *junitWriter) report(r *reviewed) error {
	return w.add(junitReport(r.Report, w.gate, r.changes))
}

func (w *junitWriter) failure(f Failure) error { return w.add(junitFailed(f)) }

func (w *junitWriter) add(s junitSuite) error {
	w.all.count(&s)
	makeVisible(&s)
	var out bytes.Buffer
	encoder := xml.NewEncoder(&out)
	encoder.Indent("  ", "  ")
	if err := encoder.EncodeElement(s, xml.StartElement{Name: xml.Name{Local: "testsuite"}}); err != nil {
		return err
	}
	return w.suites.add(s.Name, out.Bytes())
}

func (w *junitWriter) end() error {
	if len(w.suites.list) == 0 {
		if err := w.add(junitError(driverName, nothingReviewed, "")); err != nil {
			return err
		}
	}
	text, err := xml.Marshal(w.all)
	if err != nil {
		return err
	}
	const bottom = "</testsuites>"
	out := bufio.NewWriter(w.to)
	out.WriteString(xml.Header + strings.TrimSuffix(string(text), bottom) + "\n")
	err = w.suites.each(func(suite []byte) error {
		out.Write(suite)
		return out.WriteByte('\n')
	})
	if err != nil {
		return err
	}
	out.WriteString(bottom + "\n")
	return out.Flush()
}

func (all *junitSuites) count(s *junitSuite) {
	for _, c := range s.Cases {
		s.Tests++
		switch {
		case c.Error != nil:
			s.Errors++
		case c.Failure != nil:
			s.Failures++
		case c.Skipped != nil:
			s.Skipped++
		}
	}
	all.Tests += s.Tests
	all.Failures += s.Failures
	all.Errors += s.Errors
}

func junitReport(r *checker.Report, g Gate, c *changes) junitSuite {
	if r.Count().Decided() == 0 {
		s := junitError(r.File, nothingChecked, "")
		s.Properties = junitPropertiesOf(r, c)
		return s
	}
	s := junitSuite{Name: r.File, Time: "0", Properties: junitPropertiesOf(r, c), Out: strings.Join(remarks(r), "\n")}
	names := map[string]int{}
	for i := range r.Results {
		s.Cases = append(s.Cases, junitCaseOf(r.File, &r.Results[i], g, c, names))
	}
	return s
}

func junitPropertiesOf(r *checker.Report, c *changes) *junitProperties {
	list := []junitProperty{{"date", r.Date}, {"stage", string(projectOf(r).Stage)}}
	for _, p := range r.Packs {
		list = append(list, junitProperty{"pack", packText(p)})
	}
	if text := c.text(r); text != "" {
		list = append(list, junitProperty{"baseline", text})
	}
	return &junitProperties{append(list, junitProperty{"note", closing})}
}

// junitCaseOf names a case by rule and subjects; hosts take two of one name for
// one, so further ones are numbered.
func junitCaseOf(file string, r *checker.Result, g Gate, c *changes, names map[string]int) junitCase {
	name := oneLine(ruleID(r) + ": " + subjects(r))
	names[name]++
	if n := names[name]; n > 1 {
		name = fmt.Sprintf("%s (%d)", name, n)
	}
	result := junitCase{Class: file, Name: name, Time: "0"}
	switch {
	case g.stops(r, c):
		result.Failure = &junitMessage{Type: junitType(r), Message: problemText(r) + c.mark(r), Text: detail(file, r)}
	case headline(r) != "":
		result.Skipped = &junitMessage{Message: headline(r) + c.mark(r), Text: detail(file, r)}
	case r.Outcome == rules.NotDue || r.Outcome == rules.NotApplicable:
		result.Skipped = &junitMessage{Message: oneLine(joined(": ", outcomeWords[r.Outcome], strings.Join(r.Reasons, "; ")))}
	}
	return result
}

func junitType(r *checker.Result) string {
	if r.Outcome == rules.Open {
		return string(rules.Open)
	}
	return string(r.Level)
}

func junitFailed(f Failure) junitSuite {
	var lines []string
	for _, p := range f.problems() {
		lines = append(lines, oneLine(placeText(f.File, p.Position)+": "+mistake(p)))
	}
	return junitError(f.File, plural(len(lines), "mistake", "mistakes")+": nothing in this file was checked", strings.Join(lines, "\n"))
}

// junitError is a suite of one case that could not be decided.
func junitError(name, message, text string) junitSuite {
	failed := junitCase{Class: name, Name: "review", Time: "0", Error: &junitMessage{Message: message, Text: text}}
	return junitSuite{Name: name, Time: "0", Cases: []junitCase{failed}}
}
