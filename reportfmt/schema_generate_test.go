package reportfmt

import (
	"go/ast"
	"go/parser"
	"go/token"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
)

// schemaAddress is where the schema is found.
const schemaAddress = "https://github.com/ventlint/ventlint/raw/main/reportfmt/schema/report.schema.json"

// object is a part of a schema.
type object = map[string]any

// schemaOfReports makes a schema of the types in json_document.go: their tags
// say what is there, their comments what it means, and narrowed what it can be.
func schemaOfReports(t *testing.T) object {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "json_document.go", nil, parser.ParseComments)
	require.NoError(t, err)
	definitions := object{}
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.TypeSpec); ok {
			definitions[definitionName(spec.Name.Name)] = definitionOf(t, spec)
		}
		return true
	})
	root := definitions["document"].(object)
	delete(definitions, "document")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = schemaAddress
	root["title"] = "Report of ventlint, as the format json writes it"
	root["$defs"] = definitions
	return root
}

func definitionName(name string) string {
	name = strings.TrimPrefix(name, "json")
	return strings.ToLower(name[:1]) + name[1:]
}

func definitionOf(t *testing.T, spec *ast.TypeSpec) object {
	properties, required := object{}, []string{}
	for _, field := range spec.Type.(*ast.StructType).Fields.List {
		tag := reflect.StructTag(strings.Trim(field.Tag.Value, "`")).Get("json")
		key, options, _ := strings.Cut(tag, ",")
		if options == "" {
			required = append(required, key)
		}
		property := schemaOf(t, field.Type)
		describe(property, field.Comment)
		for word, value := range narrowed(definitionName(spec.Name.Name) + "." + key) {
			property[word] = value
		}
		properties[key] = property
	}
	definition := object{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
	describe(definition, spec.Doc)
	return definition
}

func describe(part object, comment *ast.CommentGroup) {
	if text := strings.Join(strings.Fields(comment.Text()), " "); text != "" {
		part["description"] = typeName.ReplaceAllStringFunc(text, definitionName)
	}
}

// typeName is how comments call a type.
var typeName = regexp.MustCompile(`\bjson[A-Z][a-z]+`)

func schemaOf(t *testing.T, expression ast.Expr) object {
	switch e := expression.(type) {
	case *ast.ArrayType:
		return object{"type": "array", "items": schemaOf(t, e.Elt)}
	case *ast.StarExpr:
		return schemaOf(t, e.X)
	case *ast.Ident:
		switch e.Name {
		case "string", "bool":
			return object{"type": map[string]string{"string": "string", "bool": "boolean"}[e.Name]}
		case "int":
			return object{"type": "integer", "minimum": 0}
		}
		return object{"$ref": "#/$defs/" + definitionName(e.Name)}
	}
	require.Failf(t, "no schema", "for %T", expression)
	return nil
}

// narrowed says more of a key than its type does.
func narrowed(key string) object {
	_, last, _ := strings.Cut(key, ".")
	switch last {
	case "outcome":
		return object{"enum": rules.Outcomes()}
	case "level":
		return object{"enum": rules.Level("").Values()}
	case "topic":
		return object{"enum": rules.Topic("").Values()}
	case "stage", "due":
		return object{"enum": design.Stage("").Values()}
	case "units":
		return object{"enum": design.Units("").Values()}
	case "read":
		return object{"enum": rules.Read("").Values()}
	case "line", "column", "end_column":
		return object{"minimum": 1}
	case "fingerprint":
		return object{"pattern": "^[0-9a-f]{32}$"}
	case "pointer":
		return object{"pattern": "^(/.*)?$"}
	case "date":
		return object{"pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"}
	}
	return map[string]object{
		"document.format":  {"const": jsonFormatName},
		"document.version": {"const": jsonVersion},
		"result.baseline":  {"enum": []string{newState, unchangedState}},
	}[key]
}
