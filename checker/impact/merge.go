package impact

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
)

// Write writes the document as JSON.
func (d *Document) Write(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(d)
}

// Read reads a document that Write wrote. The error says what it is instead.
func Read(source []byte) (*Document, error) {
	decoder := json.NewDecoder(bytes.NewReader(source))
	d := &Document{}
	if err := decoder.Decode(d); err != nil {
		return nil, fmt.Errorf("not the json of ventlint impact: %w", err)
	}
	switch {
	case d.Format != format:
		return nil, fmt.Errorf("found the format %.64q, expected %q", d.Format, format)
	case d.Version != version:
		return nil, fmt.Errorf("found version %d of the format, expected %d", d.Version, version)
	case decoder.More():
		return nil, errors.New("found more after the end of the document")
	}
	return d, d.check()
}

// check refuses counts that do not add up: they were not written by this program.
func (d *Document) check() error {
	whole := slices.Clone(d.Designs)
	for _, r := range d.Rules {
		whole = append(whole, r.Cases...)
		if n := total(r.Cases); n != d.Judged || r.Near < 0 || r.Near > n {
			return fmt.Errorf("the counts of rule %.64q do not add up to %d designs", r.Rule, d.Judged)
		}
	}
	negative := slices.ContainsFunc(whole, func(c Count) bool { return c.Designs < 0 })
	if negative || total(d.Designs) != d.Judged || d.Changed.Count < len(d.Changed.Listed) || d.Failed.Count < len(d.Failed.Listed) {
		return fmt.Errorf("the counts do not add up to %d designs", d.Judged)
	}
	if p := d.Part; p != nil && (p.Number < 1 || p.Number > p.Of) {
		return fmt.Errorf("found part %d of %d", p.Number, p.Of)
	}
	return nil
}

func total(list []Count) int { return sum(changes(list)) }

// Merge puts the parts of one comparison together: the document that an undivided
// run would have given. All parts must be there, each once.
func Merge(parts []*Document) (*Document, error) {
	if len(parts) == 0 {
		return nil, errors.New("no part to merge")
	}
	first := parts[0]
	seen := map[int]bool{}
	sum := first.empty().tally()
	for i, p := range parts {
		if p.Part == nil {
			return nil, fmt.Errorf("document %d is a whole, expected a part as --part gives it", i+1)
		}
		if what := first.differs(p); what != "" {
			return nil, fmt.Errorf("documents 1 and %d are of two comparisons: their %s differ", i+1, what)
		}
		if seen[p.Part.Number] {
			return nil, fmt.Errorf("part %d of %d is there twice", p.Part.Number, p.Part.Of)
		}
		seen[p.Part.Number] = true
		sum.Merge(p.tally())
	}
	for k := range first.Part.Of {
		if !seen[k+1] {
			return nil, fmt.Errorf("part %d of %d is missing", k+1, first.Part.Of)
		}
	}
	whole := first.empty()
	whole.fill(sum)
	if n := whole.Judged + whole.Failed.Count; n != whole.Set.Designs {
		return nil, fmt.Errorf("the parts hold %d designs, expected %d", n, whole.Set.Designs)
	}
	return whole, nil
}

// empty is a whole of the same comparison that has counted nothing yet.
func (d *Document) empty() *Document {
	return &Document{Format: format, Version: version, From: d.From, To: d.To, Margin: d.Margin, Longest: d.Longest, Set: d.Set}
}

// differs names what two parts of one comparison must share, and these do not.
func (d *Document) differs(o *Document) string {
	switch {
	case d.From != o.From || d.To != o.To:
		return "packs"
	case d.Set != o.Set:
		return "designs"
	case d.Margin != o.Margin:
		return "margins"
	case d.Longest != o.Longest:
		return "lengths of lists"
	case d.Part.Of != o.Part.Of:
		return "numbers of parts"
	}
	return ""
}
