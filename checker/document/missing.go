package document

import "strings"

// Missing says that a table does not give a key that is needed.
type Missing struct {
	Ref   Ref
	Key   string
	Thing string // what people call the table; may be empty
}

// Error names the key.
func (m *Missing) Error() string { return "needs " + m.name() }

func (m *Missing) name() string {
	if m.Thing != "" {
		return m.Key + " of " + m.Thing
	}
	return m.Ref.KeyPath(m.Key)
}

// MissingAll says that several keys are needed.
type MissingAll []Missing

// Error names the keys.
func (all MissingAll) Error() string {
	names := make([]string, len(all))
	for i := range all {
		names[i] = all[i].name()
	}
	return "needs " + strings.Join(names, ", ")
}
