// Package schema holds the JSON Schemas (draft 2020-12) of designs, packs and
// configurations, for editors and other programs. They are generated from the
// types that the loaders fill: "go test ./rules/schema -update" writes them anew.
//
// A schema knows keys, types, words and the spelling of quantities. What the parts
// of a file say together, the loaders alone know: what a schema accepts can still
// be refused, and what a loader accepts no schema refuses.
package schema

import "embed"

//go:embed *.schema.json
var files embed.FS

const suffix = ".schema.json"

// Names lists the schemas.
func Names() []string { return []string{"design", "pack", "config"} }

// Named gives the text of a schema; nil when there is none of the name.
func Named(name string) []byte {
	text, err := files.ReadFile(name + suffix)
	if err != nil {
		return nil
	}
	return text
}
