package main

import (
	"errors"
	"fmt"
	"sync"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// standardPacks are those of a design that declares none.
var standardPacks = []string{"irc-2021", "practice"}

// packShelf loads each pack once, for all designs.
type packShelf struct {
	named   []*rules.Effective // by --pack; nil: what each design declares
	library *rules.Library
	lock    sync.Mutex
}

// loadPacks loads the packs of some names. told words what is wrong with one, by
// its place in the list.
func loadPacks(names []string, told func(int, error) error) (*packShelf, error) {
	shelf := &packShelf{library: rules.NewReviewLibrary(readFile)}
	for i, name := range names {
		pack, err := loadPack(shelf.library, name)
		if err != nil {
			return nil, told(i, err)
		}
		shelf.named = append(shelf.named, pack)
	}
	return shelf, oneEach(shelf.named)
}

// oneEach refuses two different packs of one id: a review asks the rules of an id
// once, and would pass over the other pack in silence.
func oneEach(packs []*rules.Effective) error {
	digests := map[string]string{}
	for _, p := range packs {
		if known := digests[p.Head.ID]; known != "" && known != p.Digest() {
			return fmt.Errorf("two different packs have the id %q, expected one", p.Head.ID)
		}
		digests[p.Head.ID] = p.Digest()
	}
	return nil
}

// forDesign gives the packs of a design; a problem is one of the design, which
// declares a pack that there is not.
func (s *packShelf) forDesign(d *design.Design) ([]*rules.Effective, []document.Problem) {
	if s.named != nil {
		return s.named, nil
	}
	names := d.Project.Codes
	if len(names) == 0 {
		names = standardPacks
	}
	s.lock.Lock()
	defer s.lock.Unlock()
	var packs []*rules.Effective
	for _, name := range names {
		pack, err := s.library.Pack(name)
		if err != nil {
			return nil, []document.Problem{{Position: d.Project.At("codes"), Path: "project.codes", Message: err.Error(), Hint: packHint(err)}}
		}
		packs = append(packs, pack)
	}
	if err := oneEach(packs); err != nil {
		return nil, []document.Problem{{Position: d.Project.At("codes"), Path: "project.codes", Message: err.Error()}}
	}
	return packs, nil
}

// loadPack names the nearest pack where there is none of the name.
func loadPack(library *rules.Library, name string) (*rules.Effective, error) {
	pack, err := library.Pack(name)
	if hint := packHint(err); hint != "" {
		err = fmt.Errorf("%w; %s", err, hint)
	}
	return pack, err
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
