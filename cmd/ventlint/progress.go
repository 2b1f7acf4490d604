package main

import (
	"fmt"
	"io"
	"strings"
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
		fmt.Fprintf(p.to, "\r%s", p.bar())
	}
}

// bar shows what is done of all, in one line that the next one covers.
func (p *progress) bar() string {
	const wide = 30
	full := wide * p.done / p.all
	return fmt.Sprintf("[%s%s] %d of %d designs", strings.Repeat("=", full), strings.Repeat(" ", wide-full), p.done, p.all)
}

// end leaves an empty line behind.
func (p *progress) end() {
	if p.to != nil {
		fmt.Fprintf(p.to, "\r%*s\r", len(p.bar()), "")
	}
}
