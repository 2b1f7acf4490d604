package reportfmt

import (
	"io"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
)

// sarifLogWriter collects what both profiles share. Results are laid aside, since
// they stand in the order of their files and each tells the place of its rule among
// all rules of the log.
type sarifLogWriter struct {
	to       io.Writer
	tool     Tool
	results  parts
	rules    sarifRuleBook
	failed   []sarifNotification // of designs that could not be reviewed
	remarked []sarifNotification // of those that were
	designs  int
}

func sarifLogOf(s Setting, o Output) *sarifLogWriter {
	return &sarifLogWriter{to: o.To, tool: s.Tool, results: parts{aside: o.Aside()}, rules: sarifRuleBook{}}
}

// resultIndent is that of the line on which the results of a run begin.
const resultIndent = "      "

// notify keeps what a report says of a design as a whole.
func (w *sarifLogWriter) notify(r *checker.Report) {
	w.designs++
	if r.Count().Decided() == 0 {
		w.remarked = append(w.remarked, sarifNotificationOf("error", nothingChecked, r.File, document.Position{}))
	}
	for _, remark := range r.Remarks {
		w.remarked = append(w.remarked, sarifNotificationOf("warning", oneLine(remark.Text), r.File, remark.Position))
	}
}

func (w *sarifLogWriter) fail(f Failure) error {
	w.designs++
	for _, p := range f.problems() {
		w.failed = append(w.failed, sarifNotificationOf("error", mistake(p), f.File, p.Position))
	}
	return nil
}

func sarifNotificationOf(level, text, file string, at document.Position) sarifNotification {
	return sarifNotification{
		Level:     level,
		Message:   sarifText{Text: sarifPlain(sentence(text))},
		Locations: []sarifLocation{{Physical: sarifPhysicalOf(file, at)}},
	}
}

// run gives what both profiles share of a run, without results.
func (w *sarifLogWriter) run(ids []string) sarifRun {
	notifications := append(append([]sarifNotification{}, w.failed...), w.remarked...)
	if w.designs == 0 {
		notifications = []sarifNotification{{Level: "error", Message: sarifText{Text: sentence(nothingReviewed)}}}
	}
	return sarifRun{
		Tool: sarifTool{Driver: sarifDriver{
			Name: w.tool.Name, Version: sarifVersion(w.tool.Version),
			InformationURI: "https://github.com/ventlint/ventlint",
			Rules:          each(ids, func(id string) sarifRule { return w.rules[id].rule }),
		}},
		Invocations: []sarifInvocation{{
			ExecutionSuccessful: successful(notifications),
			Notifications:       notifications,
		}},
		OriginalURIBaseIDs: sarifBases{
			SourceRoot: sarifBase{sarifText{Text: "The directory that holds the design files."}},
		},
		ColumnKind: "unicodeCodePoints",
		Results:    []sarifResult{},
	}
}

// successful runs have no notification of an error (appendix I).
func successful(notifications []sarifNotification) bool {
	for _, n := range notifications {
		if n.Level == "error" {
			return false
		}
	}
	return true
}

// write writes the log: its results, those of further parts after them, and what
// other lists are still to fill in.
func (w *sarifLogWriter) write(run sarifRun, ids []string, further []*parts, lists ...list) error {
	w.results.sort()
	results := list{"results", resultIndent, append([]*parts{&w.results}, further...)}
	for _, p := range results.of {
		p.change = placing(ids)
	}
	return fill(w.to, &sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs:    []sarifRun{run},
	}, append([]list{results}, lists...)...)
}
