package document

import "strings"

// passOver steps over a table up to the next header: a line that begins with a
// bracket outside texts in three single quotes. A table that may be passed over
// has no text in three double quotes: looking for them too would take as long as
// reading.
func (r *reader) passOver() {
	inText := false
	for !r.end() {
		next := nextHeader(r.source, r.at)
		if strings.Count(r.source[r.at:next], "'''")%2 == 1 {
			inText = !inText
		}
		r.at = next
		if !inText {
			return
		}
	}
}

// nextHeader is the offset of the next line after an offset that begins with a
// bracket, or the end of the source.
func nextHeader(source string, after int) int {
	for at := after + 1; at < len(source); at++ {
		next := strings.IndexByte(source[at:], '[')
		if next < 0 {
			break
		}
		if at += next; source[at-1] == '\n' {
			return at
		}
	}
	return len(source)
}
