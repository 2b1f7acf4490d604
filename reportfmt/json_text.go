package reportfmt

import (
	"bufio"
	"bytes"
	"encoding/json"
	"io"
)

// writeJSON writes a document with its texts made visible.
func writeJSON(w io.Writer, document any) error {
	makeVisible(document)
	return jsonEncoder(w, "").Encode(document)
}

// jsonEncoder begins every line but the first with an indent. The characters of HTML
// stay as they are: rules are full of them.
func jsonEncoder(w io.Writer, indent string) *json.Encoder {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent(indent, "  ")
	return encoder
}

// writeElements makes the elements of a list, one after the other, and writes them as
// they stand in a document, on the lines between its brackets. The indent is that of
// the line on which the list begins.
func writeElements[A, B any](out *bytes.Buffer, indent string, from []A, element func(A) B) error {
	encoder := jsonEncoder(out, indent+"  ")
	for i, a := range from {
		if i > 0 {
			out.WriteString(",\n")
		}
		out.WriteString(indent + "  ")
		b := element(a)
		makeVisible(&b)
		if err := encoder.Encode(&b); err != nil {
			return err
		}
		out.Truncate(out.Len() - 1) // the end of its line
	}
	return nil
}

// addElements makes elements and lays them aside as one part.
func addElements[A, B any](to *parts, file, indent string, from []A, element func(A) B) error {
	to.text.Reset()
	if err := writeElements(&to.text, indent, from, element); err != nil {
		return err
	}
	return to.add(file, to.text.Bytes())
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
