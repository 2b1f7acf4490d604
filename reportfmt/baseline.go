package reportfmt

import (
	"bufio"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
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
// sarif-evidence, of any size. One in the format sarif holds problems only.
func ReadBaseline(from io.Reader) (*Baseline, error) { return readBaseline(from, mostEarlier) }

// mostEarlier is how many results a baseline may have: those of thousands of houses.
const mostEarlier = 2_000_000

func readBaseline(from io.Reader, most int) (*Baseline, error) {
	text := bufio.NewReader(from)
	if mark, _ := text.Peek(3); string(mark) == "\ufeff" {
		text.Discard(3)
	}
	r := &baselineReader{json: newJSONStream(text), left: most, words: map[string]string{}, results: map[string][]earlier{}}
	if err := r.document(); err != nil {
		return nil, r.unreadable(err)
	}
	return &Baseline{r.results}, nil
}

// baselineReader reads an earlier review, of which it holds what is compared.
type baselineReader struct {
	json    *jsonStream
	words   map[string]string // texts that many results have
	results map[string][]earlier
	left    int    // how many more results there may be
	format  string // as the document says
	version any
	ours    bool // the document has a run of this program
}

// document reads a report of either format: this program's own, or SARIF.
func (r *baselineReader) document() error {
	err := r.json.object(func(key string) error {
		switch key {
		case "format":
			return r.value(&r.format)
		case "version":
			return r.value(&r.version)
		case "reports":
			return r.reports()
		case "runs":
			return r.json.list(r.run)
		}
		return r.json.skip()
	})
	if err != nil {
		return err
	}
	if err := r.json.end(); err != nil {
		return err
	}
	if r.format == jsonFormatName {
		return r.checkVersion()
	}
	if !r.ours {
		return errNoReport
	}
	return nil
}

// more counts one more result.
func (r *baselineReader) more() error {
	if r.left--; r.left < 0 {
		return errors.New("found too many results; the format sarif has fewer, as it holds problems alone")
	}
	return nil
}

// add keeps results.
func (r *baselineReader) add(results []earlier) error {
	for _, e := range results {
		if err := e.check(); err != nil {
			return err
		}
		e.File, e.Rule, e.Message = r.once(e.File), r.once(e.Rule), r.once(e.Message)
		e.Outcome, e.Level = rules.Outcome(r.once(string(e.Outcome))), rules.Level(r.once(string(e.Level)))
		r.results[e.File] = append(r.results[e.File], e)
	}
	return nil
}

// once gives the same memory for the same text.
func (r *baselineReader) once(text string) string {
	if known, ok := r.words[text]; ok {
		return known
	}
	r.words[text] = text
	return text
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

// value reads a value that every report has of one kind.
func (r *baselineReader) value(into any) error {
	bad, err := r.decode(into)
	return cmp.Or(err, bad)
}

// decode reads a value; bad is what is JSON but not of the wanted kind.
func (r *baselineReader) decode(into any) (bad, err error) {
	err = r.json.Decode(into)
	var kind *json.UnmarshalTypeError
	switch {
	case !errors.As(err, &kind):
		return nil, err
	case kind.Field == "":
		return errNoReport, nil
	}
	return fmt.Errorf("%q is a %.64s: %w", strings.ReplaceAll(kind.Field, ".", "/"), kind.Value, errNoReport), nil
}

// unreadable words a mistake of JSON, with its line.
func (r *baselineReader) unreadable(err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return fmt.Errorf("near line %d: unexpected end of JSON input; %w", r.json.line(), errNoReport)
	case errors.As(err, &syntax):
		return fmt.Errorf("near line %d: %w; %w", r.json.line(), err, errNoReport)
	}
	return err
}
