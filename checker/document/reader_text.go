package document

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// text reads a text in any of the four kinds of quotes.
func (r *reader) text() {
	if r.hasThree() {
		r.lots()
		return
	}
	r.line()
}

// hasThree tells whether three quotes come next, of which one does.
func (r *reader) hasThree() bool {
	return r.at+2 < len(r.source) && r.source[r.at+1] == r.source[r.at] && r.source[r.at+2] == r.source[r.at]
}

// line reads a text in single or double quotes.
func (r *reader) line() {
	start, quote := r.at, r.peek()
	r.at++
	if r.plainLine(quote) {
		return
	}
	r.beyond = true
	var b strings.Builder
	for r.peek() != quote {
		switch {
		case r.endOfLine():
			r.fail(spanOf(start, r.at), `a text over several lines stands in three quotes: """ or '''`, "the text that begins here has no closing quote on its line")
		case quote == '"' && r.peek() == '\\':
			r.escape(&b)
		default:
			r.plain(&b)
		}
	}
	r.note()
	r.at++
	r.quoted = r.at
	r.write(start, b.String())
}

// plainLine reads a text that is what stands between its quotes, as most are. It
// reads nothing where a character needs a closer look.
func (r *reader) plainLine(quote byte) bool {
	if r.record {
		return false
	}
	for at := r.at; at < len(r.source); at++ {
		switch c := r.source[at]; {
		case isPlain(c):
		case c == quote:
			r.at, r.quoted = at+1, at+1
			return true
		case !isPrintable(c), c == '\\' && quote == '"':
			return false
		}
	}
	return false
}

// lots reads a text in three quotes, which may run over lines.
func (r *reader) lots() {
	r.beyond = true
	start, quotes := r.at, r.source[r.at:r.at+3]
	r.at += 3
	r.newline() // the first one does not count
	if r.plainLots(quotes) {
		return
	}
	var b strings.Builder
	for !r.closing(quotes, &b) {
		switch {
		case r.end():
			r.fail(spanOf(start, start+3), "", "the text that begins here is not closed, expected %s", quotes)
		case r.endOfLine():
			r.breakLine(&b)
		case quotes == `"""` && r.peek() == '\\':
			r.continuedOrEscape(&b)
		default:
			r.plain(&b)
		}
	}
	r.quoted = r.at
	r.write(start, b.String())
}

// plainLots is plainLine for a text in three quotes.
func (r *reader) plainLots(quotes string) bool {
	length := strings.Index(r.source[r.at:], quotes)
	if length < 0 || r.record {
		return false
	}
	plain := r.source[r.at : r.at+length]
	after := r.at + length + len(quotes)
	if strings.HasPrefix(r.source[after:], quotes[:1]) {
		return false
	}
	for i := range len(plain) {
		if c := plain[i]; !isPlain(c) && c != '\n' && (!isPrintable(c) || c == '\\' && quotes[0] == '"') {
			return false
		}
	}
	r.at, r.quoted = after, after
	return true
}

// write keeps a text that is not what stands between its quotes.
func (r *reader) write(start int, text string) {
	if r.written == nil {
		r.written = map[int32]string{}
	}
	r.written[int32(start)] = text
}

// closing consumes three quotes; one or two more before them belong to the text.
func (r *reader) closing(quotes string, b *strings.Builder) bool {
	if !r.has(quotes) {
		return false
	}
	for extra := 0; extra < 2 && r.has(quotes+quotes[:1]); extra++ {
		r.plain(b)
	}
	r.note()
	r.at += len(quotes)
	return true
}

// plain reads one character that stands for itself.
func (r *reader) plain(b *strings.Builder) {
	r.note()
	start := r.at
	r.character()
	b.WriteString(r.source[start:r.at])
}

// breakLine reads a line end inside a text as one line feed.
func (r *reader) breakLine(b *strings.Builder) {
	r.note()
	r.newline()
	b.WriteByte('\n')
}

// continuedOrEscape reads what a backslash begins in three double quotes: at
// the end of a line it drops all blanks up to the next text.
func (r *reader) continuedOrEscape(b *strings.Builder) {
	start := r.at
	r.at++
	r.spaces()
	if r.end() || !r.endOfLine() {
		r.at = start
		r.escape(b)
		return
	}
	for r.newline() {
		r.spaces()
	}
}

// escapes are the letters after a backslash that stand for one character each, and
// the characters.
const escapes, escaped = `btnfre"\`, "\b\t\n\f\r\x1b\"\\"

// escapeDigits is how many hexadecimal digits follow a letter after a backslash.
func escapeDigits(letter byte) int {
	switch letter {
	case 'x':
		return 2
	case 'u':
		return 4
	case 'U':
		return 8
	}
	return 0
}

// escape reads one character written with a backslash.
func (r *reader) escape(b *strings.Builder) {
	r.note()
	start := r.at
	r.at++
	letter := r.peek()
	if i := strings.IndexByte(escapes, letter); i >= 0 {
		r.at++
		b.WriteByte(escaped[i])
		return
	}
	digits := escapeDigits(letter)
	if digits == 0 {
		r.fail(spanOf(start, int(r.next().end)), `write \\ for a backslash, or put the text in single quotes`, "found the unknown escape \\%s", r.letter())
	}
	r.at++
	first := r.at
	for r.at < first+digits && isHex(r.peek()) {
		r.at++
	}
	code, err := strconv.ParseUint(r.source[first:r.at], 16, 32)
	if err != nil || r.at < first+digits || !utf8.ValidRune(rune(code)) {
		r.fail(spanOf(start, r.at), "", "found %s, expected \\%c and the %d digits of a character in hexadecimal", r.excerpt(spanOf(start, r.at)), letter, digits)
	}
	b.WriteRune(rune(code))
}

// letter is the next character as text; nothing at a line end.
func (r *reader) letter() string {
	if r.endOfLine() {
		return ""
	}
	next := r.next()
	return r.source[next.start:next.end]
}

func isHex(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F'
}

// note records where the next character of a text stands.
func (r *reader) note() {
	if r.record {
		r.offsets = append(r.offsets, r.at)
	}
}
