package designtest

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

// page is a design file as it is being written.
type page struct {
	b    strings.Builder
	r    *rand.Rand
	si   bool
	gaps float64 // share of the optional keys that are left out
}

func (p *page) chance(share float64) bool { return p.r.Float64() < share }

func (p *page) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

func (p *page) table(header string) { p.line("\n%s", header) }

// text writes a key that is always given.
func (p *page) text(key, format string, args ...any) {
	p.line("%s = %q", key, fmt.Sprintf(format, args...))
}

// word writes one of some words, always.
func (p *page) word(key string, words ...string) { p.text(key, "%s", words[p.r.IntN(len(words))]) }

// oneOf writes one of some words, or leaves the key out.
func (p *page) oneOf(key string, words ...string) {
	word := words[p.r.IntN(len(words))]
	if !p.chance(p.gaps) {
		p.text(key, "%s", word)
	}
}

// value writes a plain value, or leaves the key out.
func (p *page) value(key, format string, args ...any) {
	if !p.chance(p.gaps) {
		p.line("%s = %s", key, fmt.Sprintf(format, args...))
	}
}

// truth writes true with a probability, or leaves the key out.
func (p *page) truth(key string, share float64) { p.value(key, "%v", p.chance(share)) }

// percent writes a share between two whole numbers, or leaves the key out.
func (p *page) percent(key string, low, high int) {
	p.value(key, `"%d %%"`, low+p.r.IntN(high-low+1))
}

// quantity writes a figure in the units of the design, or leaves the key out.
func (p *page) quantity(key string, v float64, in unitPair) { p.value(key, "%q", p.figure(v, in)) }

// between writes a figure between two.
func (p *page) between(key string, low, high float64, in unitPair) {
	p.quantity(key, low+p.r.Float64()*(high-low), in)
}

// unitPair is a unit of one system, and what it is in the other.
type unitPair struct {
	ip, si        string
	scale, offset float64 // from ip to si
	ipDigits      int
	siDigits      int
}

var (
	feet               = unitPair{"ft", "m", 0.3048, 0, 2, 3}
	inches             = unitPair{"in", "mm", 25.4, 0, 1, 0}
	squareFeet         = unitPair{"ft2", "m2", 0.09290304, 0, 0, 1}
	squareInches       = unitPair{"in2", "cm2", 6.4516, 0, 1, 1}
	cubicFeet          = unitPair{"ft3", "m3", 0.028316846592, 0, 0, 1}
	cubicFeetPerMinute = unitPair{"cfm", "L/s", 0.47194745, 0, 0, 1}
	waterInches        = unitPair{"inwc", "Pa", 249.08891, 0, 2, 0}
	fahrenheit         = unitPair{"F", "C", 1 / 1.8, -32 / 1.8, 1, 1}
	btuPerHour         = unitPair{"Btu/h", "W", 0.29307107, 0, 0, 0}
)

// figure prints a figure that is given in the first unit of a pair.
func (p *page) figure(v float64, in unitPair) string {
	if p.si {
		return fmt.Sprintf("%.*f %s", in.siDigits, v*in.scale+in.offset, in.si)
	}
	return fmt.Sprintf("%.*f %s", in.ipDigits, v, in.ip)
}

// point prints a place of the plan, in feet.
func (p *page) point(x, y float64) string {
	return fmt.Sprintf("[%q, %q]", p.figure(x, feet), p.figure(y, feet))
}
