package reportfmt

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"path"

	"github.com/ventlint/ventlint/rules"
)

// gitlabFormat writes the Code Quality report that GitLab shows beside a change:
// the problems, the remarks, and the mistakes of files that could not be
// reviewed, which are blockers.
type gitlabFormat struct{}

func (gitlabFormat) Name() string { return "gitlab" }

type gitlabIssue struct {
	Description string         `json:"description"`
	Check       string         `json:"check_name"`
	Fingerprint string         `json:"fingerprint"` // of one issue alone
	Severity    string         `json:"severity"`
	Location    gitlabLocation `json:"location"`
}

type gitlabLocation struct {
	Path  string      `json:"path"`
	Lines gitlabLines `json:"lines"`
}

type gitlabLines struct {
	Begin int `json:"begin"`
}

func (gitlabFormat) begin(_ Setting, o Output) writer {
	return &gitlabWriter{o.To, parts{aside: o.Aside()}}
}

// gitlabWriter puts the issues of all designs into the order of their files.
type gitlabWriter struct {
	to     io.Writer
	issues parts
}

func (w *gitlabWriter) report(r *reviewed) error { return w.add(r.File, linesOf(r)) }

func (w *gitlabWriter) failure(f Failure) error { return w.add(f.File, linesOfFailure(f)) }

func (w *gitlabWriter) add(file string, lines []line) error {
	seen := map[string]int{}
	return addElements(&w.issues, file, "", lines, func(l line) gitlabIssue {
		seen[l.key]++
		return gitlabIssueOf(l, seen[l.key])
	})
}

func (w *gitlabWriter) end() error {
	w.issues.sort()
	return fill(w.to, &[]gitlabIssue{}, list{of: []*parts{&w.issues}})
}

// gitlabIssueOf makes an issue of a line; count tells those apart that nothing but
// their place does.
func gitlabIssueOf(l line, count int) gitlabIssue {
	key := l.key
	if count > 1 {
		key += fmt.Sprintf("\x00%d", count)
	}
	return gitlabIssue{
		Description: oneLine(l.text),
		Check:       oneLine(l.tag),
		Fingerprint: digest(key),
		Severity:    gitlabSeverity(l),
		Location:    gitlabLocation{path.Clean(l.file), gitlabLines{l.at.Line}},
	}
}

func digest(key string) string {
	sum := sha256.Sum256([]byte(key))
	return hex.EncodeToString(sum[:16])
}

// gitlabSeverity keeps the heaviest word for what kept a design from being
// reviewed.
func gitlabSeverity(l line) string {
	switch {
	case l.level == rules.Error && (l.tag == designTag || l.tag == reviewTag):
		return "blocker"
	case l.level == rules.Error:
		return "major"
	case l.level == rules.Warning:
		return "minor"
	}
	return "info"
}
