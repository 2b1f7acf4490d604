package reportfmt

// What a document says of itself.
const (
	jsonFormatName = "ventlint-report"
	jsonVersion    = 1
)

// The json format writes one jsonDocument. Lists are always there, empty when
// there is nothing; texts that a report does not have are left out. Quantities
// are texts in the units of the design, lines and columns count characters from
// 1. A change that a reader could notice raises the version.
type (
	jsonDocument struct {
		Format   string        `json:"format"`  // always ventlint-report
		Version  int           `json:"version"` // of this layout
		Tool     jsonTool      `json:"tool"`
		Note     string        `json:"note"` // what the review is worth
		Reports  []jsonReport  `json:"reports"`
		Failures []jsonFailure `json:"failures"` // files that could not be reviewed
	}

	jsonTool struct {
		Name    string `json:"name"`
		Version string `json:"version,omitempty"`
	}

	// jsonReport is the review of one design.
	jsonReport struct {
		File        string           `json:"file"`
		Project     jsonProject      `json:"project"`
		Date        string           `json:"date"` // day of the review, YYYY-MM-DD
		Packs       []jsonPack       `json:"packs"`
		Counts      jsonCounts       `json:"counts"`
		Results     []jsonResult     `json:"results"` // every rule for every subject, in the order of the review
		Figures     []jsonFigure     `json:"figures"` // computed values that a reader asks for first
		Assumptions []jsonAssumption `json:"assumptions"`
		Remarks     []jsonRemark     `json:"remarks"` // what else a reader must know, such as an unused variance
		Baseline    *jsonBaseline    `json:"baseline,omitempty"`
	}

	jsonProject struct {
		Name         string `json:"name"`
		Site         string `json:"site,omitempty"`
		Jurisdiction string `json:"jurisdiction,omitempty"`
		Stage        string `json:"stage"` // concept, permit, rough-in, final
		Units        string `json:"units"` // IP or SI
	}

	jsonPack struct {
		ID      string `json:"id"`
		Title   string `json:"title"`
		Edition string `json:"edition,omitempty"`
		Digest  string `json:"digest"` // sha256 of the pack and those it extends
	}

	// jsonCounts counts results by outcome. One with a variance counts as
	// accepted only. Decided is the sum of the first five; when
	// it is 0, nothing was checked.
	jsonCounts struct {
		Fail          int `json:"fail"`
		Open          int `json:"open"`
		Review        int `json:"review"`
		Pass          int `json:"pass"`
		Accepted      int `json:"accepted"`
		Informational int `json:"informational"`
		NotDue        int `json:"not_due"`
		NotApplicable int `json:"not_applicable"`
		Decided       int `json:"decided"`
	}

	// jsonResult is one rule for one subject. Outcome is fail, open (an input is
	// missing), review (a person must judge), pass, informational, notDue or
	// notApplicable; level is that of the first three, and what an accepted
	// departure would weigh.
	jsonResult struct {
		Rule        string           `json:"rule"`
		Pack        string           `json:"pack"`
		Title       string           `json:"title"`
		Topic       string           `json:"topic"`
		Due         string           `json:"due"` // stage from which the rule is due
		Outcome     string           `json:"outcome"`
		Level       string           `json:"level,omitempty"` // error, warning, note
		Message     string           `json:"message,omitempty"`
		Subjects    []jsonSubject    `json:"subjects"`         // empty: the dwelling
		Others      int              `json:"others,omitempty"` // further results of the rule and outcome, which this one stands for: a giant site is not listed in full
		Position    jsonPosition     `json:"position"`
		Pointer     string           `json:"pointer"`     // JSON pointer into the design
		Fingerprint string           `json:"fingerprint"` // of rule, subjects and pointer; keeps when lines move
		Comparisons []jsonComparison `json:"comparisons"`
		Missing     []jsonKey        `json:"missing"` // keys that would have to be given
		Reasons     []string         `json:"reasons"` // why a person must judge, or why not due or not applicable
		Stated      []string         `json:"stated"`  // drawings' dimensions used in place of geometry
		Inputs      []jsonKey        `json:"inputs"`  // keys that decided the outcome
		Variance    *jsonVariance    `json:"variance,omitempty"`
		Remedy      string           `json:"remedy,omitempty"`
		Caution     string           `json:"caution,omitempty"`
		Basis       []jsonBasis      `json:"basis"`
		Limits      []jsonLimit      `json:"limits"`
		Baseline    string           `json:"baseline,omitempty"` // new or unchanged, where the review was compared
	}

	jsonSubject struct {
		Name     string       `json:"name"` // as the rule calls it
		Label    string       `json:"label"`
		ID       string       `json:"id,omitempty"`
		Position jsonPosition `json:"position"`
		Pointer  string       `json:"pointer"`
	}

	// jsonPosition is on one line; the end column is one past the last character.
	jsonPosition struct {
		Line      int `json:"line"`
		Column    int `json:"column"`
		EndColumn int `json:"end_column"`
	}

	jsonComparison struct {
		Text       string `json:"text"` // as the rule writes it
		Of         string `json:"of,omitempty"`
		Found      string `json:"found"`
		Operator   string `json:"operator"`
		Required   string `json:"required"`
		Difference string `json:"difference,omitempty"`
		Holds      bool   `json:"holds"`
	}

	jsonKey struct {
		Key      string       `json:"key"`
		Position jsonPosition `json:"position"`
	}

	jsonVariance struct {
		Rule    string `json:"rule"`
		Subject string `json:"subject,omitempty"`
		Reason  string `json:"reason"`
		By      string `json:"by"` // a role
		Until   string `json:"until,omitempty"`
	}

	// jsonBasis is where a requirement comes from. Read is how its writer knows
	// it: seen, secondary, memory, practice or derived.
	jsonBasis struct {
		Document string `json:"document"`
		Edition  string `json:"edition,omitempty"`
		Section  string `json:"section,omitempty"`
		Read     string `json:"read"`
		Remark   string `json:"remark,omitempty"`
	}

	jsonAssumption struct {
		Text  string `json:"text"`
		Basis string `json:"basis,omitempty"`
	}

	// jsonFigure is a computed value, printed in the design's units.
	jsonFigure struct {
		Name  string `json:"name"`
		Of    string `json:"of,omitempty"` // what it is of; empty for the dwelling
		Value string `json:"value"`
		Note  string `json:"note,omitempty"`
	}

	jsonRemark struct {
		Text     string       `json:"text"`
		Position jsonPosition `json:"position"`
	}

	// jsonLimit is a named figure that the rule compares with.
	jsonLimit struct {
		Name  string      `json:"name"`
		Title string      `json:"title,omitempty"`
		Value string      `json:"value"`
		Pack  string      `json:"pack"` // that sets it
		Basis []jsonBasis `json:"basis"`
	}

	// jsonBaseline compares the problems of a report with an earlier review.
	jsonBaseline struct {
		New       int          `json:"new"`
		Unchanged int          `json:"unchanged"`
		Absent    []jsonAbsent `json:"absent"` // problems that the earlier review had and this one has not
	}

	// jsonAbsent has the place of the earlier review.
	jsonAbsent struct {
		Rule        string       `json:"rule"` // pack:rule
		Outcome     string       `json:"outcome"`
		Level       string       `json:"level,omitempty"`
		Message     string       `json:"message,omitempty"`
		Position    jsonPosition `json:"position"`
		Pointer     string       `json:"pointer"`
		Fingerprint string       `json:"fingerprint"`
	}

	jsonFailure struct {
		File     string        `json:"file"`
		Problems []jsonProblem `json:"problems"`
	}

	// jsonProblem has no position when it is about the file as a whole.
	jsonProblem struct {
		Position *jsonPosition `json:"position,omitempty"`
		Path     string        `json:"path,omitempty"`
		Message  string        `json:"message"`
		Hint     string        `json:"hint,omitempty"`
	}
)
