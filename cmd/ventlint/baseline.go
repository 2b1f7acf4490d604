package main

import (
	"fmt"
	"io/fs"
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
	switch err.(type) {
	case nil:
		return baseline, nil
	case *fs.PathError: // which names the path
		return nil, fmt.Errorf("%s %w", said, plain(err))
	}
	return nil, fmt.Errorf("%s %s: %w", said, path, err)
}
