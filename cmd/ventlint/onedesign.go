package main

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/reportfmt"
)

// oneInput finds the one design that a path names.
func oneInput(path string) (input, error) {
	inputs, err := find([]string{path}, "standard-input.vent.toml")
	if err != nil {
		return input{}, err
	}
	if len(inputs) != 1 {
		return input{}, fmt.Errorf("%s: %d designs, expected one", path, len(inputs))
	}
	return inputs[0], nil
}

// oneDesign reads the one design that a path names. What is wrong with it is told.
func oneDesign(m machine, path string) (input, *design.Design, error) {
	in, err := oneInput(path)
	if err != nil {
		return in, nil, err
	}
	source, err := in.read(m.stdin)
	if err != nil {
		return in, nil, err
	}
	d, problems := design.Load(in.name, source)
	if len(problems) > 0 {
		return in, nil, refused(m, reportfmt.Failure{File: in.name, Problems: problems})
	}
	return in, d, nil
}

// refused tells, in lines, why a design could not be used.
func refused(m machine, f reportfmt.Failure) error {
	form, err := reportfmt.Named("lines")
	if err == nil {
		err = reportfmt.Write(m.stderr, form, reportfmt.Batch{Failures: []reportfmt.Failure{f}})
	}
	if err != nil {
		return err
	}
	return errTold
}
