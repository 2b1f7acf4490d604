package reportfmt

import _ "embed"

//go:embed schema/report.schema.json
var reportSchema []byte

// JSONSchema is the text of the JSON Schema (draft 2020-12) of what the format json
// writes.
func JSONSchema() []byte { return reportSchema }
