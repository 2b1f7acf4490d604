package main

import (
	"cmp"
	"fmt"
	"os"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/impact"
)

// findDesigns lists the designs of some paths in the order of their names.
func findDesigns(paths []string) ([]input, error) {
	if slices.Contains(paths, "-") {
		return nil, fmt.Errorf("found -, expected files or folders: designs are known by their names here")
	}
	inputs, err := find(paths, "")
	slices.SortFunc(inputs, func(a, b input) int { return cmp.Compare(a.name, b.name) })
	return inputs, err
}

// judgeAll judges designs on all cores. Only the tallies are kept.
func judgeAll(m machine, c *impact.Comparison, inputs []input, longest int) *impact.Tally {
	workers := runtime.GOMAXPROCS(0)
	tallies := make([]*impact.Tally, workers)
	progress := newProgress(m, len(inputs))
	var next atomic.Int64
	var wait sync.WaitGroup
	for k := range workers {
		tallies[k] = c.NewTally(longest)
		wait.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(inputs); i = next.Add(1) - 1 {
				judgeOne(m, c, inputs[i], tallies[k])
				progress.step()
			}
		})
	}
	wait.Wait()
	progress.end()
	for _, t := range tallies[1:] {
		tallies[0].Merge(t)
	}
	return tallies[0]
}

func judgeOne(m machine, c *impact.Comparison, in input, t *impact.Tally) {
	source, err := in.read(m.stdin)
	if err != nil {
		t.Fail(in.name, "could not be read: "+err.Error())
		return
	}
	d, problems := design.Load(in.name, source)
	if len(problems) > 0 {
		p := problems[0]
		text := fmt.Sprintf("%d:%d: %s", p.Position.Line, p.Position.Column, p.Message)
		if more := len(problems) - 1; more > 0 {
			text += fmt.Sprintf(" (and %d more)", more)
		}
		t.Fail(in.name, text)
		return
	}
	t.Add(c, c.Judge(in.name, d))
}

// mergeParts reads the json of all parts of a comparison.
func mergeParts(paths []string) (*impact.Document, error) {
	var parts []*impact.Document
	for _, path := range paths {
		source, err := readPart(path)
		if err != nil {
			return nil, err
		}
		part, err := impact.Read(source)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		parts = append(parts, part)
	}
	return impact.Merge(parts)
}

// largestPart bounds what is read of one part: the lists in it are short.
const largestPart = 256 << 20

// readPart reads a file that this program wrote. One that is larger than a part may be
// is refused unread where its size is known.
func readPart(path string) ([]byte, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, plain(err)
	}
	defer file.Close()
	if about, err := file.Stat(); err == nil && about.Size() > largestPart {
		return nil, tooLarge(path)
	}
	source, err := readUpTo(file, largestPart+1)
	if len(source) > largestPart { // it grew, or tells no size
		return nil, tooLarge(path)
	}
	return source, plain(err)
}

func tooLarge(path string) error {
	return fmt.Errorf("%s: larger than %d MiB, expected a report", path, largestPart>>20)
}
