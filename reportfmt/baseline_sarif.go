package reportfmt

import (
	"cmp"
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// run reads a run of this program; a log may hold others, which are passed over. The
// name of the program may come behind the results.
func (r *baselineReader) run() error {
	var name string
	var results []earlier
	var wrong error // with the results, if they are of this program
	err := r.json.object(func(key string) error {
		switch {
		case key == "tool":
			var tool struct{ Driver struct{ Name string } }
			err := r.value(&tool)
			name = tool.Driver.Name
			return err
		case key == "results" && (name == "" || name == driverName):
			var err error
			results, wrong, err = r.resultsOfSARIF()
			return err
		}
		return r.json.skip()
	})
	if err != nil || name != driverName {
		return err
	}
	r.ours = true
	if wrong != nil {
		return wrong
	}
	return r.add(results)
}

// resultsOfSARIF reads the results of a run but those that were gone already; wrong is
// the first that is none of this program.
func (r *baselineReader) resultsOfSARIF() (results []earlier, wrong, err error) {
	n := 0
	err = r.json.list(func() error {
		n++
		var result sarifResult
		bad, err := r.decode(&result)
		switch {
		case err != nil:
			return err
		case bad != nil:
			bad = fmt.Errorf("cannot be read: %w", bad)
		case result.Baseline == absentState:
			return nil
		default:
			var e earlier
			if e, bad = earlierOfResult(&result); bad == nil {
				results = append(results, e)
				return r.more()
			}
		}
		if wrong == nil {
			wrong = fmt.Errorf("result %d %w", n, bad)
		}
		return nil
	})
	return results, wrong, err
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
