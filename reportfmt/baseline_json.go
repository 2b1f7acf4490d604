package reportfmt

import (
	"cmp"
	"encoding/json"
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// baselineOfJSON decodes results one at a time: a small file can hold so many empty
// ones that all of them would take hundreds of times its size.
func baselineOfJSON(source []byte) ([]earlier, error) {
	var d struct {
		Version int `json:"version"`
		Reports []struct {
			File    string            `json:"file"`
			Results []json.RawMessage `json:"results"`
		} `json:"reports"`
	}
	if err := json.Unmarshal(source, &d); err != nil {
		return nil, unreadable(source, err)
	}
	if d.Version != jsonVersion {
		return nil, fmt.Errorf("the report has version %d of its format, expected %d", d.Version, jsonVersion)
	}
	var all []earlier
	for _, report := range d.Reports {
		for i, text := range report.Results {
			var r jsonResult
			if err := json.Unmarshal(text, &r); err != nil {
				return nil, fmt.Errorf("result %d of %.64q: %w", i+1, report.File, unreadable(text, err))
			}
			if r.Fingerprint == "" {
				return nil, fmt.Errorf("result %d of %.64q has no fingerprint", i+1, report.File)
			}
			all = append(all, earlierOfJSON(report.File, &r))
		}
	}
	return all, nil
}

func earlierOfJSON(file string, r *jsonResult) earlier {
	return earlier{
		identity: identity{fileKey(file), r.Pack + ":" + r.Rule, r.Fingerprint, rules.Outcome(r.Outcome), r.Variance != nil},
		Level:    rules.Level(r.Level), Message: cmp.Or(r.Message, r.Title),
		Position: document.Position(r.Position), Pointer: r.Pointer,
	}
}
