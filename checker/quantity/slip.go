package quantity

import "fmt"

// slip is what is wrong with a text, worded so that it follows the text in a
// sentence: "has no unit".
type slip struct {
	what string
	fix  string // what to do instead; empty: the message says what is expected
}

func slipf(format string, args ...any) *slip {
	return &slip{what: fmt.Sprintf(format, args...)}
}

// instead adds the text that was probably meant.
func (s *slip) instead(texts ...string) *slip {
	s.fix = "write " + quoted(texts)
	return s
}

// within makes the message about the whole text.
func (s *slip) within(text string, want *kind) error {
	if s.fix != "" {
		return fmt.Errorf("%q %s, %s", text, s.what, s.fix)
	}
	return fmt.Errorf("%q %s, expected %s", text, s.what, want.describe())
}
