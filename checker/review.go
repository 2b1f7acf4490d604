package checker

import (
	"sync"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
)

// Request is what a review needs beside the design.
type Request struct {
	File            string // how reports call the design
	Packs           []*rules.Effective
	Date            string // day of the review, YYYY-MM-DD
	IgnoreVariances bool   // judge as if the design recorded none
	Depth           Depth
	Beside          bool // packs are asked beside each other, where nothing else keeps the processors busy
}

// Depth is how much a review tells of results that ask nothing of anybody: as much as
// the reports show that are made of it.
type Depth int

// The depths of a review.
const (
	Evidence Depth = iota // all that they rest on, and the digests of packs
	Outcomes              // that they are there
	Problems              // how many there are, but for those that rest on a stated distance
)

// Review asks every rule of the packs of a design. It always gives a report: a
// pack that cannot be used is refused when it is loaded, a design when it is read.
func Review(d *design.Design, q Request) *Report {
	r := &Report{File: q.File, Design: d, Units: systemOf(d), Date: q.Date}
	packs := outermost(q.Packs)
	reviews := make([]*reviewing, len(packs))
	for i, pack := range packs {
		r.Packs = append(r.Packs, q.used(pack))
		reviews[i] = newReviewing(r, pack, q, len(packs))
	}
	askAll(reviews, q.Beside)
	for _, w := range reviews {
		r.Unreached += w.unreached
		r.count(w.counted)
	}
	r.Results = ordered(reviews)
	about := aboutAll(d, reviews)
	r.Figures = figures(about, r.Units)
	r.Assumptions = assumptions(about, packs)
	if !q.IgnoreVariances {
		r.accept(d.Variances, packs)
	}
	return r
}

// aboutAll are facts for what is told of the design as a whole: those of the last pack,
// which have worked out most of it.
func aboutAll(d *design.Design, reviews []*reviewing) *facts.Facts {
	if len(reviews) == 0 {
		return facts.Of(d)
	}
	return reviews[len(reviews)-1].facts
}

// askAll asks packs one after the other, or beside each other. What comes of one does
// not depend on the others.
func askAll(reviews []*reviewing, beside bool) {
	if !beside {
		for _, w := range reviews {
			w.all()
		}
		return
	}
	var wait sync.WaitGroup
	for _, w := range reviews {
		wait.Go(w.all)
	}
	wait.Wait()
}

func (q Request) used(pack *rules.Effective) PackUsed {
	u := PackUsed{ID: pack.Head.ID, Title: pack.Head.Title, Edition: pack.Head.Edition}
	if q.Depth == Evidence {
		u.Digest = pack.Digest()
	}
	return u
}

func (q Request) telling() rules.Telling {
	if q.Depth == Evidence {
		return rules.Everything
	}
	return rules.Problems
}

func systemOf(d *design.Design) quantity.System {
	if d.Project.Units == "SI" {
		return quantity.SI
	}
	return quantity.IP
}

// outermost leaves out packs that another of the list extends, and repetitions:
// their rules are asked once, as the extending pack has them.
func outermost(packs []*rules.Effective) []*rules.Effective {
	var kept []*rules.Effective
	for i, p := range packs {
		covered := false
		for k, other := range packs {
			covered = covered || k != i && other.Extends(p.Head.ID) || k < i && other.Head.ID == p.Head.ID
		}
		if !covered {
			kept = append(kept, p)
		}
	}
	return kept
}
