package main

import (
	"errors"
	"fmt"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/cmd/ventlint/config"
	"github.com/ventlint/ventlint/rules"
)

// origin tells where a setting comes from; the zero origin is the default.
type origin struct {
	flag bool
	at   document.Position // in the configuration
}

// settle takes from the configuration what no flag says.
func (f *reviewFlags) settle(m machine, changed func(string) bool, paths []string) error {
	file, err := f.configuration.read(m)
	if err != nil {
		return err
	}
	f.file, f.from = file, map[string]origin{}
	t := taking{f, changed}
	if f.paths = paths; len(paths) > 0 {
		f.from["designs"] = origin{flag: true}
	}
	if file == nil {
		file = &config.Config{}
	}
	takeList(t, "pack", &f.packs, file.Packs, file.PackName)
	takeList(t, "output", &f.outputs, file.Outputs, file.OutputName)
	takeWord(t, "format", &f.format, file.Format)
	takeWord(t, "fail-on", &f.failOn, file.FailOn)
	takeYes(t, "fail-on-new", &f.failOnNew, file.FailOnNew)
	takeYes(t, "ignore-variances", &f.ignoreVariances, file.IgnoreVariances)
	takeWord(t, "color", &f.color, file.Color)
	if takeWord(t, "baseline", &f.baseline, file.Baseline) {
		f.baseline = file.Path(f.baseline)
	}
	return f.designs(m)
}

// settingsFile is the path of the configuration; empty without one.
func (f *reviewFlags) settingsFile() string {
	if f.file == nil {
		return ""
	}
	return f.file.Name
}

// designs takes the designs of the configuration where no path is given.
func (f *reviewFlags) designs(m machine) error {
	if len(f.paths) > 0 || f.file == nil || len(f.file.Designs) == 0 {
		return nil
	}
	f.from["designs"] = origin{at: f.file.At("designs")}
	paths, problems := f.file.Select()
	f.paths = paths
	return tell(m, f.file.Name, problems)
}

// taking is the way of settings from the configuration into flags.
type taking struct {
	f       *reviewFlags
	changed func(string) bool // whether a flag was given
}

// from notes where a setting comes from, and tells whether that is the
// configuration.
func (t taking) from(key string, given bool) bool {
	switch {
	case t.changed(key):
		t.f.from[key] = origin{flag: true}
	case given:
		t.f.from[key] = origin{at: t.f.file.At(key)}
		return true
	}
	return false
}

// takeWord takes a setting that is a word or a path.
func takeWord[F ~string](t taking, key string, to *string, from *F) bool {
	taken := t.from(key, from != nil)
	if taken {
		*to = string(*from)
	}
	return taken
}

func takeYes(t taking, key string, to *bool, from *bool) {
	if t.from(key, from != nil) {
		*to = *from
	}
}

// takeList takes a setting that has several values.
func takeList[F any](t taking, key string, to *[]string, from []F, text func(F) string) {
	if !t.from(key, len(from) > 0) {
		return
	}
	for _, each := range from {
		*to = append(*to, text(each))
	}
}

// said tells where a setting was made, for messages.
func (f *reviewFlags) said(key string) string {
	if at := f.from[key].at; at.Line > 0 {
		return fmt.Sprintf("%s:%d:%d: %s", f.file.Name, at.Line, at.Column, key)
	}
	return "--" + key
}

// packProblem tells where the configuration names a pack that cannot be used. The
// mistakes of a pack have places of their own.
func (f *reviewFlags) packProblem(i int, err error) error {
	var invalid *rules.InvalidPack
	if f.from["pack"].at.Line == 0 || errors.As(err, &invalid) {
		return err
	}
	at := f.file.Packs[i].Position()
	return fmt.Errorf("%s:%d:%d: %w", f.file.Name, at.Line, at.Column, err)
}
