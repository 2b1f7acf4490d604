package quantity

import (
	"fmt"
	"reflect"
	"strings"
)

// Quantity is any type of this package that holds one value in coherent SI.
type Quantity interface {
	Length | Area | Volume | Flow | Velocity | Pressure | Temperature | TemperatureDifference | Power |
		Duration | AirChange | Efficacy | Ratio | ThermalResistance | Loudness | SoundLevel | Slope | Mass
}

// kind is what messages and printing need to know of one quantity type.
type kind struct {
	typ     reflect.Type
	name    string
	example string
	wrap    func(si float64) any
}

var kinds = []*kind{
	kindOf[Length]("length", "12 ft 4 in"),
	kindOf[Area]("area", "2150 ft2"),
	kindOf[Volume]("volume", "17200 ft3"),
	kindOf[Flow]("flow", "80 cfm"),
	kindOf[Velocity]("velocity", "600 fpm"),
	kindOf[Pressure]("pressure", "0.25 inwc"),
	kindOf[Temperature]("temperature", "-5 F"),
	kindOf[TemperatureDifference]("temperature difference", "10 K"),
	kindOf[Power]("power", "60 W"),
	kindOf[Duration]("duration", "20 min"),
	kindOf[AirChange]("air change rate", "3 ACH"),
	kindOf[Efficacy]("fan efficacy", "1.2 cfm/W"),
	kindOf[Ratio]("ratio", "65 %"),
	kindOf[ThermalResistance]("thermal resistance", "R-8"),
	kindOf[Loudness]("loudness", "1 sone"),
	kindOf[SoundLevel]("sound level", "45 dBA"),
	kindOf[Slope]("slope", "1/4 in/ft"),
	kindOf[Mass]("mass", "60 lb"),
}

// kindFor finds the kind of a type; nil for what is no quantity.
func kindFor(t reflect.Type) *kind {
	for _, k := range kinds {
		if k.typ == t {
			return k
		}
	}
	return nil
}

func kindOf[T Quantity](name, example string) *kind {
	return &kind{reflect.TypeFor[T](), name, example, func(si float64) any { return T(si) }}
}

// NameOf gives the word for a type in messages: "length", "flow", and "number",
// "text", "yes-or-no" for what is no quantity; any other type by its Go name.
func NameOf(t reflect.Type) string {
	if k := kindFor(t); k != nil {
		return k.name
	}
	if t == nil {
		return "nothing"
	}
	switch t.Kind() {
	case reflect.Float64, reflect.Float32, reflect.Int, reflect.Int64:
		return "number"
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "yes-or-no"
	}
	return t.String()
}

// ExampleOf gives a text that parses as the type, such as "80 cfm"; it is empty
// for what is no quantity.
func ExampleOf(t reflect.Type) string {
	if k := kindFor(t); k != nil {
		return k.example
	}
	return ""
}

// Describe says what is expected of a type: `a flow such as "80 cfm"`.
func Describe(t reflect.Type) string {
	if k := kindFor(t); k != nil {
		return k.describe()
	}
	if t == nil {
		return NameOf(t)
	}
	return article(NameOf(t))
}

func (k *kind) describe() string {
	if k == nil {
		return `a quantity such as "80 cfm" or "12 ft 4 in"`
	}
	return fmt.Sprintf("%s such as %q", article(k.name), k.example)
}

func article(noun string) string {
	if noun != "" && strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}
