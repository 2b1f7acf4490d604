package quantity

import (
	"fmt"
	"reflect"
)

// decode reads the value of a TOML key, which must be a text with its unit. The
// error says what was expected instead.
func decode[T Quantity](into *T, value any) error {
	text, ok := value.(string)
	if !ok {
		return notText(value, Describe(reflect.TypeFor[T]()))
	}
	parsed, err := ParseAs[T](text)
	if err != nil {
		return err
	}
	*into = parsed
	return nil
}

func notText(value any, expected string) error {
	switch value.(type) {
	case int64, float64, int:
		return fmt.Errorf("%v needs a unit, expected %s", value, expected)
	case []any:
		return fmt.Errorf("a list is not a quantity, expected %s", expected)
	case map[string]any:
		return fmt.Errorf("a table is not a quantity, expected %s", expected)
	}
	return fmt.Errorf("%v is not a quantity, expected %s", value, expected)
}
