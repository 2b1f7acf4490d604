package reportfmt

import (
	"cmp"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// baselineOfSARIF reads the runs of this program; a log may hold others. Results are
// decoded one at a time, as those of the json format.
func baselineOfSARIF(source []byte) ([]earlier, error) {
	var l struct {
		Runs []json.RawMessage `json:"runs"`
	}
	if err := json.Unmarshal(source, &l); err != nil {
		return nil, unreadable(source, err)
	}
	var all []earlier
	ours := false
	for _, text := range l.Runs {
		name, results, err := resultsOfRun(text)
		if err != nil {
			return nil, err
		}
		if name != driverName {
			continue
		}
		ours = true
		for i, text := range results {
			e, known, err := earlierOfSARIF(text)
			if err != nil {
				return nil, fmt.Errorf("result %d %w", i+1, err)
			}
			if known {
				all = append(all, e)
			}
		}
	}
	if !ours {
		return nil, errNoReport
	}
	return all, nil
}

// resultsOfRun gives the name of the program that made a run, and its results.
func resultsOfRun(text []byte) (name string, results []json.RawMessage, err error) {
	var run struct {
		Tool struct {
			Driver struct {
				Name string `json:"name"`
			} `json:"driver"`
		} `json:"tool"`
		Results []json.RawMessage `json:"results"`
	}
	if err := json.Unmarshal(text, &run); err != nil {
		return "", nil, unreadable(text, err)
	}
	return run.Tool.Driver.Name, run.Results, nil
}

// earlierOfSARIF reads one result; it is not known when it was gone already.
func earlierOfSARIF(text []byte) (e earlier, known bool, err error) {
	var r sarifResult
	if err := json.Unmarshal(text, &r); err != nil {
		return earlier{}, false, fmt.Errorf("cannot be read: %w", unreadable(text, err))
	}
	if r.Baseline == absentState {
		return earlier{}, false, nil
	}
	e, err = earlierOfResult(&r)
	return e, true, err
}

func earlierOfResult(r *sarifResult) (earlier, error) {
	if r.Fingerprints.Subject == "" {
		return earlier{}, fmt.Errorf("has no fingerprint %q", "ventlintSubject/v1")
	}
	if len(r.Locations) == 0 {
		return earlier{}, fmt.Errorf("has no location")
	}
	at := r.Locations[0]
	file, err := keyOfAddress(at.Physical.Artifact.URI)
	if err != nil {
		return earlier{}, fmt.Errorf("has the address %.64q, expected that of a file", at.Physical.Artifact.URI)
	}
	e := earlier{Level: rules.Level(r.Level), Message: leadOf(r.Message.Text)}
	e.identity = identity{file, r.RuleID, r.Fingerprints.Subject, outcomeOfSARIF(r), r.Suppressions != nil && len(*r.Suppressions) > 0}
	if r.Properties != nil {
		e.Level = cmp.Or(rules.Level(r.Properties.Level), e.Level)
	}
	if e.Level == "none" {
		e.Level = ""
	}
	if region := at.Physical.Region; region != nil {
		e.Position = document.Position{Line: region.StartLine, Column: region.StartColumn, EndColumn: region.EndColumn}
	}
	if len(at.Logical) > 0 {
		e.Pointer = at.Logical[0].FullyQualifiedName
	}
	return e, nil
}

// outcomeOfSARIF prefers our own word: the standard has fewer, and the profile
// for hosts writes none. A result without a kind is a failed one (3.27.9).
func outcomeOfSARIF(r *sarifResult) rules.Outcome {
	word := cmp.Or(r.Kind, string(rules.Fail))
	if r.Properties != nil {
		word = cmp.Or(r.Properties.Outcome, word)
	}
	return rules.Outcome(word)
}

// leadOf is the first sentence of a message that sarifMessage wrote.
func leadOf(message string) string {
	lead, _, _ := strings.Cut(bracesSingle(message), ". Subject: ")
	return lead
}
