package reportfmt

import (
	"fmt"
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
)

// csvFormat writes a table for spreadsheets: one row for each result, of every
// outcome. A result with a variance has the outcome "accepted", a mistake of a
// file that could not be reviewed "not reviewed", and a remark "remark", so that
// a filter by outcome finds them.
//
// Every cell is quoted. A text that a spreadsheet would compute, because it
// begins with one of = + - @, has an apostrophe before it.
type csvFormat struct{}

func (csvFormat) Name() string { return "csv" }

func (csvFormat) begin(_ Setting, o Output) writer {
	w := &csvWriter{to: o.To}
	w.rows.WriteString(csvLine(csvColumns))
	return w
}

// csvWriter writes the rows of one design after those of the other.
type csvWriter struct {
	to   io.Writer
	rows strings.Builder // not yet handed over
}

func (w *csvWriter) report(r *reviewed) error {
	for i := range r.Results {
		w.rows.WriteString(csvRow(csvResult(r.Report, &r.Results[i], r.changes)))
	}
	for _, remark := range r.Remarks {
		w.rows.WriteString(csvRow(csvOther("remark", r.File, remark.Position, remark.Text)))
	}
	return w.end()
}

func (w *csvWriter) failure(f Failure) error {
	for _, p := range f.problems() {
		w.rows.WriteString(csvRow(csvOther("not reviewed", f.File, p.Position, mistake(p))))
	}
	return w.end()
}

// end hands over the rows.
func (w *csvWriter) end() error {
	_, err := io.WriteString(w.to, w.rows.String())
	w.rows.Reset()
	return err
}

// csvColumns are the columns in their order.
var csvColumns = []string{
	"file", "project", "line", "column", "outcome", "level", "baseline", "pack", "rule", "title", "topic", "due",
	"subjects", "message", "found", "required", "difference", "missing", "reasons", "stated", "variance",
	"accepted by", "until", "remedy", "caution", "basis", "limits", "pointer", "fingerprint",
}

// cells are the filled cells of a row, by column.
type cells map[string]string

func csvResult(report *checker.Report, r *checker.Result, c *changes) cells {
	told := telling(r)
	row := cells{
		"file": report.File, "project": projectOf(report).Name,
		"outcome": string(r.Outcome), "level": string(r.Level), "baseline": c.state(r),
		"pack": r.Pack, "rule": r.Rule.ID, "title": r.Rule.Title, "topic": string(r.Rule.Topic), "due": string(r.Rule.Due),
		"subjects": subjects(r), "message": message(r),
		"found":      several(each(told, func(c checker.Comparison) string { return c.Found })),
		"required":   several(each(told, required)),
		"difference": several(each(told, func(c checker.Comparison) string { return c.Difference })),
		"missing":    several(each(r.Missing, func(m checker.MissingInput) string { return m.Key })),
		"reasons":    several(reasonsOf(r)), "stated": several(r.Stated),
		"remedy": r.Remedy, "caution": r.Rule.Caution,
		"basis": several(basisTexts(r.Rule.Basis)), "limits": several(localLimits(r)),
		"pointer": r.Pointer, "fingerprint": fingerprint(r),
	}
	row.place(r.Position)
	if v := r.Variance; v != nil {
		row["outcome"] = "accepted"
		row["variance"], row["accepted by"], row["until"] = v.Reason, v.By, textOr(v.Until, "")
	}
	return row
}

// csvOther is a row about no rule.
func csvOther(outcome, file string, at document.Position, message string) cells {
	row := cells{"file": file, "outcome": outcome, "message": message}
	row.place(at)
	return row
}

// place leaves out what is about a file as a whole.
func (row cells) place(at document.Position) {
	if at.Line > 0 {
		row["line"], row["column"] = fmt.Sprint(at.Line), fmt.Sprint(at.Column)
	}
}

// several puts texts into one cell.
func several(texts []string) string { return joined("; ", texts...) }

func csvRow(row cells) string {
	return csvLine(each(csvColumns, func(column string) string { return row[column] }))
}

func csvLine(texts []string) string {
	return strings.Join(each(texts, csvCell), ",") + "\n"
}

// csvCell quotes a text: readers that part cells at semicolons or tabs then do
// not find any in it.
func csvCell(text string) string {
	text = oneLine(text)
	if computed(text) {
		text = "'" + text
	}
	return `"` + strings.ReplaceAll(text, `"`, `""`) + `"`
}

// computed tells whether a spreadsheet would take a text for a formula. Some
// take the wide forms of the signs as well.
func computed(text string) bool {
	return text != "" && strings.ContainsAny(string([]rune(text)[:1]), "=+-@\uff1d\uff0b\uff0d\uff20")
}
