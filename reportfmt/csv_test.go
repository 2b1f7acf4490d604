package reportfmt

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// decodedCSV gives the rows by column.
func decodedCSV(t *testing.T, b Batch) []cells {
	t.Helper()
	reader := csv.NewReader(strings.NewReader(written(t, "csv", b)))
	rows, err := reader.ReadAll()
	require.NoError(t, err)
	require.Equal(t, csvColumns, rows[0])
	var all []cells
	for _, row := range rows[1:] {
		c := cells{}
		for i, column := range csvColumns {
			c[column] = row[i]
		}
		all = append(all, c)
	}
	return all
}

func TestCSVHasARowForEachResult(t *testing.T) {
	for name, b := range batches() {
		want := 0
		for _, r := range b.Reports {
			want += len(r.Results) + len(r.Remarks)
		}
		for _, f := range b.Failures {
			want += len(f.problems())
		}
		require.Len(t, decodedCSV(t, b), want, name)
	}
}

func TestCSVRows(t *testing.T) {
	rows := decodedCSV(t, batches()["outcomes"])
	failed := rows[6]
	require.Equal(t, "fail", failed["outcome"])
	require.Equal(t, "6 ft 2 in; 1 ft", failed["found"])
	require.Equal(t, "at least 12 ft; at least 3 ft", failed["required"])
	require.Equal(t, "41", failed["line"])
	require.Equal(t, "accepted", rows[7]["outcome"])
	require.Equal(t, "building official", rows[7]["accepted by"])
	require.Equal(t, "ventilator.erv-1.access.working_depth; ventilator.erv-1.access.working_width", rows[4]["missing"])
	outcomes := map[string]bool{}
	for _, row := range append(decodedCSV(t, batches()["invalid"]), decodedCSV(t, batches()["variances"])...) {
		outcomes[row["outcome"]] = true
	}
	require.Equal(t, map[string]bool{"not reviewed": true, "accepted": true, "fail": true, "remark": true}, outcomes)
}

// Every column is filled by something, and nothing is written to another.
func TestCSVColumns(t *testing.T) {
	known := map[string]bool{}
	for _, column := range csvColumns {
		require.False(t, known[column])
		known[column] = true
	}
	filled := map[string]bool{}
	for _, name := range []string{"outcomes", "baseline"} {
		b := batches()[name]
		for _, report := range b.Reports {
			for i := range report.Results {
				for column, text := range csvResult(report, &report.Results[i], b.Baseline.changes(report)) {
					require.True(t, known[column], column)
					filled[column] = filled[column] || text != ""
				}
			}
		}
	}
	delete(filled, "limits") // the rules of these batches name none
	require.Len(t, filled, len(csvColumns)-1)
}

func TestCSVComputesNothing(t *testing.T) {
	for _, text := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r\n=1", " =1", "\uff1d1", "\uff0b1", "\uff0d1", "\uff201"} {
		require.True(t, strings.HasPrefix(csvCell(text), `"'`), "%q", text)
	}
	require.Equal(t, `"a = 1"`, csvCell("a = 1"))
	require.Equal(t, `"say ""="""`, csvCell(`say "="`))
	require.Equal(t, `""`, csvCell(""))
	for name, b := range batches() {
		for _, row := range decodedCSV(t, b) {
			for column, text := range row {
				require.False(t, computed(text), "%s of %s", column, name)
			}
		}
	}
}
