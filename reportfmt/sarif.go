package reportfmt

import (
	"io"
	"net/url"
	"path"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

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
	ruleList, index := sarifRules(found)
	notifications := sarifNotifications(b)
	return writeJSON(w, &sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs: []sarifRun{{
			Tool: sarifTool{Driver: sarifDriver{
				Name: b.Tool.Name, Version: b.Tool.Version,
				InformationURI: "https://github.com/ventlint/ventlint",
				Rules:          ruleList,
			}},
			Invocations: []sarifInvocation{{
				ExecutionSuccessful: len(notifications) == 0,
				Notifications:       notifications,
			}},
			OriginalURIBaseIDs: sarifBases{
				SourceRoot: sarifBase{sarifText{Text: "The directory that holds the design files."}},
			},
			ColumnKind: "unicodeCodePoints",
			Results:    each(found, func(p placed) sarifResult { return sarifResultOf(p, index) }),
		}},
	})
}

// sourceRoot is the base of relative addresses, by the convention that the
// standard mentions.
const sourceRoot = "%SRCROOT%"

func sarifNotifications(b Batch) []sarifNotification {
	all := []sarifNotification{}
	for _, f := range b.Failures {
		for _, p := range f.problems() {
			all = append(all, sarifNotification{
				Level:     "error",
				Message:   sarifText{Text: sarifPlain(sentence(mistake(p)))},
				Locations: []sarifLocation{{Physical: sarifPhysicalOf(f.File, p.Position)}},
			})
		}
	}
	for _, r := range b.Reports {
		if r.Count().Decided() == 0 {
			all = append(all, sarifNotification{
				Level:     "error",
				Message:   sarifText{Text: sentence(nothingChecked)},
				Locations: []sarifLocation{{Physical: sarifPhysicalOf(r.File, document.Position{})}},
			})
		}
	}
	return all
}

// sarifPhysicalOf has no region for what is about a file as a whole.
func sarifPhysicalOf(file string, at document.Position) sarifPhysical {
	p := sarifPhysical{Artifact: sarifArtifactOf(file)}
	if at.Line > 0 {
		p.Region = sarifRegionOf(at)
	}
	return p
}

// sarifRegionOf stays on one line: hosts show an alert on a change only when all
// its lines changed.
func sarifRegionOf(at document.Position) *sarifRegion {
	at = inFile(at)
	return &sarifRegion{StartLine: at.Line, StartColumn: at.Column, EndLine: at.Line, EndColumn: at.EndColumn}
}

// sarifArtifactOf gives a relative address below the source root. A file that
// the caller names absolutely keeps its place, and then must have no base.
func sarifArtifactOf(file string) sarifArtifact {
	if drive := len(file) > 2 && file[1:3] == ":/"; drive || path.IsAbs(file) {
		address := url.URL{Scheme: "file", Path: "/" + strings.TrimPrefix(file, "/")}
		return sarifArtifact{URI: address.String()}
	}
	address := url.URL{Path: path.Clean(file)}
	return sarifArtifact{URI: address.String(), URIBaseID: sourceRoot}
}
