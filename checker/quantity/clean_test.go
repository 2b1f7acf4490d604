package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is clean is not looked at again, and what is cleaned is clean.
func TestClean(t *testing.T) {
	for _, text := range []string{"80 cfm", "-5 F", `12' 4 1/2"`, "R-8", "a~\x7f"} {
		assert.True(t, isClean(text), text)
		assert.Equal(t, text, clean(text))
	}
	for text, want := range map[string]string{
		"": "", " ": "", " 80 cfm": "80 cfm", "80 cfm ": "80 cfm", "80  cfm": "80 cfm", "80\tcfm": "80 cfm", "80 cfm\n": "80 cfm",
		"12' 4''": `12' 4"`, "12″": `12"`, "½ in": "1/2 in", "\x80": "\x80", "5 °F": "5 °F",
	} {
		assert.False(t, isClean(text), text)
		assert.Equal(t, want, clean(text), text)
	}
}
