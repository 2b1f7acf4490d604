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

// readBaseline reads the report of --baseline; nil without one.
func readBaseline(path string) (*reportfmt.Baseline, error) {
	if path == "" {
		return nil, nil
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, fmt.Errorf("--baseline %w", plain(err))
	}
	defer file.Close()
	source, err := io.ReadAll(io.LimitReader(file, largestBaseline+1))
	if err != nil {
		return nil, fmt.Errorf("--baseline %w", plain(err))
	}
	if len(source) > largestBaseline {
		return nil, fmt.Errorf("--baseline %s: larger than %d MiB, expected a report", path, largestBaseline>>20)
	}
	baseline, err := reportfmt.ReadBaseline(source)
	if err != nil {
		return nil, fmt.Errorf("--baseline %s: %w", path, err)
	}
	return baseline, nil
}
