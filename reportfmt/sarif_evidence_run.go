package reportfmt

import (
	"slices"

	"github.com/ventlint/ventlint/checker"
)

// evidenceWriter writes the evidence profile.
type evidenceWriter struct {
	log     *sarifLogWriter
	absent  parts // results that the baseline had and their report no longer has
	reports parts
	packs   []sarifExtension
	files   []sarifReviewed
	cited   citations
}

func (w *evidenceWriter) report(r *reviewed) error {
	found := everything(r.Report)
	w.log.rules.add(r.File, found)
	w.log.notify(r.Report)
	w.cited.add(found)
	w.addPacks(r.Packs)
	w.addFile(r.File)
	err := addElements(&w.log.results, r.File, resultIndent, found, r.changes.evidenceOf)
	if err == nil && r.changes != nil {
		err = addElements(&w.absent, r.File, resultIndent, r.changes.absent, absentEvidence)
	}
	if err == nil {
		err = addElements(&w.reports, r.File, reportIndent, []*checker.Report{r.Report}, sarifReportOf)
	}
	return err
}

func (w *evidenceWriter) failure(f Failure) error {
	w.addFile(f.File)
	return w.log.fail(f)
}

func (w *evidenceWriter) end() error {
	ids := w.log.rules.ids()
	run := w.log.run(ids)
	run.cite(w.cited)
	run.Tool.Extensions = w.packs
	run.Artifacts = w.files
	run.Properties = &sarifRunProperties{Reports: []sarifReport{}}
	return w.log.write(run, ids, []*parts{&w.absent}, list{"reports", reportIndent, []*parts{&w.reports}})
}

// reportIndent is that of the line on which the reports of a run begin.
const reportIndent = "        "

// addPacks lists the packs of all reports, each once.
func (w *evidenceWriter) addPacks(used []checker.PackUsed) {
	for _, p := range used {
		e := sarifExtension{Name: p.ID, FullName: p.Title, Version: p.Edition, Properties: sarifPackProperties{p.Digest}}
		if !slices.Contains(w.packs, e) {
			w.packs = append(w.packs, e)
		}
	}
}

// addFile lists a design, also one that could not be reviewed.
func (w *evidenceWriter) addFile(file string) {
	w.files = append(w.files, sarifReviewed{sarifArtifactOf(file), []string{"analysisTarget"}})
}

func sarifReportOf(r *checker.Report) sarifReport {
	return sarifReport{
		File: r.File, Project: jsonProjectOf(r), Date: r.Date,
		Packs:       each(r.Packs, func(p checker.PackUsed) string { return p.ID }),
		Counts:      jsonCountsOf(r),
		Assumptions: each(r.Assumptions, func(a checker.Assumption) jsonAssumption { return jsonAssumption(a) }),
	}
}
