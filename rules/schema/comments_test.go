package schema

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// folders are those of the packages whose types are described, by import path.
var folders = map[string]string{
	"github.com/ventlint/ventlint/checker/design":      "../../checker/design",
	"github.com/ventlint/ventlint/rules":               "..",
	"github.com/ventlint/ventlint/cmd/ventlint/config": "../../cmd/ventlint/config",
}

// comments are what the sources say of types, by "path.Type", and of their fields,
// by "path.Type.Field".
type comments map[string]string

func readComments(t *testing.T) comments {
	c := comments{}
	for path, folder := range folders {
		names, err := filepath.Glob(folder + "/*.go")
		require.NoError(t, err)
		require.NotEmpty(t, names, folder)
		for _, name := range names {
			if !strings.HasSuffix(name, "_test.go") {
				c.read(t, path, name)
			}
		}
	}
	return c
}

func (c comments) read(t *testing.T, path, name string) {
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments|parser.SkipObjectResolution)
	require.NoError(t, err)
	for _, declaration := range file.Decls {
		group, ok := declaration.(*ast.GenDecl)
		if !ok || group.Tok != token.TYPE {
			continue
		}
		for _, spec := range group.Specs {
			c.typeSpec(path, group, spec.(*ast.TypeSpec))
		}
	}
}

func (c comments) typeSpec(path string, group *ast.GenDecl, spec *ast.TypeSpec) {
	doc := spec.Doc
	if doc == nil {
		doc = group.Doc
	}
	of := path + "." + spec.Name.Name
	c[of] = oneLine(doc)
	structure, ok := spec.Type.(*ast.StructType)
	if !ok {
		return
	}
	for _, field := range structure.Fields.List {
		for _, name := range field.Names {
			c[of+"."+name.Name] = oneLine(field.Comment)
		}
	}
}

func oneLine(comment *ast.CommentGroup) string {
	return strings.Join(strings.Fields(comment.Text()), " ")
}

// ofType is the comment of a type: its first paragraph, without the name.
func (c comments) ofType(t reflect.Type) string { return c[t.PkgPath()+"."+t.Name()] }

// ofField is the comment beside a field of a struct.
func (c comments) ofField(t reflect.Type, field string) string {
	return c[t.PkgPath()+"."+t.Name()+"."+field]
}
