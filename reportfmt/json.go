package reportfmt

import (
	"bytes"
	"io"
	"slices"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// jsonFormat writes everything that a review found, for other programs; see
// jsonDocument.
type jsonFormat struct{}

func (jsonFormat) Name() string { return "json" }

func (jsonFormat) begin(s Setting, o Output) writer {
	return &jsonWriter{to: o.To, document: jsonDocument{
		Format:   jsonFormatName,
		Version:  jsonVersion,
		Tool:     jsonTool(s.Tool),
		Note:     closing,
		Reports:  []jsonReport{},
		Failures: []jsonFailure{},
	}}
}

// jsonWriter writes the reports as they come, and around them the document, which
// keeps none.
type jsonWriter struct {
	to       io.Writer
	document jsonDocument
	begun    bool         // the reports are
	text     bytes.Buffer // of the next one
}

// jsonReports and jsonResults are where the reports stand, and the results of each.
var (
	jsonReports = list{key: "reports", indent: "  "}
	jsonResults = list{key: "results", indent: "      "}
)

func (w *jsonWriter) report(r *reviewed) error {
	w.text.Reset()
	if w.begun {
		w.text.WriteString(",\n")
	} else {
		before, _, err := w.around()
		if err != nil {
			return err
		}
		w.begun = true
		w.text.Write(append(before, "[\n"...))
	}
	if err := writeElements(&w.text, jsonReports.indent, []*checker.Report{r.Report}, r.changes.jsonReport); err != nil {
		return err
	}
	if len(r.Results) > 0 {
		return w.results(r)
	}
	_, err := w.text.WriteTo(w.to)
	return err
}

// resultsAtOnce is how many results are made before they are written: a giant site has
// very many.
const resultsAtOnce = 100

// results writes a report whose text is there but for the results.
func (w *jsonWriter) results(r *reviewed) error {
	before, after := jsonResults.cut(bytes.Clone(w.text.Bytes()))
	w.text.Reset()
	w.text.Write(before)
	lead := "[\n"
	for some := range slices.Chunk(pointers(r.Results), resultsAtOnce) {
		w.text.WriteString(lead)
		if err := writeElements(&w.text, jsonResults.indent, some, r.changes.jsonResult); err != nil {
			return err
		}
		if _, err := w.text.WriteTo(w.to); err != nil {
			return err
		}
		lead = ",\n"
	}
	w.text.WriteString("\n" + jsonResults.indent + "]")
	w.text.Write(after)
	_, err := w.text.WriteTo(w.to)
	return err
}

func (w *jsonWriter) failure(f Failure) error {
	w.document.Failures = append(w.document.Failures, jsonFailureOf(f))
	return nil
}

func (w *jsonWriter) end() error {
	if !w.begun {
		return writeJSON(w.to, &w.document)
	}
	_, after, err := w.around()
	if err != nil {
		return err
	}
	_, err = io.WriteString(w.to, "\n"+jsonReports.indent+"]"+string(after))
	return err
}

// around gives the document before and after its reports.
func (w *jsonWriter) around() (before, after []byte, err error) {
	var text bytes.Buffer
	err = writeJSON(&text, &w.document)
	before, after = jsonReports.cut(text.Bytes())
	return before, after, err
}

// each maps a list; the result is never nil.
func each[A, B any](list []A, f func(A) B) []B {
	out := make([]B, 0, len(list))
	for _, a := range list {
		out = append(out, f(a))
	}
	return out
}

func (c *changes) jsonReport(r *checker.Report) jsonReport {
	return jsonReport{
		File:        r.File,
		Project:     jsonProjectOf(r),
		Date:        r.Date,
		Packs:       each(r.Packs, func(p checker.PackUsed) jsonPack { return jsonPack(p) }),
		Counts:      jsonCountsOf(r),
		Results:     []jsonResult{}, // written apart
		Figures:     each(r.Figures, func(f checker.Figure) jsonFigure { return jsonFigure(f) }),
		Assumptions: each(r.Assumptions, func(a checker.Assumption) jsonAssumption { return jsonAssumption(a) }),
		Remarks: each(r.Remarks, func(m checker.Remark) jsonRemark {
			return jsonRemark{m.Text, jsonPosition(inFile(m.Position))}
		}),
		Baseline: c.jsonBaseline(r),
	}
}

func jsonProjectOf(r *checker.Report) jsonProject {
	project := projectOf(r)
	return jsonProject{
		Name:         project.Name,
		Site:         textOr(project.Site, ""),
		Jurisdiction: textOr(project.Jurisdiction, ""),
		Stage:        string(project.Stage),
		Units:        string(project.Units),
	}
}

// pointers points to the elements of a list.
func pointers[T any](list []T) []*T {
	all := make([]*T, len(list))
	for i := range list {
		all[i] = &list[i]
	}
	return all
}

func jsonCountsOf(r *checker.Report) jsonCounts {
	c := r.Count()
	return jsonCounts{
		Fail:          c.Of[rules.Fail],
		Open:          c.Of[rules.Open],
		Review:        c.Of[rules.Review],
		Pass:          c.Of[rules.Pass],
		Accepted:      c.Accepted,
		Informational: c.Of[rules.Informational],
		NotDue:        c.Of[rules.NotDue],
		NotApplicable: c.Of[rules.NotApplicable],
		Decided:       r.Count().Decided(),
	}
}

func (c *changes) jsonResult(r *checker.Result) jsonResult {
	return jsonResult{
		Rule: r.Rule.ID, Pack: r.Pack,
		Title: r.Rule.Title, Topic: string(r.Rule.Topic), Due: string(r.Rule.Due),
		Outcome: string(r.Outcome), Level: string(r.Level), Message: r.Message,
		Subjects:    each(r.Subjects, jsonSubjectOf),
		Others:      r.Others,
		Position:    jsonPosition(inFile(r.Position)),
		Pointer:     r.Pointer,
		Fingerprint: fingerprint(r),
		Comparisons: each(r.Comparisons, jsonComparisonOf),
		Missing:     each(r.Missing, func(m checker.MissingInput) jsonKey { return jsonKeyOf(m.Key, m.Position) }),
		Reasons:     each(r.Reasons, same),
		Stated:      each(r.Stated, same),
		Inputs:      each(r.Inputs, func(i checker.Input) jsonKey { return jsonKeyOf(i.Key, i.Position) }),
		Variance:    jsonVarianceOf(r),
		Remedy:      r.Remedy,
		Caution:     r.Rule.Caution,
		Basis:       each(r.Rule.Basis, jsonBasisOf),
		Limits:      each(r.Limits, jsonLimitOf),
		Baseline:    c.state(r),
	}
}

func jsonSubjectOf(s checker.Subject) jsonSubject {
	return jsonSubject{Name: s.Name, Label: s.Label, ID: s.ID, Position: jsonPosition(inFile(s.Position)), Pointer: s.Pointer}
}

func same(s string) string { return s }

func jsonKeyOf(key string, at document.Position) jsonKey {
	return jsonKey{Key: key, Position: jsonPosition(inFile(at))}
}

func jsonComparisonOf(c checker.Comparison) jsonComparison {
	return jsonComparison{
		Text: c.Text, Of: c.Of, Found: c.Found, Operator: c.Operator,
		Required: c.Required, Difference: c.Difference, Holds: c.Holds,
	}
}

func jsonVarianceOf(r *checker.Result) *jsonVariance {
	v := r.Variance
	if v == nil {
		return nil
	}
	return &jsonVariance{
		Rule: v.Rule, Subject: textOr(v.Subject, ""),
		Reason: v.Reason, By: v.By, Until: textOr(v.Until, ""),
	}
}

func jsonLimitOf(l checker.Limit) jsonLimit {
	return jsonLimit{Name: l.Name, Title: l.Title, Value: l.Value, Pack: l.Pack, Basis: each(l.Basis, jsonBasisOf)}
}

func jsonBasisOf(b rules.Basis) jsonBasis {
	return jsonBasis{
		Document: b.Document, Edition: b.Edition, Section: b.Section,
		Read: string(b.Read), Remark: b.Remark,
	}
}

func jsonFailureOf(f Failure) jsonFailure {
	return jsonFailure{File: f.File, Problems: each(f.problems(), jsonProblemOf)}
}

func jsonProblemOf(p document.Problem) jsonProblem {
	problem := jsonProblem{Path: p.Path, Message: p.Message, Hint: p.Hint}
	if p.Position.Line > 0 {
		at := jsonPosition(inFile(p.Position))
		problem.Position = &at
	}
	return problem
}
