package reportfmt

import (
	"io"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// driverName is the tool that every log of this program names.
const driverName = "ventlint"

// sarifFormat writes SARIF 2.1.0 for hosts that show alerts: the problems only,
// one result each.
//
// A result with a kind other than "fail" must have the level "none" (section
// 3.27.10 of the standard), and such hosts ignore the kind but not the level: a
// missing input would vanish from view. So this profile writes no kind, which
// means "fail", gives an open outcome the level that the rule gives it, and says
// in the message that an input is missing. What a person must judge is a note,
// because it never fails a review. What a variance accepts is left out: hosts
// would show a suppressed result as an alert.
//
// Files that could not be reviewed, and reviews in which no rule was decided,
// are notifications of the run, which then was not successful.
type sarifFormat struct{}

func (sarifFormat) Name() string { return "sarif" }

func (sarifFormat) Write(w io.Writer, b Batch) error {
	found := problems(b)
	run, index := sarifRunOf(b, found)
	run.Results = each(found, func(p placed) sarifResult { return sarifResultOf(p, index) })
	return writeSARIF(w, run)
}

func writeSARIF(w io.Writer, run sarifRun) error {
	return writeJSON(w, &sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs:    []sarifRun{run},
	})
}

// sarifRunOf gives what both profiles share, and the place of each rule in it.
func sarifRunOf(b Batch, found []placed) (sarifRun, map[string]int) {
	ruleList, index := sarifRules(found)
	notifications := sarifNotifications(b)
	return sarifRun{
		Tool: sarifTool{Driver: sarifDriver{
			Name: b.Tool.Name, Version: sarifVersion(b.Tool.Version),
			InformationURI: "https://github.com/ventlint/ventlint",
			Rules:          ruleList,
		}},
		Invocations: []sarifInvocation{{
			ExecutionSuccessful: successful(notifications),
			Notifications:       notifications,
		}},
		OriginalURIBaseIDs: sarifBases{
			SourceRoot: sarifBase{sarifText{Text: "The directory that holds the design files."}},
		},
		ColumnKind: "unicodeCodePoints",
	}, index
}

// sarifVersion is a version that readers can compare: it begins with a number. One
// that was built from no release has none.
func sarifVersion(version string) string {
	version = strings.TrimPrefix(version, "v")
	if version == "" || version[0] < '0' || version[0] > '9' {
		return ""
	}
	return version
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

func sarifNotifications(b Batch) []sarifNotification {
	if b.empty() {
		return []sarifNotification{{Level: "error", Message: sarifText{Text: sentence(nothingReviewed)}}}
	}
	all := []sarifNotification{}
	add := func(level, text, file string, at document.Position) {
		all = append(all, sarifNotification{
			Level:     level,
			Message:   sarifText{Text: sarifPlain(sentence(text))},
			Locations: []sarifLocation{{Physical: sarifPhysicalOf(file, at)}},
		})
	}
	for _, f := range b.Failures {
		for _, p := range f.problems() {
			add("error", mistake(p), f.File, p.Position)
		}
	}
	for _, r := range b.Reports {
		if r.Count().Decided() == 0 {
			add("error", nothingChecked, r.File, document.Position{})
		}
		for _, remark := range r.Remarks {
			add("warning", oneLine(remark.Text), r.File, remark.Position)
		}
	}
	return all
}
