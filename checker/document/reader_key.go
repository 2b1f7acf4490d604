package document

// part is one part of a dotted key.
type part struct {
	name string
	at   span
}

// pair reads `key = value` into a table.
func (r *reader) pair(into *node) {
	parts := r.keys()
	r.beyond = r.beyond || len(parts) > 1
	if !r.take('=') {
		r.fail(r.next(), "", `found %s after the key, expected "="`, r.found())
	}
	r.spaces()
	r.fill(r.define(into, parts))
}

// header reads [name] or [[name]].
func (r *reader) header() {
	start := r.at
	r.at++
	many := r.take('[')
	parts := r.keys()
	closing := "]"
	if many {
		closing = "]]"
	}
	if !r.has(closing) {
		r.fail(r.next(), "", "found %s in a table header, expected %q", r.found(), closing)
	}
	r.at += len(closing)
	r.section = r.open(parts, spanOf(start, r.at), many)
}

// keys reads a dotted key and the blanks around it. The parts hold until the next
// key is read.
func (r *reader) keys() []part {
	r.parts = r.parts[:0]
	for {
		r.spaces()
		r.parts = append(r.parts, r.key())
		if len(r.parts) > MaxKeyParts {
			r.fail(r.parts[MaxKeyParts].at, "", "the key has more than %d parts", MaxKeyParts)
		}
		r.spaces()
		if !r.take('.') {
			return r.parts
		}
	}
}

func (r *reader) key() part {
	start, end := r.at, r.at
	for end < len(r.source) && isBare(r.source[end]) {
		end++
	}
	if r.at = end; end > start {
		return part{r.source[start:end], spanOf(start, end)}
	}
	switch {
	case r.has(`"""`), r.has("'''"):
		r.fail(spanOf(start, start+3), "", "found three quotes, expected a key on one line")
	case r.peek() != '"' && r.peek() != '\'':
		r.fail(r.next(), keyHint(r.peek()), "found %s, expected a key", r.found())
	}
	r.beyond = true
	r.line()
	at := spanOf(start, r.at)
	return part{r.said(at), at}
}

func keyHint(found byte) string {
	switch {
	case found >= 0x80:
		return "a key without quotes may hold letters a to z, digits, _ and -"
	case found == '{':
		return "a TOML file has lines such as key = \"value\" below [table] lines"
	}
	return ""
}
