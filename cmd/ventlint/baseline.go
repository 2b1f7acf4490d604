package main

import (
	"fmt"
	"os"

	"github.com/ventlint/ventlint/reportfmt"
)

// readBaseline reads the report to compare with; nil without one. said tells where
// it was asked for.
func readBaseline(path, said string) (*reportfmt.Baseline, error) {
	if path == "" {
		return nil, nil
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s %w", said, plain(err))
	}
	defer file.Close()
	baseline, err := reportfmt.ReadBaseline(file)
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", said, path, plain(err))
	}
	return baseline, nil
}
