package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/reportfmt"
)

// configText prints a table: name, values, origin.
func configText(w writer, f *reviewFlags) error {
	fmt.Fprintf(w, "configuration: %s\n\n", f.fileName())
	list := f.list()
	width := 0
	for _, s := range list {
		width = max(width, len([]rune(s.shown()[0])))
	}
	for _, s := range list {
		shown := s.shown()
		fmt.Fprintf(w, "%-16s  %-*s  %s\n", s.name, width, shown[0], f.origin(s))
		for _, more := range shown[1:] {
			fmt.Fprintf(w, "%-16s  %s\n", "", more)
		}
	}
	return nil
}

func (f *reviewFlags) fileName() string {
	return cmp.Or(f.settingsFile(), "none")
}

// origin words where a setting comes from.
func (f *reviewFlags) origin(s setting) string {
	switch {
	case s.from.at.Line > 0:
		return fmt.Sprintf("%s:%d", f.file.Name, s.from.at.Line)
	case s.from.flag && s.name == "designs":
		return "command line"
	case s.from.flag:
		return "--" + s.name
	}
	return "default"
}

// shown are the values for people; there is at least one.
func (s setting) shown() []string {
	if !s.given() {
		return []string{"(" + s.unset + ")"}
	}
	if s.values == nil {
		return []string{fmt.Sprint(s.value)}
	}
	shown := make([]string, len(s.values))
	for i, v := range s.values {
		shown[i] = reportfmt.Visible(v)
	}
	return shown
}

// configTOML prints a configuration that says the same, for the working folder.
func configTOML(w writer, f *reviewFlags) error {
	fmt.Fprintf(w, "# what is in force; configuration: %s\n", reportfmt.Visible(f.fileName()))
	for _, s := range f.list() {
		if !s.given() {
			fmt.Fprintf(w, "# %s: %s # %s\n", s.name, s.unset, f.origin(s))
			continue
		}
		fmt.Fprintf(w, "%s = %s # %s\n", s.name, s.literal(), reportfmt.Visible(f.origin(s)))
	}
	return nil
}

// literal is the value as TOML.
func (s setting) literal() string {
	if s.values == nil {
		return literal(s.value)
	}
	list := make([]string, len(s.values))
	for i, v := range s.values {
		list[i] = literal(v)
	}
	return "[" + strings.Join(list, ", ") + "]"
}

// literal writes a text or truth value as JSON does, which TOML reads.
func literal(value any) string {
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(value); err != nil {
		panic("config: no literal: " + err.Error()) // texts and truth values have one
	}
	return strings.TrimSpace(out.String())
}

// settingsDocument is what configJSON writes.
type settingsDocument struct {
	Format   string         `json:"format"`
	Version  int            `json:"version"`
	File     string         `json:"file,omitempty"`
	Settings []settingEntry `json:"settings"`
}

type settingEntry struct {
	Name  string `json:"name"`
	Value any    `json:"value"`          // null where there is none
	From  string `json:"from"`           // flag, file or default
	Line  int    `json:"line,omitempty"` // in the file
}

// configJSON prints the settings for programs.
func configJSON(w writer, f *reviewFlags) error {
	d := settingsDocument{Format: "ventlint-settings", Version: 1, File: f.settingsFile()}
	for _, s := range f.list() {
		e := settingEntry{s.name, nil, "default", s.from.at.Line}
		switch {
		case e.Line > 0:
			e.From = "file"
		case s.from.flag:
			e.From = "flag"
		}
		switch {
		case s.given() && s.values != nil:
			e.Value = s.values
		case s.given():
			e.Value = s.value
		}
		d.Settings = append(d.Settings, e)
	}
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(d)
}
