package document

import (
	"sort"
	"strings"
	"unicode/utf8"
)

const byteOrderMark = "\xef\xbb\xbf"

// lines turns byte offsets into lines and columns.
type lines struct {
	source string
	starts []int // offset of the first byte of each line
	counts []int // characters that begin before each multiple of stride
}

// stride bounds what is counted anew for each position: a file may be one line.
const stride = 512

func newLines(source string) lines {
	l := lines{source: source, starts: make([]int, 1, strings.Count(source, "\n")+1), counts: make([]int, 0, len(source)/stride+1)}
	if strings.HasPrefix(source, byteOrderMark) {
		l.starts[0] = len(byteOrderMark)
	}
	for at := 0; ; {
		length := strings.IndexByte(source[at:], '\n')
		if length < 0 {
			break
		}
		at += length + 1
		l.starts = append(l.starts, at)
	}
	count := 0
	for at := 0; at < len(source); at += stride {
		l.counts = append(l.counts, count)
		count += begun(source[at:min(at+stride, len(source))])
	}
	return l
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
func (l lines) characters(offset int) int {
	if len(l.source) == 0 {
		return 0
	}
	mark := min(offset, len(l.source)-1) / stride
	return l.counts[mark] + begun(l.source[mark*stride:offset])
}

// between counts the characters that begin from one offset on and before another.
func (l lines) between(from, to int) int {
	if to-from <= stride {
		return begun(l.source[from:to])
	}
	return l.characters(to) - l.characters(from)
}

// position gives the place of a span; of one that runs over several lines, the
// part on its first line.
func (l lines) position(s span) Position {
	line := max(0, sort.SearchInts(l.starts, s.start+1)-1)
	start := max(s.start, l.starts[line])
	end := max(start, min(s.end, l.end(line)))
	column := l.between(l.starts[line], start) + 1 // columns count from 1
	return Position{Line: line + 1, Column: column, EndColumn: column + l.between(start, end)}
}

// end is the offset of the line break at the end of a line.
func (l lines) end(line int) int {
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
	l := newLines(string(source))
	if n < 1 || n > len(l.starts) {
		return ""
	}
	return l.source[l.starts[n-1]:l.end(n-1)]
}
