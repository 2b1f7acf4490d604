package checker

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules/expression"
)

func TestPair(t *testing.T) {
	unit := &design.Ventilator{}
	unit.ID = "erv-1"
	for _, c := range []struct {
		found, required       any
		wantFound, wantAsking string
	}{
		{"garage", []any{"attic", "crawl-space"}, "garage", "attic, crawl-space"},
		{"garage", []string{"attic"}, "garage", "attic"},
		{quantity.Length(0.1016), []any{quantity.Length(0.127), quantity.Length(0.1524)}, "4 in", "5 in, 6 in"},
		{5, []any{}, "5", ""},
		{quantity.Length(3.048), quantity.Length(3.6576), "10 ft", "12 ft"},
		{true, false, "yes", "no"},
		{unit, (*design.Ventilator)(nil), `ventilator "erv-1"`, "not given"},
	} {
		found, asking := pair(c.found, c.required, quantity.IP)
		require.Equal(t, c.wantFound, found)
		require.Equal(t, c.wantAsking, asking)
	}
}

func TestComparisonWithAList(t *testing.T) {
	c := comparison(expression.Comparison{Text: `room.use in ["attic", "crawl-space"]`, Operator: "in",
		Found: "garage", Required: []any{"attic", "crawl-space"}, Truth: expression.False}, quantity.SI)
	require.Equal(t, Comparison{Text: `room.use in ["attic", "crawl-space"]`, Operator: "in",
		Found: "garage", Required: "attic, crawl-space"}, c)
}
