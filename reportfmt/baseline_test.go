package reportfmt

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

var baselineFormats = []string{"json", "sarif-evidence", "sarif"}

// A review compared with its own report has nothing new and lacks nothing,
// whatever its files and things are called.
func TestAReviewIsNotNewToItself(t *testing.T) {
	for name, b := range batches() {
		for _, format := range baselineFormats {
			b.Baseline = baselineFrom(format, b)
			for _, r := range b.Reports {
				c := b.Baseline.changes(r)
				for _, p := range problems(r) {
					require.Equal(t, unchangedState, c.state(p.Result), "%s as %s: %s", name, format, ruleID(p.Result))
				}
				require.Empty(t, c.absent, "%s as %s", name, format)
			}
		}
	}
}

// All outcomes stand in json and sarif-evidence, problems alone in sarif.
func TestBaselineHoldsWhatItsFormatHolds(t *testing.T) {
	b := batches()["outcomes"]
	for format, want := range map[string]int{"json": 11, "sarif-evidence": 11, "sarif": 6} {
		require.Len(t, baselineFrom(format, b).results[b.Reports[0].File], want, format)
	}
}

func TestBaselineReadsTheSameFromEveryFormat(t *testing.T) {
	b := batches()["outcomes"]
	want := map[identity]rules.Level{}
	for _, p := range problems(b.Reports[0]) {
		want[identityOf(p.File, p.Result)] = p.Result.Level
	}
	for _, format := range baselineFormats {
		got := map[identity]rules.Level{}
		for _, e := range baselineFrom(format, b).results[b.Reports[0].File] {
			if e.problem() {
				got[e.identity] = e.Level
			}
		}
		if format == "sarif" {
			for i := range got {
				if i.Outcome == rules.Review {
					got[i] = want[i] // that profile shows it as a note
				}
			}
		}
		require.Equal(t, want, got, format)
	}
}

func TestLinesMayMove(t *testing.T) {
	b := batch(report("a.vent.toml", failedSeparation()))
	b.Baseline = baselineFrom("json", b)
	moved := failedSeparation()
	moved.Position, moved.Pointer = at(400, 1, 2), "/opening/9/from_left"
	b.Reports = []*checker.Report{report("./a.vent.toml", moved)}
	fresh, known, gone := b.Baseline.changes(b.Reports[0]).news(b.Reports[0])
	require.Equal(t, []int{0, 1, 0}, []int{fresh, known, gone})
}

func TestWhatIsNew(t *testing.T) {
	before := batch(report("a.vent.toml", openAccess(), acceptedSeparation()))
	for name, c := range map[string]struct {
		now  checker.Result
		want string
	}{
		"the same":           {openAccess(), unchangedState},
		"fails where open":   {with(openAccess(), func(r *checker.Result) { r.Outcome = rules.Fail }), newState},
		"variance has ended": {with(acceptedSeparation(), func(r *checker.Result) { r.Variance = nil }), newState},
		"still accepted":     {acceptedSeparation(), unchangedState},
		"another subject":    {with(openAccess(), func(r *checker.Result) { r.Subjects[0].ID = "erv-2" }), newState},
		"another rule":       {heaterPressure(), newState},
	} {
		b := batch(report("a.vent.toml", c.now))
		b.Baseline = baselineFrom("sarif-evidence", before)
		require.Equal(t, c.want, b.Baseline.changes(b.Reports[0]).state(&b.Reports[0].Results[0]), name)
		elsewhere := batch(report("b.vent.toml", c.now))
		changes := b.Baseline.changes(elsewhere.Reports[0])
		require.Equal(t, newState, changes.state(&elsewhere.Reports[0].Results[0]), name)
		require.Empty(t, changes.absent, name) // a.vent.toml was not reviewed
	}
}

func with(r checker.Result, change func(*checker.Result)) checker.Result {
	change(&r)
	return r
}

// Results that nothing tells apart are counted.
func TestOneKnownDoesNotHideTwo(t *testing.T) {
	b := batch(report("a.vent.toml", failedSeparation(), failedSeparation()))
	b.Baseline = baselineFrom("json", batch(report("a.vent.toml", failedSeparation())))
	fresh, known, gone := b.Baseline.changes(b.Reports[0]).news(b.Reports[0])
	require.Equal(t, []int{1, 1, 0}, []int{fresh, known, gone})
}

// What a baseline lists as gone is not in it.
func TestAbsentResultsAreNoBaseline(t *testing.T) {
	b := compared()
	require.NotEmpty(t, b.Baseline.changes(b.Reports[0]).gone())
	b.Baseline = baselineFrom("sarif-evidence", b)
	require.Empty(t, b.Baseline.changes(b.Reports[0]).gone())
}

// blocked tells whether a batch makes the review fail.
func blocked(t *testing.T, b Batch) bool {
	t.Helper()
	run := Begin(b.Setting)
	for _, r := range b.Reports {
		require.NoError(t, run.Add(r))
	}
	return run.Blocked()
}

func TestGate(t *testing.T) {
	b := batch(report("a.vent.toml", failedSeparation(), advisedFlow(), judgedFitting()))
	require.True(t, blocked(t, b))
	b.Gate = Gate{NewOnly: true}
	require.True(t, blocked(t, b), "without a baseline all is new")
	b.Baseline = baselineFrom("sarif", batch(report("a.vent.toml", failedSeparation())))
	require.False(t, blocked(t, b))
	b.Gate.Level = rules.Warning
	require.True(t, blocked(t, b))
	b.Gate = Gate{}
	require.True(t, blocked(t, b), "a baseline alone changes no verdict")
}

func TestUnreadableBaselines(t *testing.T) {
	const expected = "expected a report of ventlint in the format json, sarif or sarif-evidence"
	for source, want := range map[string]string{
		"":                     "near line 1: unexpected end of JSON input; " + expected,
		"{\n\n  \"runs\": [,]": "near line 3: invalid character ',' looking for beginning of value; " + expected,
		"[]":                   expected,
		"{} {}":                "found more behind the report",
		`{"runs": [{"results": [{"level": 1}], "tool": {"driver": {"name": "another"}}}]}`:  expected,
		`{"runs": [{"results": [{"level": 1}], "tool": {"driver": {"name": "ventlint"}}}]}`: `result 1 cannot be read: "level" is a number: ` + expected,
		`{"reports": [{"results": []}], "format": "ventlint-report", "version": 2}`:         "the report has version 2 of its format, expected 1",
		`{"reports": {}}`:                                       `"reports" is a object: ` + expected,
		`{"reports": [{"results": 7}]}`:                         `"results" is a number: ` + expected,
		"{\n\"format\": \"ventlint-report\",\n\"reports\": [\n": "near line 3: unexpected end of JSON input; " + expected,
		"{}":           expected,
		`{"runs": []}`: expected,
		`{"runs": 5}`:  `"runs" is a number: ` + expected,
		`{"format": "ventlint-report", "version": 2}`:                                                                                                   "the report has version 2 of its format, expected 1",
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "a", "results": [{}]}]}`:                                                      `result 1 of "a" has no fingerprint`,
		`{"runs": [{"tool": {"driver": {"name": "another"}}, "results": [{}]}]}`:                                                                        expected,
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "a", "results": [{"fingerprint": "0", "outcome": "bad"}]}]}`:                  `a result of "a" has the outcome "bad", expected one of fail, open, review, pass, informational, notDue, notApplicable`,
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "a", "results": [{"fingerprint": "0", "outcome": "fail", "level": "bad"}]}]}`: `a result of "a" has the level "bad", expected one of error, warning, note`,
		`{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": [{}]}]}`:                                                                       `result 1 has no fingerprint "ventlintSubject/v1"`,
		`{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": [{"partialFingerprints": {"ventlintSubject/v1": "0"}}]}]}`:                     "result 1 has no location",
		`{"runs": [[]]}`: expected,
		`{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": [{"level": 1}]}]}`:                                                                                                                    `result 1 cannot be read: "level" is a number: ` + expected,
		`{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": [{"partialFingerprints": {"ventlintSubject/v1": "0"}, "locations": [{"physicalLocation": {"artifactLocation": {"uri": "%zz"}}}]}]}]}`: `result 1 has the address "%zz", expected that of a file`,
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "a\n", "results": [{"position": {"line": "` + strings.Repeat("9", 500) + `"}}]}]}`:                                                   `result 1 of "a\n": "position/line" is a string: ` + expected,
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "` + strings.Repeat("b", 500) + `", "results": [{"position": {"line": ` + strings.Repeat("9", 500) + `}}]}]}`:                        `result 1 of "` + strings.Repeat("b", 64) + `": "position/line" is a number ` + strings.Repeat("9", 57) + `: ` + expected,
	} {
		_, err := ReadBaseline(strings.NewReader(source))
		require.EqualError(t, err, want, source)
	}
}

// Other programs may write the keys of a report in another order.
func TestKeysOfABaselineMayStandInAnyOrder(t *testing.T) {
	b := batches()["outcomes"]
	for _, format := range baselineFormats {
		var document any
		require.NoError(t, json.Unmarshal([]byte(written(t, format, b)), &document))
		sorted, err := json.Marshal(document) // by name: results before tool, reports before version
		require.NoError(t, err)
		got, err := ReadBaseline(bytes.NewReader(sorted))
		require.NoError(t, err, format)
		require.Equal(t, baselineFrom(format, b), got, format)
	}
}

// Only what is compared is held of a baseline, and there may be much of it.
func TestLargeBaselines(t *testing.T) {
	const result = `{"fingerprint": "0", "outcome": "fail"}`
	head := `{"format": "ventlint-report", "version": 1, "reports": [{"file": "a", "results": [` + result
	three := head + "," + result + "," + result + "]}]}"
	baseline, err := readBaseline(strings.NewReader(three), 3)
	require.NoError(t, err)
	require.Len(t, baseline.results["a"], 3)
	_, err = readBaseline(strings.NewReader(three), 2)
	require.EqualError(t, err, "found too many results; the format sarif has fewer, as it holds problems alone")
	endless := io.MultiReader(strings.NewReader(head+`, {"message": "`), strings.NewReader(strings.Repeat("A", 3*largestValue)))
	_, err = ReadBaseline(endless)
	require.EqualError(t, err, "found a value of more than 16 MiB")
	_, err = ReadBaseline(iotest.ErrReader(io.ErrClosedPipe))
	require.ErrorIs(t, err, io.ErrClosedPipe)
}

func TestBaselineMayHaveAByteOrderMark(t *testing.T) {
	source := written(t, "json", batches()["outcomes"])
	_, err := ReadBaseline(strings.NewReader("\ufeff" + source))
	require.NoError(t, err)
}

func FuzzReadBaseline(f *testing.F) {
	const subject = `"partialFingerprints": {"ventlintSubject/v1": "0"}`
	for _, source := range []string{
		`{"format": "ventlint-report", "version": 1, "reports": [{"file": "a", "results": [{"fingerprint": "0", "outcome": "fail"}]}]}`,
		`{"runs": [{"tool": {"driver": {"name": "ventlint"}}, "results": [{` + subject + `, "locations": [{}], "suppressions": [{}]}]}]}`,
		`{"runs": [{"results": null}, {}]}`, `[`, "",
	} {
		f.Add(source)
	}
	f.Fuzz(func(t *testing.T, source string) {
		baseline, err := ReadBaseline(strings.NewReader(source))
		require.Equal(t, err == nil, baseline != nil)
		if err == nil {
			b := batch(report("a", failedSeparation()))
			b.Baseline = baseline
			decodedEvidence(t, b)
		}
	})
}
