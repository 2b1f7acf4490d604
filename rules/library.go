package rules

import (
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"
	"sync"

	"github.com/ventlint/ventlint/checker/document"
)

const suffix = ".rules.toml"

// Library finds pack files: the embedded ones by id, others by path. Each file
// is read and compiled once. It is safe for concurrent use.
type Library struct {
	read    func(name string) ([]byte, error) // of files that are not embedded
	reviews bool                              // embedded packs are taken as they are

	lock    sync.Mutex
	loaded  map[string]*loading
	outside sync.Mutex // files are loaded one after the other: they may extend each other in a circle
}

// loading is a pack that some goroutine loads, or has loaded.
type loading struct {
	once sync.Once
	pack *Effective
	err  error
}

// NewLibrary makes a library. read gives the bytes of a pack file; nil where
// only embedded packs are wanted.
func NewLibrary(read func(name string) ([]byte, error)) *Library {
	return &Library{read: read, loaded: map[string]*loading{}}
}

// NewReviewLibrary makes a library that serves to review designs. It takes the
// embedded packs as they are, since the tests of the program look at them: rules
// come without their samples, and are compiled when they are first asked. A pack
// from outside is checked as ever, with all that it makes of its parents.
func NewReviewLibrary(read func(name string) ([]byte, error)) *Library {
	l := NewLibrary(read)
	l.reviews = true
	return l
}

// Pack gives a pack with all it inherits, compiled. name is the id of an
// embedded pack or the path of a *.rules.toml file; followed by "@sha256:" and at
// least 12 digits of a digest, the pack must have that digest. The error is an
// *InvalidPack, an *UnknownPack, an *OtherDigest, or what reading the file gave.
func (l *Library) Pack(name string) (*Effective, error) {
	if bare, _, _ := unpinned(name); isFile(bare) {
		l.outside.Lock()
		defer l.outside.Unlock()
	}
	return l.pinnedPack(name, nil)
}

func (l *Library) pinnedPack(name string, children []string) (*Effective, error) {
	name, pin, err := unpinned(name)
	if err != nil {
		return nil, err
	}
	pack, err := l.pack(name, children)
	if err != nil {
		return nil, err
	}
	return pack, pack.pinned(name, pin)
}

// pack loads a pack once; what failed is tried again.
func (l *Library) pack(name string, children []string) (*Effective, error) {
	l.lock.Lock()
	p := l.loaded[name]
	if p == nil {
		p = &loading{}
		l.loaded[name] = p
	}
	l.lock.Unlock()
	p.once.Do(func() { p.pack, p.err = l.load(name, children) })
	if p.err != nil {
		l.forget(name, p)
	}
	return p.pack, p.err
}

func (l *Library) forget(name string, failed *loading) {
	l.lock.Lock()
	defer l.lock.Unlock()
	if l.loaded[name] == failed {
		delete(l.loaded, name)
	}
}

func (l *Library) load(name string, children []string) (*Effective, error) {
	source, err := l.source(name)
	if err != nil {
		return nil, err
	}
	report := &mistakes{file: fileName(name)}
	known := l.reviews && !isFile(name)
	pack := parsePack(fileName(name), source, known, report)
	if pack == nil {
		return nil, report.err()
	}
	parents := l.parents(pack, name, append(children, name), report)
	if err := report.err(); err != nil {
		return nil, err
	}
	merged := inherit(pack, parents, report)
	if !known {
		merged.check(pack, report)
	}
	merged.compile(known, report)
	return merged, report.err()
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

func (l *Library) source(name string) (string, error) {
	if !isFile(name) {
		if source, known := shippedPack(name); known {
			return source, nil
		}
		return "", &UnknownPack{name}
	}
	if l.read == nil {
		return "", &UnknownPack{name}
	}
	source, err := l.read(name)
	return string(source), err
}

// sampleHeader begins the samples of a rule: most of a pack, and nothing that a
// review needs.
const sampleHeader = "[[rule.sample]]"

func parsePack(file, source string, known bool, report *mistakes) *Pack {
	tree, problems := parse(file, source, known)
	report.addAll(problems)
	if tree == nil || len(problems) > 0 {
		return nil
	}
	pack := &Pack{Name: file, Source: source}
	report.addAll(tree.Decode(pack))
	return pack
}

func parse(file, source string, known bool) (*document.Tree, []document.Problem) {
	if known {
		return document.ParseKnown(source, sampleHeader)
	}
	return document.Parse(file, []byte(source))
}

// parents loads what a pack extends; a file is looked up beside the pack.
func (l *Library) parents(pack *Pack, name string, line []string, report *mistakes) []*Effective {
	var parents []*Effective
	wrong := func(message, hint string) {
		report.add(pack.Head.At("extends"), pack.Head.KeyPath("extends"), message, hint)
	}
	for _, named := range pack.Head.Extends {
		parent := beside(name, named)
		if bare, _, _ := unpinned(parent); slices.Contains(line, bare) {
			wrong(fmt.Sprintf("pack %q extends itself through %s", named, strings.Join(line, ", ")), "")
			continue
		}
		e, err := l.pinnedPack(parent, line)
		if err != nil {
			reportParent(err, pack, report)
			continue
		}
		if slices.Contains(parents, e) {
			wrong(fmt.Sprintf("found %q twice, expected each pack once", named), "")
			continue
		}
		if twice := within(parents, e); twice != "" {
			wrong(twice, "leave the pack out that the other one extends")
			continue
		}
		parents = append(parents, e)
	}
	return parents
}

// within tells of a parent that another parent extends already; empty where none
// does.
func within(parents []*Effective, e *Effective) string {
	for _, p := range parents {
		outer, inner := p, e
		if e.holds(p.Files[0]) {
			outer, inner = e, p
		}
		if outer.holds(inner.Files[0]) {
			return fmt.Sprintf("found packs %q and %q, of which %q extends %q already", p.Head.ID, e.Head.ID, outer.Head.ID, inner.Head.ID)
		}
	}
	return ""
}

// beside is the name of a parent as the caller of the library would give it: a
// file lies in the folder of the pack that names it.
func beside(name, parent string) string {
	if bare, _, _ := unpinned(parent); isFile(bare) && isFile(name) && !path.IsAbs(bare) {
		return path.Join(path.Dir(name), parent)
	}
	return parent
}

func reportParent(err error, pack *Pack, report *mistakes) {
	var invalid *InvalidPack
	var unknown *UnknownPack
	var other *OtherDigest
	message, hint := err.Error(), ""
	switch {
	case errors.As(err, &invalid):
		report.files = append(report.files, invalid.Problems...)
		return
	case errors.As(err, &unknown):
		message = fmt.Sprintf("no pack %q, expected one that ships with the program, or a file *%s", unknown.Name, suffix)
		hint = report.near(unknown.Name, BuiltIn())
	case errors.As(err, &other):
		hint = "look at what changed in it before you pin the new digest"
	}
	report.add(pack.Head.At("extends"), pack.Head.KeyPath("extends"), message, hint)
}
