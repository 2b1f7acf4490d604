package main

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"sync"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// standardPacks are those of a design that declares none.
var standardPacks = []string{"irc-2021", "practice"}

// packShelf loads each pack once, for all designs.
type packShelf struct {
	named   []*rules.Effective // by --pack; none: what each design declares
	library *rules.Library
}

// loadPacks loads the packs of some names. told words what is wrong with one, by
// its place in the list.
func loadPacks(names []string, told func(int, error) error) (*packShelf, error) {
	shelf := &packShelf{library: rules.NewReviewLibrary(readFile)}
	packs, failed, err := shelf.together(names)
	if err != nil {
		return nil, told(failed, hinted(err))
	}
	shelf.named = packs
	return shelf, oneEach(packs)
}

// together loads packs beside each other; failed is the first that there is a
// mistake in, by its place in the list.
func (s *packShelf) together(names []string) (packs []*rules.Effective, failed int, err error) {
	packs = make([]*rules.Effective, len(names))
	mistakes := make([]error, len(names))
	var wait sync.WaitGroup
	for i, name := range names {
		wait.Go(func() { packs[i], mistakes[i] = s.library.Pack(name) })
	}
	wait.Wait()
	for i, err := range mistakes {
		if err != nil {
			return nil, i, err
		}
	}
	return packs, 0, nil
}

// ahead begins to load the embedded packs that a design seems to name at its beginning,
// or those of one that declares none, while it is read.
func (s *packShelf) ahead(source []byte) {
	if len(s.named) > 0 {
		return
	}
	beginning := source[:min(len(source), 4096)]
	names := slices.DeleteFunc(rules.BuiltIn(), func(id string) bool { return !bytes.Contains(beginning, []byte(strconv.Quote(id))) })
	if len(names) == 0 {
		names = standardPacks
	}
	for _, name := range names {
		go s.library.Pack(name) // what comes of it is asked for later
	}
}

// oneEach refuses two different packs of one id: a review asks the rules of an id
// once, and would pass over the other pack in silence.
func oneEach(packs []*rules.Effective) error {
	for i, p := range packs {
		for _, other := range packs[:i] {
			if other.Head.ID == p.Head.ID && other.Digest() != p.Digest() {
				return fmt.Errorf("two different packs have the id %q, expected one", p.Head.ID)
			}
		}
	}
	return nil
}

// forDesign gives the packs of a design; a problem is one of the design, which
// declares a pack that there is not.
func (s *packShelf) forDesign(d *design.Design) ([]*rules.Effective, []document.Problem) {
	if len(s.named) > 0 {
		return s.named, nil
	}
	names := d.Project.Codes
	if len(names) == 0 {
		names = standardPacks
	}
	packs, _, err := s.together(names)
	if err == nil {
		err = oneEach(packs)
	}
	if err != nil {
		return nil, []document.Problem{{Position: d.Project.At("codes"), Path: "project.codes", Message: err.Error(), Hint: packHint(err)}}
	}
	return packs, nil
}

// loadPack names the nearest pack where there is none of the name.
func loadPack(library *rules.Library, name string) (*rules.Effective, error) {
	pack, err := library.Pack(name)
	return pack, hinted(err)
}

func hinted(err error) error {
	if hint := packHint(err); hint != "" {
		return fmt.Errorf("%w; %s", err, hint)
	}
	return err
}

func packHint(err error) string {
	var unknown *rules.UnknownPack
	if errors.As(err, &unknown) {
		if near := document.Near(unknown.Name, rules.BuiltIn()); near != "" {
			return fmt.Sprintf("did you mean %q?", near)
		}
	}
	return ""
}
