package main

import (
	"fmt"
	"io"
	"sync"
)

// progress tells a watching person how far a work on many designs has come.
type progress struct {
	to         io.Writer // nil where nobody watches
	all, every int
	lock       sync.Mutex
	done       int
}

func newProgress(m machine, all int) *progress {
	p := &progress{all: all, every: max(1, all/200)}
	if m.watched && all > 1 {
		p.to = m.stderr
	}
	return p
}

// step tells that one more design is done.
func (p *progress) step() {
	p.lock.Lock()
	defer p.lock.Unlock()
	if p.done++; p.to != nil && p.done%p.every == 0 {
		fmt.Fprintf(p.to, "\r%d of %d designs", p.done, p.all)
	}
}

// end leaves an empty line behind.
func (p *progress) end() {
	if p.to != nil {
		fmt.Fprintf(p.to, "\r%*s\r", len(fmt.Sprintf("%d of %d designs", p.all, p.all)), "")
	}
}
