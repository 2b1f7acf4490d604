package reportfmt

import "strings"

// markdownText escapes what a text of a design or a pack could mean in Markdown
// (CommonMark with tables), HTML included.
func markdownText(text string) string {
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_[]<>#|~!&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
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
