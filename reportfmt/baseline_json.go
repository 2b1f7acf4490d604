package reportfmt

import (
	"cmp"
	"encoding/json"
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

func baselineOfJSON(source []byte) ([]earlier, error) {
	var d jsonDocument
	if err := json.Unmarshal(source, &d); err != nil {
		return nil, unreadable(source, err)
	}
	if d.Version != jsonVersion {
		return nil, fmt.Errorf("the report has version %d of its format, expected %d", d.Version, jsonVersion)
	}
	var all []earlier
	for _, report := range d.Reports {
		for i := range report.Results {
			r := &report.Results[i]
			if r.Fingerprint == "" {
				return nil, fmt.Errorf("%s: result %d has no fingerprint", report.File, i+1)
			}
			all = append(all, earlierOfJSON(report.File, r))
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
