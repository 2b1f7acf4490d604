package document

import (
	"bytes"
	"sort"
	"strings"
	"sync"
	"unicode/utf8"
)

const byteOrderMark = "\xef\xbb\xbf"

// lines turns byte offsets into lines and columns. It looks for the lines when the
// first place is asked for, as most documents have no mistake to show.
type lines struct {
	source string
	find   sync.Once
	starts []int // offset of the first byte of each line
	counts []int // characters that begin before each multiple of stride; nil where no line is longer
}

// stride bounds what is counted anew for each position: a file may be one line.
const stride = 512

func newLines(source string) *lines { return &lines{source: source} }

// begin is the offset of the first character, after a byte order mark.
func begin(source string) int {
	if strings.HasPrefix(source, byteOrderMark) {
		return len(byteOrderMark)
	}
	return 0
}

// index finds the lines.
func (l *lines) index() {
	l.starts = make([]int, 1, strings.Count(l.source, "\n")+1)
	l.starts[0] = begin(l.source)
	longest := 0
	for at := 0; ; {
		length := strings.IndexByte(l.source[at:], '\n')
		if length < 0 {
			longest = max(longest, len(l.source)-at)
			break
		}
		longest = max(longest, length)
		at += length + 1
		l.starts = append(l.starts, at)
	}
	if longest > stride {
		l.count()
	}
}

// count counts the characters before each multiple of stride.
func (l *lines) count() {
	l.counts = make([]int, 0, len(l.source)/stride+1)
	count := 0
	for at := 0; at < len(l.source); at += stride {
		l.counts = append(l.counts, count)
		count += begun(l.source[at:min(at+stride, len(l.source))])
	}
}

// begun counts the characters that begin in some bytes.
func begun(bytes string) int {
	count := 0
	for i := range len(bytes) {
		if utf8.RuneStart(bytes[i]) {
			count++
		}
	}
	return count
}

// characters counts those that begin before an offset.
func (l *lines) characters(offset int) int {
	mark := min(offset, len(l.source)-1) / stride
	return l.counts[mark] + begun(l.source[mark*stride:offset])
}

// between counts the characters that begin from one offset on and before another
// of the same line.
func (l *lines) between(from, to int) int {
	if to-from <= stride {
		return begun(l.source[from:to])
	}
	return l.characters(to) - l.characters(from)
}

// position gives the place of a span; of one that runs over several lines, the
// part on its first line.
func (l *lines) position(s span) Position {
	l.find.Do(l.index)
	line := max(0, sort.SearchInts(l.starts, int(s.start)+1)-1)
	start := max(int(s.start), l.starts[line])
	end := max(start, min(int(s.end), l.end(line)))
	column := l.between(l.starts[line], start) + 1 // columns count from 1
	return Position{Line: line + 1, Column: column, EndColumn: column + l.between(start, end)}
}

// end is the offset of the line break at the end of a line.
func (l *lines) end(line int) int {
	end := len(l.source)
	if line+1 < len(l.starts) {
		end = l.starts[line+1] - 1
	}
	if end > l.starts[line] && l.source[end-1] == '\r' {
		end--
	}
	return end
}

// Line gives the text of a line, counted from 1, without its line break and
// byte order mark; it is empty for a line that the source does not have.
func Line(source []byte, n int) string {
	rest, found := bytes.TrimPrefix(source, []byte(byteOrderMark)), n >= 1
	for ; n > 1 && found; n-- {
		_, rest, found = bytes.Cut(rest, []byte("\n"))
	}
	if !found {
		return ""
	}
	line, _, _ := bytes.Cut(rest, []byte("\n"))
	return string(bytes.TrimSuffix(line, []byte("\r")))
}
