package design_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/checker/document/documenttest"
)

// mostMemory is what one file may make the loader allocate, in megabytes.
const mostMemory = 200.0

// filled repeats a text up to the greatest size of a file.
func filled(unit string) string { return strings.Repeat(unit, document.MaxSize/len(unit)) }

// numbered repeats a text with a running number.
func numbered(times int, format string) string {
	var b strings.Builder
	for i := range times {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

func TestHostileFilesEndWithAClearLimit(t *testing.T) {
	if testing.Short() {
		t.Skip("measures memory, which the race detector of the short run inflates")
	}
	deep := strings.Repeat("{a=", 28) + "1" + strings.Repeat("}", 28)
	for _, c := range []struct{ name, source, message string }{
		{"deep inline tables", "x = " + strings.Repeat("{a=", 10_000) + "1" + strings.Repeat("}", 10_000), "more than 32 deep"},
		{"deep tables by dotted keys", "x = " + strings.Repeat("{a.b.c.d.e=", 1000) + "1", "more than 32 deep"},
		{"deep arrays", "x = " + strings.Repeat("[", 500_000), "more than 32 deep"},
		{"deeper arrays", "x = " + strings.Repeat("[", 3_000_000), "expected at most 1048576"},
		{"long dotted key", "a" + strings.Repeat(".a", 10_000) + " = 1", "more than 16 parts"},
		{"long header", "[a" + strings.Repeat(".a", 10_000) + "]", "more than 16 parts"},
		{"headers of many lists", strings.Repeat("[[a.a.a.a.a.a.a.a.a.a.a.a.a.a.a]]\n", 29_000), "unknown key"},
		{"many values just deep enough", strings.Repeat("[[x]]\na = "+deep+"\n", 950), "unknown key"},
		{"long array", "x = [" + filled("1,")[20:] + "]", "more than 30000 values"},
		{"many tables", filled("[[opening]]\n"), "more than 30000 values"},
		{"many keys given twice", filled("a=1\n"), "more than 30000 values"},
		{"many unknown keys", numbered(28_000, "an_unknown_key_of_file_%d = 1\n"), "which are not listed"},
		{"many wrong values", "format = 1\n" + strings.Repeat("[[opening]]\nkind=1\nflow=2\nwall=3\n", 7_400), "which are not listed"},
		{"many references to nothing", numbered(5900, "[[opening]]\nid=\"an-opening-o-%[1]d\"\nkind=\"intake\"\nwall=\"a-wall-of-the-house-%[1]d\"\nserves=\"a-ventilator-of-the-house-%[1]d\"\n"), "which are not listed"},
		{"many references to the wrong thing", numbered(7400, "[[opening]]\nid=\"an-opening-of-the-house-%[1]d\"\nkind=\"intake\"\nwall=\"an-opening-of-the-house-%[1]d\"\n"), "which are not listed"},
		{"one long line", "opening = [" + numbered(7_400, "{ id = \"o%d\", kind = \"intake\", wall = \"w\" }, ") + "]", "which are not listed"},
		{"one long line of keys given twice", "x = {" + numbered(29_000, "a = %d, ") + "}", "which are not listed"},
		{"a long key", strings.Repeat("k", document.MaxSize-10) + "=1", "unknown key"},
		{"a long word", "x = " + strings.Repeat("9", document.MaxSize-10), "64 bits"},
		{"a long text", "format = '" + strings.Repeat("9", document.MaxSize-20) + "'", "expected a whole number"},
		{"many line ends", filled("\n"), "missing key"},
		{"an open text", "x = '''" + strings.Repeat("\n", document.MaxSize-10), "not closed"},
		{"many quotes", "x = " + strings.Repeat(`"`, document.MaxSize-10), "expected the end of the line"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var d *design.Design
			var problems []document.Problem
			documenttest.AtMost(t, mostMemory, func() { d, problems = design.Load("hostile.vent.toml", []byte(c.source)) })

			require.Nil(t, d)
			require.LessOrEqual(t, len(problems), document.MaxProblems+2)
			require.True(t, slices.ContainsFunc(problems, func(p document.Problem) bool { return strings.Contains(p.Message, c.message) }),
				"no %q in the last of %d problems: %v", c.message, len(problems), problems[len(problems)-1])
		})
	}
}
