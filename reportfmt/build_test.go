package reportfmt

import (
	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// The batches that formats are tested with. House, county, rules and figures
// are invented.

func batch(reports ...*checker.Report) Batch {
	return Batch{Reports: reports, Setting: Setting{Tool: Tool{Name: "ventlint", Version: "0.1.0"}}}
}

func report(file string, results ...checker.Result) *checker.Report {
	for i := range results { // as a review does
		r := &results[i]
		r.Advice = r.Rule.Remedy
		if r.Outcome == rules.Fail || r.Outcome == rules.Open || r.Outcome == rules.Review {
			r.Remedy = r.Rule.Remedy
		}
	}
	return &checker.Report{
		File: file,
		Design: &design.Design{Project: &design.Project{
			Name: "Lot 12, Alder Rise", Site: text("12 Alder Rise, an invented street"),
			Jurisdiction: text("Harbor County, an invented county"), Stage: "permit", Units: "IP",
		}},
		Date: "2026-03-14",
		Packs: []checker.PackUsed{
			{ID: "model-code", Title: "Invented model code", Edition: "2021", Digest: "3f0a"},
			{ID: "harbor-county", Title: "Harbor County amendments", Digest: "77b1"},
		},
		Results: results,
	}
}

func text(s string) *string { return &s }

func at(line, column, end int) document.Position {
	return document.Position{Line: line, Column: column, EndColumn: end}
}

func subject(name, label, id string) checker.Subject {
	return checker.Subject{Name: name, Label: label, ID: id}
}

func placedAt(s checker.Subject, at document.Position, pointer string) checker.Subject {
	s.Position, s.Pointer = at, pointer
	return s
}

func separationRule() *rules.Rule {
	return &rules.Rule{
		ID: "intake-exhaust-distance", Title: "Intake kept away from exhaust openings", Topic: "openings",
		Level: rules.Error, Due: "permit", When: "not same_fitting(intake, exhaust)",
		Require: "distance(intake, exhaust) >= limit.intake_to_exhaust or rise(intake, exhaust) >= limit.exhaust_above_intake",
		Remedy:  "move one of the two, or raise the exhaust above the intake",
		Basis: []rules.Basis{
			{Document: "Invented Model Code", Edition: "2021", Section: "M15.4 item 3", Read: "seen"},
			{Document: "Harbor County Code", Section: "14.08.030", Read: "memory", Remark: "adds to the model code"},
		},
	}
}

func failedSeparation() checker.Result {
	return checker.Result{
		Rule: separationRule(), Pack: "harbor-county",
		Subjects: []checker.Subject{
			placedAt(subject("intake", `intake "fresh"`, "fresh"), at(40, 6, 13), "/opening/0"),
			placedAt(subject("exhaust", `exhaust "stale"`, "stale"), at(48, 6, 13), "/opening/1"),
		},
		Outcome: rules.Fail, Level: rules.Error,
		Message: `intake "fresh" is 6 ft 2 in from exhaust "stale"`,
		Comparisons: []checker.Comparison{
			{Text: "distance(intake, exhaust) >= limit.intake_to_exhaust", Found: "6 ft 2 in", Operator: ">=",
				Required: "12 ft", Difference: "5 ft 10 in"},
			{Text: "rise(intake, exhaust) >= limit.exhaust_above_intake", Found: "1 ft", Operator: ">=",
				Required: "3 ft", Difference: "2 ft"},
		},
		Position: at(41, 13, 20), Pointer: "/opening/0/from_left",
		Inputs: []checker.Input{
			{Key: "opening.fresh.from_left", Position: at(41, 13, 20)},
			{Key: "opening.stale.from_left", Position: at(49, 13, 20)},
		},
	}
}

func heaterPressure() checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "house-pressure", Title: "House not drawn below what a natural-draft appliance tolerates", Topic: "pressure",
			Level: rules.Error, Due: "concept",
			Require: "worst_case_pressure() <= appliance.pressure_limit",
			Remedy:  "balance the flows, interlock the exhausts, or bring in makeup air",
			Caution: "combustion gases can spill into the house; have a qualified person test the draft",
			Basis:   []rules.Basis{{Document: "trade handbook", Read: "practice"}},
		},
		Pack: "model-code", Subjects: []checker.Subject{subject("appliance", `water heater "tank"`, "tank")},
		Outcome: rules.Fail, Level: rules.Error,
		Message: `the house is drawn to 7.2 Pa below outdoors beside water heater "tank"`,
		Comparisons: []checker.Comparison{
			{Text: "worst_case_pressure() <= appliance.pressure_limit", Found: "7.2 Pa", Operator: "<=",
				Required: "5 Pa", Difference: "2.2 Pa"},
			{Text: "appliance.vent == 'natural-draft'", Found: "natural-draft", Operator: "==",
				Required: "natural-draft", Holds: true},
		},
		Position: at(120, 18, 24), Pointer: "/appliance/0/pressure_limit",
	}
}

func openAccess() checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "working-space", Title: "Level working space before the ventilator", Topic: "access",
			Level: rules.Error, Due: "permit", Require: "unit.access.working_depth >= 30 in and unit.access.working_width >= 30 in",
			Remedy: "dimension the space before the control side",
			Basis:  []rules.Basis{{Document: "Invented Model Code", Edition: "2021", Section: "M3.5", Read: "secondary"}},
		},
		Pack: "model-code", Subjects: []checker.Subject{subject("unit", `ventilator "erv-1"`, "erv-1")},
		Outcome: rules.Open, Level: rules.Error,
		Message: "needs ventilator.erv-1.access.working_depth, ventilator.erv-1.access.working_width",
		Missing: []checker.MissingInput{
			{Key: "ventilator.erv-1.access.working_depth", Position: at(77, 1, 20)},
			{Key: "ventilator.erv-1.access.working_width", Position: at(77, 1, 20)},
		},
		Position: at(70, 6, 13), Pointer: "/ventilator/0",
	}
}

func judgedFitting() checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "combination-fitting", Title: "Combination fitting listed and placed by its instructions", Topic: "openings",
			Level: rules.Warning, Due: "permit", Require: "opening.fitting_listed", Judge: true,
			Remedy: "attach the listing and the page of the instructions that shows this placement",
			Basis:  []rules.Basis{{Document: "Invented Model Code", Edition: "2021", Section: "M15.4 exception", Read: "derived"}},
		},
		Pack: "model-code", Subjects: []checker.Subject{subject("opening", `intake "fresh"`, "fresh")},
		Outcome: rules.Review, Level: rules.Warning,
		Message:  `intake "fresh" shares the fitting "hood" with exhaust "stale"`,
		Reasons:  []string{"whether the listing covers this placement is read in its instructions"},
		Position: at(44, 11, 17), Pointer: "/opening/0/fitting",
	}
}

func advisedFlow() checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "flows-balanced", Title: "Supply and extract flows balanced", Topic: "rates", Level: rules.Warning, Due: "concept",
			Require: "abs(unit.supply_flow - unit.extract_flow) <= 10 % * unit.supply_flow",
			Remedy:  "adjust one of the flows",
			Basis:   []rules.Basis{{Document: "common practice", Read: "practice"}},
		},
		Pack: "model-code", Subjects: []checker.Subject{subject("unit", `ventilator "erv-1"`, "erv-1")},
		Outcome: rules.Fail, Level: rules.Warning, Message: "supply and extract differ by 14 cfm",
		Comparisons: []checker.Comparison{{Text: "abs(unit.supply_flow - unit.extract_flow) <= 10 % * unit.supply_flow",
			Found: "14 cfm", Operator: "<=", Required: "8 cfm", Difference: "6 cfm"}},
		Stated:   []string{`"erv-1" to "tank": 9 ft, as dimensioned on drawing M-2`},
		Position: at(72, 16, 24), Pointer: "/ventilator/0/supply_flow",
	}
}

func notedLabel() checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "terminal-loss", Title: "Terminal losses stated at their flow", Topic: "ducts", Level: rules.Note, Due: "permit",
			Require: "all(terminals, .loss <= 0.05 inwc)", Remedy: "state the loss at the design flow",
			Basis: []rules.Basis{{Document: "trade handbook", Read: "memory"}},
		},
		Pack: "model-code", Outcome: rules.Fail, Level: rules.Note, Message: "one terminal loses more than the rest",
		Comparisons: []checker.Comparison{{Text: ".loss <= 0.05 inwc", Of: `terminal "bed 2"`, Found: "0.08 inwc",
			Operator: "<=", Required: "0.05 inwc", Difference: "0.03 inwc"}},
		Position: at(95, 8, 21), Pointer: "/terminal/3/loss",
	}
}

func acceptedSeparation() checker.Result {
	r := failedSeparation()
	r.Subjects[1] = subject("exhaust", `exhaust "dryer"`, "dryer")
	r.Message = `intake "fresh" is 9 ft from exhaust "dryer"`
	r.Comparisons = []checker.Comparison{{Text: "distance(intake, exhaust) >= limit.intake_to_exhaust",
		Found: "9 ft", Operator: ">=", Required: "12 ft", Difference: "3 ft"}}
	r.Variance = &design.Variance{Rule: "harbor-county:intake-exhaust-distance", Subject: text("fresh"),
		Reason: "the dryer moves in the second phase of work", By: "building official", Until: text("2026-12-31")}
	return r
}

func quiet(o rules.Outcome, reasons ...string) checker.Result {
	return checker.Result{
		Rule: &rules.Rule{
			ID: "whole-house-rate", Title: "Whole-dwelling rate delivered", Topic: "rates", Level: rules.Error, Due: "concept",
			Require: "unit.supply_flow >= 65 cfm", Remedy: "raise the flow",
			Basis: []rules.Basis{{Document: "Invented Model Code", Edition: "2021", Section: "M15.7", Read: "seen"}},
		},
		Pack: "model-code", Subjects: []checker.Subject{subject("unit", `ventilator "erv-1"`, "erv-1")},
		Outcome: o, Message: "the ventilator delivers 80 cfm", Reasons: reasons,
		Comparisons: []checker.Comparison{{Text: "unit.supply_flow >= 65 cfm", Found: "80 cfm", Operator: ">=",
			Required: "65 cfm", Holds: true}},
		Stated:   []string{`"fresh" to "lane": 14 ft, as dimensioned on drawing M-1`},
		Position: at(72, 16, 24), Pointer: "/ventilator/0/supply_flow",
		Inputs: []checker.Input{{Key: "ventilator.erv-1.supply_flow", Position: at(72, 16, 24)}},
	}
}

// everyOutcome has each outcome, each level of a failed rule, and a variance.
func everyOutcome() *checker.Report {
	r := report("designs/alder-12.vent.toml",
		quiet(rules.Pass), notedLabel(), advisedFlow(), judgedFitting(), openAccess(), heaterPressure(),
		failedSeparation(), acceptedSeparation(), quiet(rules.Informational),
		quiet(rules.NotDue, "due from the stage final"), quiet(rules.NotApplicable, "the dwelling has no garage"))
	r.Assumptions = []checker.Assumption{
		{Text: "air at sea level, because the design gives no elevation", Basis: "common practice"},
		{Text: "flow exponent of the envelope 0.65", Basis: "trade handbook, from memory"},
	}
	return r
}
