package main

import (
	"fmt"

	"github.com/ventlint/ventlint/reportfmt"
)

// largestBaseline bounds what is read: a report has many times the size of its
// designs.
const largestBaseline = 256 << 20

// readBaseline reads the report to compare with; nil without one. said tells where
// it was asked for.
func readBaseline(path, said string) (*reportfmt.Baseline, error) {
	if path == "" {
		return nil, nil
	}
	source, err := readReport(path)
	if err != nil {
		return nil, fmt.Errorf("%s %w", said, err)
	}
	baseline, err := reportfmt.ReadBaseline(source)
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", said, path, err)
	}
	return baseline, nil
}
