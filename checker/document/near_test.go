package document

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestNear(t *testing.T) {
	words := []string{"flow", "floor_area", "from_left", "galvanized-steel", "flexible", "flexible-metal", "IP"}
	for word, want := range map[string]string{
		"flwo":       "flow",
		"Flow":       "flow",
		"floor-area": "floor_area",
		"fromleft":   "from_left",
		"form_left":  "from_left",
		"galvanized": "galvanized-steel",
		"flexibel":   "flexible",
		"ip":         "IP",
		"metal":      "flexible-metal",
		"flex":       "", // two have it
		"colour":     "",
		"":           "",
		"größe":      "",
	} {
		require.Equal(t, want, Near(word, words), word)
	}
	require.Empty(t, Near("x", nil))
	require.Empty(t, Near(strings.Repeat("x", 65), []string{strings.Repeat("x", 65)}), "too long to be a slip")
}

func TestNearTakesTheNearestAndOfEqualsTheFirst(t *testing.T) {
	require.Equal(t, "east", Near("easst", []string{"west", "east", "best"}))
	require.Equal(t, "wall-1", Near("wall-9", []string{"wall-1", "wall-2"}))
	require.Equal(t, "wall-21", Near("wall-21x", []string{"wall-2", "wall-21"}))
}
