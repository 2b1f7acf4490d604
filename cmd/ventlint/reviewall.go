package main

import (
	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/reportfmt"
)

// outcome is what became of one input: a report, or a failure.
type outcome struct {
	report  *checker.Report
	failure *reportfmt.Failure
}

// reviewAll reviews the inputs in parallel and hands over what became of them in
// their order.
func reviewAll(m machine, inputs []input, packs *packShelf, f reviewFlags, take func(outcome) error) error {
	progress := newProgress(m, len(inputs))
	defer progress.end()
	return inOrder(inputs, func(in input) outcome {
		defer progress.step()
		return reviewOne(m, in, packs, f)
	}, take)
}

func reviewOne(m machine, in input, packs *packShelf, f reviewFlags) outcome {
	fail := func(problems ...document.Problem) outcome {
		return outcome{failure: &reportfmt.Failure{File: in.name, Problems: problems}}
	}
	source, err := in.read(m.stdin)
	if err != nil {
		return fail(document.Problem{Message: "could not be read: " + err.Error()})
	}
	if f.alone {
		packs.ahead(source)
	}
	d, problems := design.Load(in.name, source)
	if len(problems) > 0 {
		return fail(problems...)
	}
	chosen, problems := packs.forDesign(d)
	if len(problems) > 0 {
		return fail(problems...)
	}
	return outcome{report: checker.Review(d, checker.Request{File: in.name, Packs: chosen, Date: f.date, IgnoreVariances: f.ignoreVariances, Depth: f.depth, Beside: f.alone})}
}
