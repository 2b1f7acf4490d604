package schema

import (
	"reflect"
	"strings"
	"testing"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/rules"
)

// address is where the schemas are found.
const address = "https://github.com/ventlint/ventlint/raw/main/rules/schema/"

// object is a part of a schema.
type object = map[string]any

// roots are the types that the loaders fill, and the titles of their schemas.
var roots = map[string]struct {
	typ   reflect.Type
	title string
}{
	"design": {reflect.TypeFor[design.Design](), "Ventilation design (*.vent.toml)"},
	"pack":   {reflect.TypeFor[rules.Pack](), "Rule pack (*.rules.toml)"},
	"config": {reflect.TypeFor[config.Config](), "Configuration (ventlint.toml)"},
}

// generator makes the schema of one type. What is named in it once is defined
// once.
type generator struct {
	comments    comments
	definitions object
}

func generate(t *testing.T, name string) object {
	g := &generator{readComments(t), object{}}
	root := g.structure(roots[name].typ)
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["$id"] = address + name + suffix
	root["title"] = roots[name].title
	if len(g.definitions) > 0 {
		root["$defs"] = g.definitions
	}
	return root
}

// of gives the schema of a type.
func (g *generator) of(t reflect.Type) object {
	switch {
	case t.Kind() == reflect.Pointer:
		return g.of(t.Elem())
	case strings.HasPrefix(t.Name(), "Link["):
		return idSchema()
	case t == reflect.TypeFor[[]document.Pair]():
		return g.of(reflect.TypeFor[map[string]string]())
	case t == reflect.TypeFor[rules.Compiled]():
		return g.of(asRead(t))
	}
	if special := g.special(t); special != nil {
		return g.define(t, func() object { return special })
	}
	switch t.Kind() {
	case reflect.Struct:
		return g.define(t, func() object { return g.structure(t) })
	case reflect.Slice:
		return object{"type": "array", "items": g.of(t.Elem())}
	case reflect.Map:
		return object{"type": "object", "additionalProperties": g.of(t.Elem())}
	case reflect.String:
		if words := valuesOf(t); words != nil {
			return g.define(t, func() object { return object{"type": "string", "enum": words} })
		}
	}
	if t.Kind() == reflect.Interface {
		return object{}
	}
	return object{"type": plain[t.Kind()]}
}

// asRead is what of a type stands in files: a rule ready to run stands there as a rule.
func asRead(t reflect.Type) reflect.Type {
	if t == reflect.TypeFor[rules.Compiled]() {
		return reflect.TypeFor[rules.Rule]()
	}
	return t
}

var plain = map[reflect.Kind]string{
	reflect.String: "string", reflect.Bool: "boolean", reflect.Int: "integer", reflect.Float64: "number",
}

// define puts the schema of a type among the definitions, with its comment, and
// gives a reference to it.
func (g *generator) define(t reflect.Type, schema func() object) object {
	name := strings.ToLower(t.Name()[:1]) + t.Name()[1:]
	if g.definitions[name] == nil {
		g.definitions[name] = object{} // in the making
		made := schema()
		describe(made, g.comments.ofType(t))
		g.definitions[name] = made
	}
	return object{"$ref": "#/$defs/" + name}
}

// describe says what a part is for, where the part does not say so itself.
func describe(part object, texts ...string) {
	var said []string
	for _, text := range texts {
		if text != "" {
			said = append(said, text)
		}
	}
	if part["description"] == nil && len(said) > 0 {
		part["description"] = strings.Join(said, "; ")
	}
}

// structure is the schema of a table: the same keys as the decoder takes.
func (g *generator) structure(t reflect.Type) object {
	schema := object{"type": "object", "additionalProperties": false}
	describe(schema, g.comments.ofType(t))
	properties, required := object{}, []string{}
	g.gather(t, properties, &required)
	schema["properties"] = properties
	if len(required) > 0 {
		schema["required"] = required
	}
	return schema
}

func (g *generator) gather(t reflect.Type, properties object, required *[]string) {
	for i := range t.NumField() {
		field := t.Field(i)
		key, option, _ := strings.Cut(field.Tag.Get("toml"), ",")
		switch {
		case field.Anonymous && key == "" && field.Type != reflect.TypeFor[document.Ref]():
			g.gather(field.Type, properties, required)
		case key != "" && key != "-":
			properties[key] = g.property(t, field, key)
			if option == "required" {
				*required = append(*required, key)
			}
		}
	}
}

// property is the schema of a key: that of its type, narrowed to what the loader
// takes.
func (g *generator) property(t reflect.Type, field reflect.StructField, key string) object {
	schema := g.of(field.Type)
	limits := object{}
	bounds := ""
	if t.PkgPath() == reflect.TypeFor[design.Design]().PkgPath() {
		limits, bounds = rangeOf(field)
	}
	for word, value := range limits {
		schema[word] = value
	}
	for word, value := range narrowed[t.Name()+"."+key] {
		schema[word] = value
	}
	held := field.Type
	for held.Kind() == reflect.Pointer || held.Kind() == reflect.Slice || held.Kind() == reflect.Map {
		held = held.Elem()
	}
	held = asRead(held)
	example := ""
	if quantity.ExampleOf(held) != "" {
		example = quantity.Describe(held)
	}
	describe(schema, g.comments.ofField(t, field.Name), bounds, linked(field.Type), example)
	describe(schema, g.comments.ofType(held)) // where the field itself says nothing
	return schema
}

// linked tells what a reference leads to.
func linked(t reflect.Type) string {
	if t.Kind() == reflect.Pointer && strings.HasPrefix(t.Elem().Name(), "Link[") {
		to, _ := t.Elem().FieldByName("To")
		return "id of a " + strings.ToLower(to.Type.Elem().Name())
	}
	return ""
}

func valuesOf(t reflect.Type) []string {
	if words, ok := reflect.Zero(t).Interface().(interface{ Values() []string }); ok {
		return words.Values()
	}
	return nil
}
