package reportfmt

import (
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// sameShape compares a report with that of plain names.
func sameShape(t *testing.T, format, plain, got string) {
	t.Helper()
	switch format {
	case "html":
		require.Equal(t, strings.Count(plain, "<"), strings.Count(got, "<"), "tags")
	case "text", "markdown", "lines", "annotations":
		require.Equal(t, strings.Count(plain, "\n"), strings.Count(got, "\n"), "lines of %s", format)
		require.Equal(t, commandLines(plain), commandLines(got), "commands of %s", format)
	case "csv":
		sameCells(t, plain, got)
	case "junit":
		require.Equal(t, xmlElements(t, plain), xmlElements(t, got))
	default:
		require.Equal(t, jsonShape(t, plain), jsonShape(t, got), format)
	}
}

func commandLines(s string) int {
	n := 0
	for _, line := range strings.Split(s, "\n") {
		if strings.HasPrefix(line, "::") {
			n++
		}
	}
	return n
}

func sameCells(t *testing.T, plain, got string) {
	t.Helper()
	want, err := csv.NewReader(strings.NewReader(plain)).ReadAll()
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(got)).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, len(want))
	for _, row := range rows {
		for _, cell := range row {
			require.False(t, strings.HasPrefix(cell, "=") || strings.HasPrefix(cell, "+") || strings.HasPrefix(cell, "-") || strings.HasPrefix(cell, "@"), "a spreadsheet computes %q", cell)
		}
	}
}

// xmlElements counts those of an XML document.
func xmlElements(t *testing.T, s string) int {
	t.Helper()
	reader, n := xml.NewDecoder(strings.NewReader(s)), 0
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			return n
		}
		require.NoError(t, err)
		if _, ok := token.(xml.StartElement); ok {
			n++
		}
	}
}

// jsonShape is a JSON document with nothing in its texts and figures.
func jsonShape(t *testing.T, s string) any {
	t.Helper()
	var document any
	require.NoError(t, json.Unmarshal([]byte(s), &document))
	return emptied(document)
}

func emptied(value any) any {
	switch x := value.(type) {
	case map[string]any:
		for key := range x {
			x[key] = emptied(x[key])
		}
		return x
	case []any:
		for i := range x {
			x[i] = emptied(x[i])
		}
		return x
	}
	return fmt.Sprintf("%T", value)
}
