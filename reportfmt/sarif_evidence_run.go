package reportfmt

import (
	"slices"

	"github.com/ventlint/ventlint/checker"
)

// sarifPacks lists the packs of all reports, each once.
func sarifPacks(b Batch) []sarifExtension {
	var all []sarifExtension
	for _, report := range b.Reports {
		for _, p := range report.Packs {
			e := sarifExtension{Name: p.ID, FullName: p.Title, Version: p.Edition, Properties: sarifPackProperties{p.Digest}}
			if !slices.Contains(all, e) {
				all = append(all, e)
			}
		}
	}
	return all
}

// sarifReviewedFiles lists the designs, those too that could not be reviewed.
func sarifReviewedFiles(b Batch) []sarifReviewed {
	var all []sarifReviewed
	add := func(file string) {
		all = append(all, sarifReviewed{sarifArtifactOf(file), []string{"analysisTarget"}})
	}
	for _, r := range b.Reports {
		add(r.File)
	}
	for _, f := range b.Failures {
		add(f.File)
	}
	return all
}

func sarifReportOf(r *checker.Report) sarifReport {
	return sarifReport{
		File: r.File, Project: jsonProjectOf(r), Date: r.Date,
		Packs:       each(r.Packs, func(p checker.PackUsed) string { return p.ID }),
		Counts:      jsonCountsOf(r),
		Assumptions: each(r.Assumptions, func(a checker.Assumption) jsonAssumption { return jsonAssumption(a) }),
	}
}
