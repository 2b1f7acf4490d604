package quantity

import (
	"strings"
	"unicode/utf8"
)

// typed turns what drawings and word processors write into what a keyboard
// has: prime and curly marks, the minus sign, vulgar fractions.
var typed = strings.NewReplacer(
	"′′", `"`, "''", `"`, "″", `"`, "”", `"`, "′", "'", "’", "'",
	"−", "-", "⁄", "/",
	"½", " 1/2 ", "¼", " 1/4 ", "¾", " 3/4 ", "⅛", " 1/8 ", "⅜", " 3/8 ", "⅝", " 5/8 ", "⅞", " 7/8 ",
)

// clean gives the text in plain characters with single blanks.
func clean(text string) string {
	if isClean(text) {
		return text
	}
	return strings.Join(strings.Fields(typed.Replace(text)), " ")
}

// isClean tells whether cleaning would change nothing, as with most texts.
func isClean(text string) bool {
	before := byte(' ')
	for i := range len(text) {
		c := text[i]
		if c < ' ' || c >= utf8.RuneSelf || c == before && (c == ' ' || c == '\'') {
			return false
		}
		before = c
	}
	return before != ' '
}

// startsNumber tells whether s starts as a number does: "5" or ".5".
func startsNumber(s string) bool {
	head, _ := digits(strings.TrimPrefix(s, "."))
	return head != ""
}

// digits cuts the leading decimal digits off s.
func digits(s string) (head, tail string) {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return s[:n], s[n:]
}
