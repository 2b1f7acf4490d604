package reportfmt

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
)

// writeJSON writes a document with its texts made visible. The characters of
// HTML stay as they are: rules are full of them.
func writeJSON(w io.Writer, document any) error { return encodeJSON(w, document, "") }

// encodeJSON begins every line but the first with an indent.
func encodeJSON(w io.Writer, document any, indent string) error {
	makeVisible(document)
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent(indent, "  ")
	return encoder.Encode(document)
}

// elements gives the elements of a list as they stand in a document, on the lines
// between its brackets. The indent is that of the line on which the list begins.
func elements[T any](list []T, indent string) ([]byte, error) {
	if len(list) == 0 {
		return nil, nil
	}
	var out bytes.Buffer
	err := encodeJSON(&out, list, indent)
	return bytes.TrimSuffix(bytes.TrimPrefix(out.Bytes(), []byte("[\n")), []byte("\n"+indent+"]\n")), err
}

// addElements lays elements aside as one part.
func addElements[T any](to *parts, file string, list []T, indent string) error {
	text, err := elements(list, indent)
	if err != nil {
		return err
	}
	return to.add(file, text)
}

// list is a list of a document of which parts hold the elements.
type list struct {
	key    string // before it; empty for one that is the document
	indent string // of the line on which it begins
	of     []*parts
}

// cut parts a text before and after the list, which is empty there. No text can
// look like a key: quotation marks inside texts have a backslash before them.
func (l list) cut(text []byte) (before, after []byte) {
	const empty = "[]"
	lead := ""
	if l.key != "" {
		lead = `"` + l.key + `": `
	}
	before, after, _ = bytes.Cut(text, []byte(lead+empty))
	return append(before[:len(before):len(before)], lead...), after
}

func (l list) write(w io.Writer) error {
	const first = "[\n"
	lead := first
	for _, p := range l.of {
		err := p.each(func(text []byte) error {
			if _, err := io.WriteString(w, lead); err != nil {
				return err
			}
			lead = ",\n"
			_, err := w.Write(text)
			return err
		})
		if err != nil {
			return err
		}
	}
	bottom := "\n" + l.indent + "]"
	if lead == first {
		bottom = "[]"
	}
	_, err := io.WriteString(w, bottom)
	return err
}

// fill writes a document and, where it has empty lists, their elements. The lists
// are in the order of the document.
func fill(w io.Writer, document any, lists ...list) error {
	var text bytes.Buffer
	if err := writeJSON(&text, document); err != nil {
		return err
	}
	out, rest := bufio.NewWriter(w), text.Bytes()
	for _, l := range lists {
		before, after := l.cut(rest)
		out.Write(before)
		if err := l.write(out); err != nil {
			return err
		}
		rest = after
	}
	out.Write(rest)
	return out.Flush()
}
