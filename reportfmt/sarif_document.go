package reportfmt

// The parts of a SARIF 2.1.0 log that the two profiles write, with the property
// names of the standard. Optional parts are those of the evidence profile.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}

	sarifRun struct {
		Tool               sarifTool           `json:"tool"`
		Invocations        []sarifInvocation   `json:"invocations"`
		OriginalURIBaseIDs sarifBases          `json:"originalUriBaseIds"`
		Artifacts          []sarifReviewed     `json:"artifacts,omitempty"`
		ColumnKind         string              `json:"columnKind"`
		Results            []sarifResult       `json:"results"` // never null: that would mean that nothing was run
		Taxonomies         []sarifStandard     `json:"taxonomies,omitempty"`
		Properties         *sarifRunProperties `json:"properties,omitempty"`
	}

	sarifTool struct {
		Driver     sarifDriver      `json:"driver"`
		Extensions []sarifExtension `json:"extensions,omitempty"`
	}

	sarifDriver struct {
		Name           string           `json:"name"`
		Version        string           `json:"version,omitempty"`
		InformationURI string           `json:"informationUri"`
		Rules          []sarifRule      `json:"rules"`
		Taxonomies     []sarifComponent `json:"supportedTaxonomies,omitempty"`
	}

	sarifRule struct {
		ID            string              `json:"id"`
		Name          string              `json:"name"`
		DeprecatedIDs []string            `json:"deprecatedIds,omitempty"`
		Short         sarifText           `json:"shortDescription"`
		Full          sarifText           `json:"fullDescription"`
		Help          sarifText           `json:"help"`
		Configuration sarifConfig         `json:"defaultConfiguration"`
		Relationships []sarifRelationship `json:"relationships,omitempty"`
		Properties    sarifProperties     `json:"properties"`
	}

	sarifText struct {
		Text     string `json:"text"`
		Markdown string `json:"markdown,omitempty"`
	}

	sarifConfig struct {
		Level string `json:"level"`
	}

	sarifProperties struct {
		Tags []string `json:"tags"`
	}

	sarifInvocation struct {
		ExecutionSuccessful bool                `json:"executionSuccessful"`
		Notifications       []sarifNotification `json:"toolExecutionNotifications"`
	}

	sarifNotification struct {
		Level     string          `json:"level"`
		Message   sarifText       `json:"message"`
		Locations []sarifLocation `json:"locations,omitempty"`
	}

	// sarifBases names the one base of relative addresses.
	sarifBases struct {
		SourceRoot sarifBase `json:"%SRCROOT%"`
	}

	// sarifBase leaves the address of the base out: where the files lie is no
	// business of the log.
	sarifBase struct {
		Description sarifText `json:"description"`
	}

	sarifResult struct {
		RuleID       string                 `json:"ruleId"`
		RuleIndex    int                    `json:"ruleIndex"` // follows its rule; -1 for one that the run did not ask
		Kind         string                 `json:"kind,omitempty"`
		Level        string                 `json:"level"`
		Message      sarifText              `json:"message"`
		Locations    []sarifLocation        `json:"locations"`
		Related      []sarifLocation        `json:"relatedLocations,omitempty"`
		Fingerprints sarifFingerprints      `json:"partialFingerprints"`
		Suppressions *[]sarifSuppression    `json:"suppressions,omitempty"` // of all results of a run or of none
		Baseline     string                 `json:"baselineState,omitempty"`
		Properties   *sarifResultProperties `json:"properties"`
	}

	sarifFingerprints struct {
		Subject string `json:"ventlintSubject/v1"`
	}

	sarifLocation struct {
		ID       int            `json:"id,omitempty"` // from 1, of those that a message links to
		Physical sarifPhysical  `json:"physicalLocation"`
		Logical  []sarifLogical `json:"logicalLocations,omitempty"`
		Message  *sarifText     `json:"message,omitempty"`
	}

	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}

	sarifArtifact struct {
		URI       string `json:"uri"`
		URIBaseID string `json:"uriBaseId,omitempty"`
	}

	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"`
	}

	sarifLogical struct {
		FullyQualifiedName string `json:"fullyQualifiedName"`
	}
)
