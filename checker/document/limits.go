package document

import (
	"bytes"
	"fmt"
	"unicode/utf8"
)

// The limits of a document. They are far beyond any design or pack, and keep
// reading within bounds of time and memory.
const (
	MaxSize     = 1 << 20 // bytes
	MaxDepth    = 32      // tables and lists inside one another
	MaxKeyParts = 16      // parts of a dotted key
	MaxValues   = 30_000  // values, tables included
	MaxProblems = 1000    // problems that are listed
)

// admit looks at what must hold before a source can be read as characters.
func admit(source []byte) *Problem {
	start := Position{1, 1, 1}
	switch {
	case len(source) > MaxSize:
		return &Problem{Position: start, Message: fmt.Sprintf("the file has %d bytes, expected at most %d (1 MiB)", len(source), MaxSize)}
	case bytes.HasPrefix(source, []byte("\xff\xfe")), bytes.HasPrefix(source, []byte("\xfe\xff")), wide(source):
		return &Problem{Position: start, Message: "the file is UTF-16 text, expected UTF-8", Hint: utf8Hint}
	case utf8.Valid(source):
		return nil
	}
	at := invalid(source)
	return &Problem{Position: newLines(string(source)).position(spanOf(at, at)), Hint: utf8Hint,
		Message: fmt.Sprintf("found the byte 0x%02X, which is not UTF-8 text", source[at])}
}

const utf8Hint = "save the file with the encoding UTF-8"

// wide tells UTF-16 without a byte order mark by the zero byte of its first
// character.
func wide(source []byte) bool {
	return len(source) > 1 && (source[0] == 0) != (source[1] == 0)
}

// invalid is the offset of the first byte that is not UTF-8.
func invalid(source []byte) int {
	at := 0
	for at < len(source) {
		r, size := utf8.DecodeRune(source[at:])
		if r == utf8.RuneError && size == 1 {
			break
		}
		at += size
	}
	return at
}
