package quantity

import (
	"fmt"
	"reflect"
)

// decode reads the value of a TOML key, which must be a text with its unit. The
// error says what was expected instead.
func decode[T Quantity](into *T, value any) error {
	expected := Describe(reflect.TypeFor[T]())
	switch v := value.(type) {
	case string:
		parsed, err := ParseAs[T](v)
		if err != nil {
			return err
		}
		*into = parsed
		return nil
	case int64, float64, int:
		return fmt.Errorf("%v needs a unit, expected %s", v, expected)
	case bool:
		return fmt.Errorf("%v is not a quantity, expected %s", v, expected)
	case []any:
		return fmt.Errorf("a list is not a quantity, expected %s", expected)
	case map[string]any:
		return fmt.Errorf("a table is not a quantity, expected %s", expected)
	}
	return fmt.Errorf("%v is not a quantity, expected %s", value, expected)
}
