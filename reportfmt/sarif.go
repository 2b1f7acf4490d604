package reportfmt

import "strings"

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

func (sarifFormat) begin(s Setting, o Output) writer {
	return &sarifHostWriter{sarifLogOf(s, o)}
}

// sarifHostWriter writes the profile for hosts.
type sarifHostWriter struct{ log *sarifLogWriter }

func (w *sarifHostWriter) report(r *reviewed) error {
	found := problems(r.Report)
	w.log.rules.add(r.File, found)
	w.log.notify(r.Report)
	return addElements(&w.log.results, r.File, resultIndent, found, sarifResultOf)
}

func (w *sarifHostWriter) failure(f Failure) error { return w.log.fail(f) }

func (w *sarifHostWriter) end() error {
	ids := w.log.rules.ids()
	return w.log.write(w.log.run(ids), ids, nil)
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
