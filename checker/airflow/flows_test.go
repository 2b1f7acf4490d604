package airflow

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestFlowsThatFollowFromOthers(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	for name, flows := range map[string]Flows{
		"from rooms":             {"bed-1": 0.012, "bed-2": 0.010, "living": 0.020},
		"from last runs":         {"first": 0.012, "second": 0.010, "third": 0.020},
		"what the trunk leaves":  {"trunk": 0.022, "bed-1": 0.012, "living": 0.020},
		"what the intake leaves": {"intake": 0.042, "bed-1": 0.012, "bed-2": 0.010},
		"everything":             {"intake": 0.042, "fresh": 0.042, "trunk": 0.022, "first": 0.012, "second": 0.010, "third": 0.020, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020},
		"rounded":                {"trunk": 0.0221, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020},
	} {
		loss, err := s.Design(flows)
		require.NoError(t, err, name)
		for id, want := range map[string]float64{"bed-1": 0.012, "bed-2": 0.010, "living": 0.020, "intake": 0.042} {
			assert.InDelta(t, want, float64(endOf(t, loss, id).Flow), 1e-12, "%s, %s", name, id)
		}
	}
}

func TestFlowsThatAreNotKnown(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	for name, c := range map[string]struct {
		flows Flows
		want  string
	}{
		"none":                   {nil, `"intake", "bed-1", "bed-2", "living": flow is not known`},
		"two behind one":         {Flows{"trunk": 0.022, "living": 0.02}, `"bed-1", "bed-2": flow is not known`},
		"only the intake":        {Flows{"intake": 0.042}, `"bed-1", "bed-2", "living": flow is not known`},
		"nothing is left for it": {Flows{"intake": 0.022, "bed-1": 0.012, "bed-2": 0.010}, `"living": flow is not known`},
	} {
		_, err := s.Design(c.flows)
		var unknown *UnknownFlows
		require.ErrorAs(t, err, &unknown, name)
		assert.ElementsMatch(t, unknown.Ends, unknownIn(c.want), name)
	}
	_, err := s.Design(Flows{"trunk": 0.022, "living": 0.02})
	assert.EqualError(t, err, `"bed-1", "bed-2": flow is not known`)
}

func unknownIn(message string) (ends []string) {
	for _, id := range []string{"intake", "bed-1", "bed-2", "living"} {
		if strings.Contains(message, `"`+id+`"`) {
			ends = append(ends, id)
		}
	}
	return ends
}

func TestFlowsThatDisagree(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	for name, c := range map[string]struct {
		flows Flows
		want  FlowMismatch
	}{
		"trunk":            {Flows{"trunk": 0.025, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020}, FlowMismatch{"trunk", 0.025, 0.022}},
		"last run and end": {Flows{"first": 0.010, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020}, FlowMismatch{"first", 0.010, 0.012}},
		"both sides":       {Flows{"intake": 0.05, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020}, FlowMismatch{"unit", 0.05, 0.042}},
		"less than others": {Flows{"trunk": 0.010, "bed-1": 0.012, "living": 0.020}, FlowMismatch{"trunk", 0.010, 0.012}},
	} {
		_, err := s.Design(c.flows)
		var mismatch *FlowMismatch
		require.ErrorAs(t, err, &mismatch, name)
		assert.Equal(t, c.want.ID, mismatch.ID, name)
		assert.InDelta(t, float64(c.want.Stated), float64(mismatch.Stated), 1e-9, name)
		assert.InDelta(t, float64(c.want.Found), float64(mismatch.Found), 1e-9, name)
	}
	_, err := s.Design(Flows{"trunk": 0.025, "bed-1": 0.012, "bed-2": 0.010, "living": 0.020})
	assert.EqualError(t, err, `"trunk": flow "25 L/s" is stated, the others add up to "22 L/s"`)
}

// TestFlowsAtTheTolerance: what misses by just the tolerance neither disagrees nor is
// enough for an end that is not known.
func TestFlowsAtTheTolerance(t *testing.T) {
	runs := []Run{pipe(t, "trunk", "unit", "tee", 1, 1), pipe(t, "a", "tee", "A", 1, 1), pipe(t, "b", "tee", "B", 1, 1), pipe(t, "c", "tee", "C", 1, 1)}
	s := newSystem(t, runs, []End{{ID: "A"}, {ID: "B"}, {ID: "C"}})
	for name, flows := range map[string]Flows{
		"a hundredth is left": {"trunk": 100, "A": 50, "B": 49},
		"a hundredth is over": {"trunk": 100, "A": 50, "B": 51},
	} {
		_, err := s.Design(flows)
		assert.EqualError(t, err, `"C": flow is not known`, name)
	}
	_, err := s.Design(Flows{"trunk": 100, "A": 50, "B": 52})
	assert.EqualError(t, err, `"trunk": flow "100000 L/s" is stated, the others add up to "102000 L/s"`)
}

// TestTheFirstRunIsHeldToItsFlow: its place in the list excuses no run.
func TestTheFirstRunIsHeldToItsFlow(t *testing.T) {
	s := newSystem(t, []Run{pipe(t, "only", "unit", "room", 0.15, 1)}, []End{{ID: "room"}})
	_, err := s.Design(Flows{"only": 0.03, "room": 0.02})
	assert.EqualError(t, err, `"only": flow "30 L/s" is stated, the others add up to "20 L/s"`)
}

func TestFlowsOutsideTheirRange(t *testing.T) {
	s := newSystem(t, first(house(t)), second(house(t)))
	for _, bad := range []q.Flow{-0.01, 101, q.Flow(math.NaN()), q.Flow(math.Inf(1))} {
		_, err := s.Design(Flows{"bed-1": bad})
		assert.ErrorContains(t, err, `flow of end "bed-1"`)
		_, err = s.Design(Flows{"trunk": bad})
		assert.ErrorContains(t, err, `flow of run "trunk"`)
	}
	_, err := s.Design(Flows{"attic": 0.01, "bed-1": 0.01, "a": 1})
	assert.EqualError(t, err, `flows of "a", "attic" are given, expected runs or ends of the system`)
}
