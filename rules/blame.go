package rules

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules/expression"
)

// report reports a text of a rule that cannot be compiled, at its place. A text
// of a parent was sound: there an override of this pack is at fault.
func (c *Compiled) report(key string, err error, e *Effective, report *mistakes) {
	if err == nil {
		return
	}
	place := c.place(key)
	c.reportText(place.ref, key, key, err, e, report)
}

func (c *Compiled) reportEach(each Each, err error, e *Effective, report *mistakes) {
	c.reportText(c.written.ref.Child("each"), each.Name, "each "+each.Name, err, e, report)
}

func (c *Compiled) reportText(ref document.Ref, key, what string, err error, e *Effective, report *mistakes) {
	message, hint, at := err.Error(), "", ref.At(key)
	if mistake, ok := err.(*expression.Error); ok {
		message, hint = mistake.Message, mistake.Hint
		if text, ok := ref.Text(key); ok {
			at = text.Span(mistake.Offset, mistake.Length)
		}
	}
	path := ref.KeyPath(key)
	if override, file := c.override(e); file == report.file && c.place(key).file != report.file {
		message, hint = fmt.Sprintf("does not fit rule %q, %s: %s", c.ID, what, message), ""
		report.add(override.At("value"), override.KeyPath("value"), message, hint)
		return
	}
	report.in(c.place(key).file, func(m *mistakes) {
		m.add(at, path, fmt.Sprintf("rule %q, %s: %s", c.ID, what, message), hint)
	})
}

// override is the first limit or table of this pack that the rule uses.
func (c *Compiled) override(e *Effective) (document.Ref, string) {
	for _, name := range c.used().limits {
		if limit := e.Limits[name]; limit.Pack == e.Head.ID {
			return limit.Part.Ref, limit.file
		}
	}
	for _, name := range c.used().tables {
		if table := e.Tables[name]; table.Pack == e.Head.ID {
			return table.Part.Ref, table.file
		}
	}
	return document.Ref{}, ""
}
