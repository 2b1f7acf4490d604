package checker_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// oneResult gives the only result of a rule.
func oneResult(t *testing.T, r *checker.Report, id, subject string) checker.Result {
	t.Helper()
	for _, result := range r.Results {
		if result.Rule.ID == id && (subject == "" || len(result.Subjects) > 0 && result.Subjects[0].ID == subject) {
			return result
		}
	}
	require.Fail(t, "no result", "%s of %s", id, subject)
	return checker.Result{}
}

// livingDuct is the shipped house with another duct to the living room.
func livingDuct(t *testing.T, keys string) string {
	t.Helper()
	house := shipped(t, "ok/alder-court.vent.toml")
	old := "to = \"supply-living\"\nmaterial = \"galvanized-steel\"\ndiameter = \"5 in\"\n"
	require.Contains(t, house, old)
	return strings.Replace(house, old, "to = \"supply-living\"\n"+keys, 1)
}

// An undersized flexible duct: the fan cannot deliver, and the finding names the
// way, its loss and what is delivered. The code's length table is another rule.
func TestUndersizedFlexibleDuct(t *testing.T) {
	narrow := reviewed(t, livingDuct(t, "material = \"flexible\"\ncompression = \"15 %\"\ndiameter = \"2.5 in\"\n"), "irc-2021", "practice")
	fan := oneResult(t, narrow, "supply-fan-delivers", "hrv")
	assert.Equal(t, rules.Fail, fan.Outcome)
	assert.Equal(t, rules.Warning, fan.Level)
	assert.Contains(t, fan.Message, "supply-living")
	assert.Regexp(t, `delivers [0-9.]+ cfm, not the 100 cfm of the design`, fan.Message)
	assert.Regexp(t, `would lose [0-9.]+ inwc`, fan.Message)
	require.NotEmpty(t, fan.Comparisons)
	assert.Equal(t, "100 cfm", fan.Comparisons[0].Required)

	table := oneResult(t, narrow, "flexible-duct-length", "duct-living")
	assert.NotEqual(t, rules.Pass, table.Outcome)
	assert.NotEqual(t, fan.Rule.ID, table.Rule.ID)

	wide := reviewed(t, livingDuct(t, "material = \"flexible\"\ncompression = \"15 %\"\ndiameter = \"6 in\"\n"), "irc-2021", "practice")
	assert.Equal(t, rules.Pass, oneResult(t, wide, "supply-fan-delivers", "hrv").Outcome)
}

// What a review shows is what the worksheet works out. The house gives all that its
// lines need; smaller designs leave out what no rule asks of them.
func TestReviewAndWorksheetAgree(t *testing.T) {
	for name, figures := range map[string]int{"alder-court": 10, "alder-court-si": 10, "attic-hung": 7, "quarry-lane-apartment": 10} {
		source := shipped(t, "ok/"+name+".vent.toml")
		worked := map[string]string{}
		for _, section := range checker.Work("house.vent.toml", loaded(t, source)).Sections {
			for _, line := range section.Lines {
				worked[line.Name+line.Of] = line.Value
				if strings.HasPrefix(name, "alder-court") {
					assert.Empty(t, line.Trouble, "%s: %s", name, line.Name)
					assert.Empty(t, line.Missing, "%s: %s", name, line.Name)
				}
			}
		}
		r := reviewed(t, source, "practice")
		require.GreaterOrEqual(t, len(r.Figures), figures, name)
		for _, figure := range r.Figures {
			assert.Equal(t, worked[figure.Name+figure.Of], figure.Value, "%s: %s", name, figure.Name)
		}
	}
}

// A finished house is held against its design; one that is still to be measured has
// nothing to compare.
func TestWorksheetOfAMeasuredHouse(t *testing.T) {
	of := func(name string) (lines []string) {
		for _, section := range checker.Work(name, loaded(t, shipped(t, name))).Sections {
			if section.Title == "Commissioning" {
				for _, line := range section.Lines {
					lines = append(lines, line.Name+": "+line.Value+", "+line.Note)
				}
			}
		}
		return lines
	}
	assert.Empty(t, of("ok/alder-court.vent.toml"))
	measured := of("ok/quarry-lane-apartment.vent.toml")
	assert.Subset(t, measured, []string{
		"supply flow, measured above design: 0.4 L/s, ",
		"supply flow, measured off design: 2.5 %, within 15 %, within 7.08 L/s",
		"supply terminals, measured together: 16.4 L/s, ",
		"measured supply and extract apart, as a share of the supply: 3.66 %, within 10 %, within 2.36 L/s",
		"measured supply and extract apart, each from their average: 1.86 %, within 10 %",
		"flow, measured off design: 3.75 %, within 10 %",
	})
}

// A worksheet of a design with gaps names what each value lacks.
func TestWorksheetOfGaps(t *testing.T) {
	s := checker.Work("gaps.vent.toml", loaded(t, shipped(t, "incomplete/permit-missing-inputs.vent.toml")))
	lacking := 0
	for _, section := range s.Sections {
		for _, line := range section.Lines {
			assert.True(t, line.Value != "" || len(line.Missing) > 0 || line.Trouble != "", line.Name)
			lacking += len(line.Missing)
		}
	}
	assert.Positive(t, lacking)
}

// What lines assume is listed once, with the lines that rest on it.
func TestAssumptionsOfAWorksheet(t *testing.T) {
	source := shipped(t, "ok/alder-court.vent.toml")
	source = strings.Replace(source, "exponent = 0.65\n", "", 1)
	assumed := map[string][]string{}
	for _, a := range checker.Work("house.vent.toml", loaded(t, source)).Assumptions {
		assert.NotContains(t, assumed, a.Text)
		assumed[a.Text] = a.Lines
	}
	assert.Contains(t, assumed["a flow exponent of 0.65, the usual figure of houses, since none is given"], "house pressure, normal")
	assert.Len(t, assumed["no time of defrosting, since none is given"], 2)
}
