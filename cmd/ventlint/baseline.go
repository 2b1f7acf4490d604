package main

import (
	"fmt"
	"io"
	"os"

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
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("%s %w", said, plain(err))
	}
	defer file.Close()
	source, err := io.ReadAll(io.LimitReader(file, largestBaseline+1))
	if err != nil {
		return nil, fmt.Errorf("%s %w", said, plain(err))
	}
	if len(source) > largestBaseline {
		return nil, fmt.Errorf("%s %s: larger than %d MiB, expected a report", said, path, largestBaseline>>20)
	}
	baseline, err := reportfmt.ReadBaseline(source)
	if err != nil {
		return nil, fmt.Errorf("%s %s: %w", said, path, err)
	}
	return baseline, nil
}
