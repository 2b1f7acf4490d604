package reportfmt

// The parts of a SARIF 2.1.0 log that the evidence profile alone writes. What
// the standard has no place for stands in property bags.
type (
	// sarifExtension is a rule pack. The rules stand with the driver, where every
	// reader finds them; their ids begin with the pack.
	sarifExtension struct {
		Name       string              `json:"name"`
		FullName   string              `json:"fullName,omitempty"`
		Version    string              `json:"version,omitempty"`
		Properties sarifPackProperties `json:"properties"`
	}

	sarifPackProperties struct {
		Digest string `json:"digest"` // sha256 of the pack and those it extends
	}

	// sarifStandard is one edition of a document that rules cite (3.19.3).
	sarifStandard struct {
		Name          string       `json:"name"`
		FullName      string       `json:"fullName"`
		Version       string       `json:"version,omitempty"` // edition
		GUID          string       `json:"guid"`
		Comprehensive bool         `json:"isComprehensive"` // never: only what rules cite is listed
		Taxa          []sarifTaxon `json:"taxa"`
	}

	// sarifTaxon is a section of a standard.
	sarifTaxon struct {
		ID    string    `json:"id"`
		Short sarifText `json:"shortDescription"`
	}

	sarifComponent struct {
		Name string `json:"name"`
		GUID string `json:"guid"`
	}

	sarifRelationship struct {
		Target      sarifTarget `json:"target"`
		Kinds       []string    `json:"kinds"`
		Description *sarifText  `json:"description,omitempty"` // how the citation is known
	}

	sarifTarget struct {
		ID        string         `json:"id"`
		Component sarifComponent `json:"toolComponent"`
	}

	sarifReviewed struct {
		Location sarifArtifact `json:"location"`
		Roles    []string      `json:"roles"`
	}

	sarifSuppression struct {
		Kind          string                      `json:"kind"`
		Status        string                      `json:"status"`
		Justification string                      `json:"justification,omitempty"`
		Location      *sarifLocation              `json:"location,omitempty"`
		Properties    *sarifSuppressionProperties `json:"properties,omitempty"`
	}

	sarifSuppressionProperties struct {
		Rule    string `json:"rule"` // as the variance names it
		Subject string `json:"subject,omitempty"`
		By      string `json:"by"` // a role
		Until   string `json:"until,omitempty"`
	}

	// sarifResultProperties has our own word for the outcome, which tells a rule
	// that is not due from one that does not apply, and what the outcome weighs;
	// the profile for hosts writes no more.
	sarifResultProperties struct {
		Outcome     string           `json:"outcome"`
		Level       string           `json:"level,omitempty"`
		Topic       string           `json:"topic,omitempty"`
		Due         string           `json:"due,omitempty"`
		Comparisons []jsonComparison `json:"comparisons,omitempty"`
		Missing     []string         `json:"missing,omitempty"`
		Reasons     []string         `json:"reasons,omitempty"`
		Stated      []string         `json:"stated,omitempty"`
		Limits      []jsonLimit      `json:"limits,omitempty"`
	}

	sarifRunProperties struct {
		Reports []sarifReport `json:"reports"`
	}

	// sarifReport is what a report says of a design as a whole.
	sarifReport struct {
		File        string           `json:"file"`
		Project     jsonProject      `json:"project"`
		Date        string           `json:"date"`
		Packs       []string         `json:"packs"`
		Counts      jsonCounts       `json:"counts"`
		Assumptions []jsonAssumption `json:"assumptions"`
	}
)
