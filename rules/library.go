package rules

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

//go:embed packs/*.rules.toml
var embedded embed.FS

const suffix = ".rules.toml"

// BuiltIn lists the ids of the packs that ship with the program, in order.
func BuiltIn() []string {
	names, _ := fs.Glob(embedded, "packs/*"+suffix) // the pattern is valid
	ids := make([]string, len(names))
	for i, n := range names {
		ids[i] = strings.TrimSuffix(path.Base(n), suffix)
	}
	sort.Strings(ids)
	return ids
}

// Library finds pack files: the embedded ones by id, others by path. Each file
// is read and compiled once.
type Library struct {
	read      func(name string) ([]byte, error) // of files that are not embedded
	effective map[string]*Effective
}

// NewLibrary makes a library. read gives the bytes of a pack file; nil where
// only embedded packs are wanted.
func NewLibrary(read func(name string) ([]byte, error)) *Library {
	return &Library{read: read, effective: map[string]*Effective{}}
}

// Pack gives a pack with all it inherits, compiled. name is the id of an
// embedded pack or the path of a *.rules.toml file. The error is an
// *InvalidPack, an *UnknownPack, or what reading the file gave.
func (l *Library) Pack(name string) (*Effective, error) { return l.pack(name, nil) }

func (l *Library) pack(name string, children []string) (*Effective, error) {
	if done, ok := l.effective[name]; ok {
		return done, nil
	}
	source, err := l.source(name)
	if err != nil {
		return nil, err
	}
	report := &mistakes{file: fileName(name)}
	pack := parsePack(fileName(name), source, report)
	if err := report.err(); err != nil {
		return nil, err
	}
	parents := l.parents(pack, name, append(children, name), report)
	if err := report.err(); err != nil {
		return nil, err
	}
	merged := inherit(pack, parents, report)
	if report.err() == nil {
		merged.compile(report)
	}
	if err := report.err(); err != nil {
		return nil, err
	}
	l.effective[name] = merged
	return merged, nil
}

// fileName is how messages call a pack: an embedded one by its place in the
// source tree.
func fileName(name string) string {
	if isFile(name) {
		return name
	}
	return "rules/packs/" + name + suffix
}

func isFile(name string) bool { return strings.HasSuffix(name, suffix) }

// UnknownPack says that no embedded pack has an id.
type UnknownPack struct{ Name string }

// Error names the nearest ids.
func (e *UnknownPack) Error() string {
	return fmt.Sprintf("no pack %q, expected one of %s, or a file *%s", e.Name, strings.Join(BuiltIn(), ", "), suffix)
}

func (l *Library) source(name string) ([]byte, error) {
	if !isFile(name) {
		source, err := embedded.ReadFile("packs/" + name + suffix)
		if err != nil {
			return nil, &UnknownPack{name}
		}
		return source, nil
	}
	if l.read == nil {
		return nil, &UnknownPack{name}
	}
	return l.read(name)
}

func parsePack(file string, source []byte, report *mistakes) *Pack {
	tree, problems := document.Parse(file, source)
	report.addAll(problems)
	if tree == nil || len(problems) > 0 {
		return nil
	}
	pack := &Pack{Name: file, Source: source}
	report.addAll(tree.Decode(pack))
	return pack
}

// parents loads what a pack extends; a file is looked up beside the pack.
func (l *Library) parents(pack *Pack, name string, line []string, report *mistakes) []*Effective {
	var parents []*Effective
	at, where := pack.Head.At("extends"), pack.Head.KeyPath("extends")
	for _, id := range pack.Head.Extends {
		parent := id
		if isFile(id) && isFile(name) {
			parent = path.Join(path.Dir(name), id)
		}
		for _, child := range line {
			if child == parent {
				report.add(at, where, fmt.Sprintf("pack %q extends itself through %s", id, strings.Join(line, ", ")), "")
				return nil
			}
		}
		e, err := l.pack(parent, line)
		if err != nil {
			l.reportParent(id, err, at, where, report)
			continue
		}
		parents = append(parents, e)
	}
	return parents
}

func (l *Library) reportParent(id string, err error, at document.Position, where string, report *mistakes) {
	if invalid, ok := err.(*InvalidPack); ok {
		report.files = append(report.files, invalid.Problems...)
		return
	}
	hint := ""
	if near := document.Near(id, BuiltIn()); near != "" {
		hint = fmt.Sprintf("did you mean %q?", near)
	}
	report.add(at, where, err.Error(), hint)
}
