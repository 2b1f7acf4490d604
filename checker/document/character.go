package document

// class tells what the reader may do with a byte. Bytes beyond ASCII are parts of
// characters that stand for themselves.
type class uint8

const (
	bare      class = 1 << iota // may stand in a key without quotes
	printable                   // may stand in a comment or text
	plain                       // stands for itself in any text
)

var classes = func() (of [256]class) {
	for i := range of {
		c := byte(i)
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-' {
			of[i] |= bare
		}
		if c >= ' ' && c != 0x7f || c == '\t' {
			of[i] |= printable
		}
		if of[i]&printable != 0 && !isQuote(c) && c != '\\' {
			of[i] |= plain
		}
	}
	return of
}()

func isBare(c byte) bool { return classes[c]&bare != 0 }

func isPrintable(c byte) bool { return classes[c]&printable != 0 }

func isPlain(c byte) bool { return classes[c]&plain != 0 }

func isQuote(c byte) bool { return c == '"' || c == '\'' }
