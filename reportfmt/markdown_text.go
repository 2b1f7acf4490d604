package reportfmt

import "strings"

// markdownText escapes what a text of a design or a pack could mean in Markdown
// (CommonMark with tables), HTML included. The text is one line.
func markdownText(text string) string {
	var b strings.Builder
	for i, r := range text {
		if strings.ContainsRune("\\`*_[]<>#|~!&", r) || listMark(text, i) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// listMark tells whether a byte of a line would make the line an item of a list:
// a sign at its beginning, or what follows a number there.
func listMark(line string, i int) bool {
	switch line[i] {
	case '+', '-':
		return i == 0
	case '.', ')':
		return i > 0 && strings.Trim(line[:i], "0123456789") == "" && (i+1 == len(line) || line[i+1] == ' ')
	}
	return false
}

// markdownCode shows a text as code. Its fence is longer than any run of back
// quotes in the text, and a text that begins or ends with one is set off.
func markdownCode(text string) string {
	fence := "`"
	for strings.Contains(text, fence) {
		fence += "`"
	}
	if strings.HasPrefix(text, "`") || strings.HasSuffix(text, "`") {
		text = " " + text + " "
	}
	return fence + text + fence
}
