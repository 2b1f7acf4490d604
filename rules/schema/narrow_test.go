package schema

import (
	"reflect"
	"strconv"
	"strings"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/reportfmt"
	"github.com/ventlint/ventlint/rules"
)

// special gives the schemas of types that read themselves from something else than
// a table; nil for any other.
func (g *generator) special(t reflect.Type) object {
	switch t {
	case reflect.TypeFor[design.Point]():
		return object{"type": "array", "items": g.of(reflect.TypeFor[quantity.Length]()), "minItems": 2, "maxItems": 2,
			"examples": []any{[]string{"3 ft", "0 ft"}}}
	case reflect.TypeFor[rules.Value]():
		return object{"anyOf": []object{{"type": "number"}, {"type": "string", "pattern": anyPattern(), "maxLength": longest}},
			"examples": []any{"10 ft", 5, 0.65}}
	case reflect.TypeFor[config.Pattern]():
		return object{"type": "string", "pattern": `^[^\\]*[^\\\s][^\\]*$`, "examples": []any{"designs/**", "designs/house.vent.toml"}}
	case reflect.TypeFor[config.Pack]():
		return object{"type": "string", "pattern": packPattern, "examples": []any{"irc-2021", "county/harbor-county.rules.toml"}}
	case reflect.TypeFor[config.Output]():
		return object{"type": "string", "pattern": "^(" + strings.Join(reportfmt.Names(), "|") + ")=(.|\\n)+$", "examples": []any{"sarif=out.sarif"}}
	}
	if quantity.ExampleOf(t) != "" {
		return quantitySchema(t)
	}
	return nil
}

// packPattern takes ids and files, pinned or not. Which ids there are is left out:
// the schema would change with every new pack.
const packPattern = `^([a-z0-9]+(-[a-z0-9]+)*|(.|\n)*\.rules\.toml)(@sha256:[0-9a-f]{12,64})?$`

// narrowed says more of a key, by "Type.key", than its type does.
var narrowed = map[string]object{
	"Design.format":          {"const": 1},
	"Thing.id":               idSchema(),
	"Commissioning.date":     {"pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$", "examples": []any{"2026-03-31"}},
	"Variance.until":         {"examples": []any{"2026-03-31"}},
	"StatedDistance.between": {"minItems": 2, "maxItems": 2},
	"Config.designs":         {"minItems": 1},
	"Config.except":          {"minItems": 1},
	"Config.pack":            {"minItems": 1},
	"Config.output":          {"minItems": 1},
	"Config.baseline":        {"pattern": `[^\s]`},
}

// idSchema takes what can be an id.
func idSchema() object {
	return object{"type": "string", "pattern": `^[\p{L}\p{Nd}_-]+$`, "maxLength": 64}
}

// rangeOf reads the tag range of a field of a design, as the loader does: in
// numbers as limits, and in words for quantities.
func rangeOf(field reflect.StructField) (object, string) {
	t, rule := field.Type, field.Tag.Get("range")
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	number := t.Kind() == reflect.Int || t.Kind() == reflect.Float64
	ratio := t == reflect.TypeFor[quantity.Ratio]()
	switch {
	case !number || rule == "any" || t == reflect.TypeFor[quantity.Temperature]():
		return nil, ""
	case quantity.ExampleOf(t) != "" && rule == "positive":
		return nil, "more than zero"
	case quantity.ExampleOf(t) != "" && rule != "":
		return nil, strings.Replace(rule, "..", " to ", 1)
	case ratio:
		return nil, "0 % to 100 %"
	case quantity.ExampleOf(t) != "":
		return nil, ""
	case rule == "positive":
		return object{"exclusiveMinimum": 0}, ""
	case rule == "":
		return object{"minimum": 0}, ""
	}
	low, high, _ := strings.Cut(rule, "..")
	return object{"minimum": figure(low), "maximum": figure(high)}, ""
}

func figure(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err) // tags are part of the program
	}
	return x
}
