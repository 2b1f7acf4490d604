package reportfmt

// The parts of a SARIF 2.1.0 log that the upload profile writes, with the
// property names of the standard.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}

	sarifRun struct {
		Tool               sarifTool         `json:"tool"`
		Invocations        []sarifInvocation `json:"invocations"`
		OriginalURIBaseIDs sarifBases        `json:"originalUriBaseIds"`
		ColumnKind         string            `json:"columnKind"`
		Results            []sarifResult     `json:"results"` // never null: that would mean that nothing was run
	}

	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}

	sarifDriver struct {
		Name           string      `json:"name"`
		Version        string      `json:"version,omitempty"`
		InformationURI string      `json:"informationUri"`
		Rules          []sarifRule `json:"rules"`
	}

	sarifRule struct {
		ID            string          `json:"id"`
		Name          string          `json:"name"`
		Short         sarifText       `json:"shortDescription"`
		Full          sarifText       `json:"fullDescription"`
		Help          sarifText       `json:"help"`
		Configuration sarifConfig     `json:"defaultConfiguration"`
		Properties    sarifProperties `json:"properties"`
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
		Locations []sarifLocation `json:"locations"`
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
		RuleID       string            `json:"ruleId"`
		RuleIndex    int               `json:"ruleIndex"`
		Level        string            `json:"level"`
		Message      sarifText         `json:"message"`
		Locations    []sarifLocation   `json:"locations"`
		Related      []sarifLocation   `json:"relatedLocations,omitempty"`
		Fingerprints sarifFingerprints `json:"partialFingerprints"`
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
