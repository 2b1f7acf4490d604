package rules

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"strings"
)

// Effective is a pack with all it inherits: what a review runs.
type Effective struct {
	Head   Head
	Limits map[string]Owned[*Limit]
	Tables map[string]Owned[*Table]
	Bases  map[string]Owned[*Base]
	Rules  []*Compiled // parents' first, in the order of the files
	Off    []SwitchedOff
	Files  []*Pack // this pack's file first, then those it extends

	broken    []string             // own tables that cannot be used
	unsettled map[string][2]string // names of base designs that two parents give, and these packs
	before    figures              // of the parents
	digest    func() string
}

// Owned is a part of a pack, the id of the pack that it comes from, and the file
// that holds it.
type Owned[T any] struct {
	Part T
	Pack string
	file string
}

// SwitchedOff is a rule of a parent that a pack does not apply.
type SwitchedOff struct{ Rule, Reason, Pack string }

// Digest is the SHA-256 of all files of the pack, in order.
func (e *Effective) Digest() string { return e.digest() }

func (e *Effective) sum() string {
	sum := sha256.New()
	part := make([]byte, 4096)
	for _, p := range e.Files {
		fmt.Fprintf(sum, "%s %d\n", p.Head.ID, len(p.Source))
		io.CopyBuffer(sum, struct{ io.Reader }{strings.NewReader(p.Source)}, part) // as a whole it would be copied
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// Rule finds a rule by its id or by one of its earlier ids; nil when there is
// none.
func (e *Effective) Rule(id string) *Compiled {
	for _, r := range e.Rules {
		if r.ID == id {
			return r
		}
		for _, alias := range r.Aliases {
			if alias == id {
				return r
			}
		}
	}
	return nil
}

// Extends tells whether the pack inherits from another.
func (e *Effective) Extends(id string) bool {
	for _, f := range e.Files[1:] {
		if f.Head.ID == id {
			return true
		}
	}
	return false
}

func (e *Effective) holds(file *Pack) bool {
	for _, f := range e.Files {
		if f == file {
			return true
		}
	}
	return false
}

func (e *Effective) remove(r *Compiled) {
	for i := range e.Rules {
		if e.Rules[i] == r {
			e.Rules = append(e.Rules[:i], e.Rules[i+1:]...)
			return
		}
	}
}
