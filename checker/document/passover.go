package document

import "strings"

// passOver steps over a table up to the next header: a line that begins with a
// bracket outside texts in three quotes.
func (r *reader) passOver() {
	inText := false
	for first := true; !r.end(); first = false {
		rest := r.source[r.at:]
		if rest[0] == '[' && !inText && !first {
			return
		}
		line, _, _ := strings.Cut(rest, "\n")
		if quotes := strings.Count(line, "'''") + strings.Count(line, `"""`); quotes%2 == 1 {
			inText = !inText
		}
		r.at = min(r.at+len(line)+1, len(r.source))
	}
}
