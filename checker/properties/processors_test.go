package properties

import (
	"bytes"
	"runtime"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/reportfmt"
)

// The bytes of reports do not depend on the number of processors, nor on what is
// reviewed beside them. A case is a result.
func TestProcessorsChangeNothing(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	batches := 12
	if testing.Short() {
		batches = 1
	}
	seen := 0
	for batch := range batches {
		runtime.GOMAXPROCS(1)
		alone, results := together(t, batch)
		runtime.GOMAXPROCS(4)
		beside, _ := together(t, batch)
		for i := range alone {
			require.True(t, bytes.Equal(alone[i], beside[i]), "batch %d, design %d: the reports differ", batch, i)
		}
		seen += results
	}
	t.Logf("properties: same bytes on other processors: %d cases", seen)
}

// together reviews a batch of designs side by side, and gives their reports.
func together(t *testing.T, batch int) (reports [][]byte, results int) {
	const size = 16
	reports = make([][]byte, size)
	done := make([]*checker.Report, size)
	var wait sync.WaitGroup
	for i := range size {
		wait.Go(func() {
			var buffer bytes.Buffer
			report, _, err := invented(uint64(batch*size + i)).review()
			if err == nil {
				form, _ := reportfmt.Named("json")
				err = reportfmt.Write(&buffer, form, reportfmt.Batch{Reports: []*checker.Report{report}})
			}
			if err != nil {
				t.Error(err)
				return
			}
			reports[i], done[i] = buffer.Bytes(), report
		})
	}
	wait.Wait()
	for _, r := range done {
		require.NotNil(t, r)
		results += len(r.Results)
	}
	return reports, results
}
