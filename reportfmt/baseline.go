package reportfmt

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"net/url"
	"path"
	"slices"
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// Baseline is an earlier review, read from its report, that a new one is
// compared with.
type Baseline struct {
	results map[string][]earlier // by the key of their file
}

// earlier is a result of an earlier review.
type earlier struct {
	identity
	Level    rules.Level // what the outcome weighs
	Message  string
	Position document.Position
	Pointer  string
}

// identity tells results apart from one review to the next. It knows no line,
// so that lines may move. The outcome is part of it: a missing input that was
// given and now fails its rule is new.
type identity struct {
	File        string // as fileKey gives it
	Rule        string // "pack:rule"
	Fingerprint string
	Outcome     rules.Outcome
	Accepted    bool // by a variance
}

func identityOf(file string, r *checker.Result) identity {
	return identity{fileKey(file), ruleID(r), fingerprint(r), r.Outcome, r.Variance != nil}
}

// problem tells whether a result asked something of the designer.
func (i identity) problem() bool {
	return !i.Accepted && i.Outcome.Problem()
}

// fileKey is a file's name as every format writes it, without "./".
func fileKey(file string) string { return path.Clean(Visible(file)) }

// keyOfAddress is the file key of the address that a SARIF log gives a file.
func keyOfAddress(address string) (string, error) {
	u, err := url.Parse(address)
	if err != nil {
		return "", err
	}
	name := u.Path
	if u.Scheme == "file" && len(name) > 3 && name[2:4] == ":/" { // a drive
		name = name[1:]
	}
	return fileKey(name), nil
}

var errNoReport = errors.New("expected a report of ventlint in the format json, sarif or sarif-evidence")

// ReadBaseline reads a report that was written in the format json, sarif or
// sarif-evidence. One in the format sarif holds problems only.
func ReadBaseline(source []byte) (*Baseline, error) {
	source = bytes.TrimPrefix(source, []byte("\ufeff"))
	var probe struct {
		Format string          `json:"format"`
		Runs   json.RawMessage `json:"runs"`
	}
	if err := json.Unmarshal(source, &probe); err != nil {
		return nil, unreadable(source, err)
	}
	read := baselineOfSARIF
	switch {
	case probe.Format == jsonFormatName:
		read = baselineOfJSON
	case probe.Runs == nil:
		return nil, errNoReport
	}
	results, err := read(source)
	if err != nil {
		return nil, err
	}
	b := &Baseline{map[string][]earlier{}}
	for _, e := range results {
		if err := e.check(); err != nil {
			return nil, err
		}
		b.results[e.File] = append(b.results[e.File], e)
	}
	return b, nil
}

// check refuses what this program does not write.
func (e earlier) check() error {
	if !slices.Contains(rules.Outcomes(), e.Outcome) {
		return fmt.Errorf("a result of %.64q has the outcome %.64q, expected one of %s", e.File, e.Outcome, listed(rules.Outcomes()))
	}
	if levels := e.Level.Values(); e.Level != "" && !slices.Contains(levels, string(e.Level)) {
		return fmt.Errorf("a result of %.64q has the level %.64q, expected one of %s", e.File, e.Level, listed(levels))
	}
	return nil
}

func listed[T ~string](words []T) string {
	return strings.Join(each(words, func(w T) string { return string(w) }), ", ")
}

// unreadable words a mistake in JSON, with its line where that is known.
func unreadable(source []byte, err error) error {
	var syntax *json.SyntaxError
	var wrong *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		read := source[:min(syntax.Offset, int64(len(source)))]
		return fmt.Errorf("line %d: %w; %w", 1+bytes.Count(read, []byte("\n")), err, errNoReport)
	case errors.As(err, &wrong) && wrong.Field != "":
		return fmt.Errorf("%q is a %.64s: %w", strings.ReplaceAll(wrong.Field, ".", "/"), wrong.Value, errNoReport)
	}
	return errNoReport
}
