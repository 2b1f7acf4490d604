package reportfmt

import (
	"bytes"
	"fmt"
	"strings"
)

// unplaced is the place of a rule that the run did not ask, and of every rule as
// long as not all are known.
const unplaced = -1

// placing gives what fills in the place of each result's rule among all rules of
// the log. It stands on the line after the rule's id.
func placing(ids []string) func(text []byte) []byte {
	places := map[string]string{}
	for i, id := range ids {
		places[resultLine("ruleId", &id)] = resultLine("ruleIndex", &i)
	}
	var out bytes.Buffer
	return func(text []byte) []byte {
		out.Reset()
		place := ""
		for line := range bytes.Lines(text) {
			if place != "" {
				out.WriteString(place)
			} else {
				out.Write(line)
			}
			place = places[string(line)]
		}
		return out.Bytes()
	}
}

// resultLine is the line of a key of a result.
func resultLine(key string, value any) string {
	var text strings.Builder
	if err := writeJSON(&text, value); err != nil {
		panic(err) // texts and numbers can be written
	}
	return fmt.Sprintf("%s    %q: %s,\n", resultIndent, key, strings.TrimSpace(text.String()))
}
