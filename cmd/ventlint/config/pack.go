package config

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

const (
	pinMark    = "@sha256:"
	packSuffix = ".rules.toml"
)

func isFile(pack string) bool { return strings.HasSuffix(pack, packSuffix) }

// PackName is a pack as a library of the working folder takes it.
func (c *Config) PackName(p Pack) string {
	if bare, pin, pinned := strings.Cut(p.Text, pinMark); isFile(bare) && pinned {
		return c.Path(bare) + pinMark + pin
	} else if isFile(bare) {
		return c.Path(bare)
	}
	return p.Text
}

// OutputName is a form and a file as --output takes it in the working folder.
func (c *Config) OutputName(o Output) string {
	form, file, _ := strings.Cut(o.Text, "=")
	return form + "=" + c.Path(file)
}

// UnmarshalTOML takes a text.
func (p *Pattern) UnmarshalTOML(value any) error { return text(&p.Text, value) }

// UnmarshalTOML takes a text.
func (p *Pack) UnmarshalTOML(value any) error { return text(&p.Text, value) }

// UnmarshalTOML takes a text.
func (o *Output) UnmarshalTOML(value any) error { return text(&o.Text, value) }

func text(to *string, value any) error {
	text, ok := value.(string)
	if !ok {
		return fmt.Errorf("found %s, expected text in quotes", document.Shown(value))
	}
	*to = text
	return nil
}
