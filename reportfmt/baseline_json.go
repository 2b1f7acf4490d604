package reportfmt

import (
	"cmp"
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// reports reads those of this program's own format.
func (r *baselineReader) reports() error {
	if r.version != nil {
		if err := r.checkVersion(); err != nil {
			return err
		}
	}
	return r.json.list(r.report)
}

func (r *baselineReader) checkVersion() error {
	if r.version != float64(jsonVersion) {
		return fmt.Errorf("the report has version %.64v of its format, expected %d", r.version, jsonVersion)
	}
	return nil
}

func (r *baselineReader) report() error {
	var file string
	var results []earlier
	err := r.json.object(func(key string) error {
		switch key {
		case "file":
			return r.value(&file)
		case "results":
			return r.json.list(func() error {
				var result comparedResult
				switch bad, err := r.decode(&result); {
				case err != nil:
					return err
				case bad != nil:
					return fmt.Errorf("result %d of %.64q: %w", len(results)+1, file, bad)
				case result.Fingerprint == "":
					return fmt.Errorf("result %d of %.64q has no fingerprint", len(results)+1, file)
				}
				results = append(results, earlierOfJSON(&result))
				return r.more()
			})
		}
		return r.json.skip()
	})
	if err != nil {
		return err
	}
	file = fileKey(file)
	for i := range results {
		results[i].File = file
	}
	return r.add(results)
}

// comparedResult is what is compared of a jsonResult: a small part.
type comparedResult struct {
	Rule        string       `json:"rule"`
	Pack        string       `json:"pack"`
	Title       string       `json:"title"`
	Outcome     string       `json:"outcome"`
	Level       string       `json:"level"`
	Message     string       `json:"message"`
	Position    jsonPosition `json:"position"`
	Pointer     string       `json:"pointer"`
	Fingerprint string       `json:"fingerprint"`
	Variance    *struct{}    `json:"variance"`
}

func earlierOfJSON(r *comparedResult) earlier {
	return earlier{
		identity: identity{Rule: r.Pack + ":" + r.Rule, Fingerprint: r.Fingerprint, Outcome: rules.Outcome(r.Outcome), Accepted: r.Variance != nil},
		Level:    rules.Level(r.Level), Message: cmp.Or(r.Message, r.Title),
		Position: document.Position(r.Position), Pointer: r.Pointer,
	}
}
