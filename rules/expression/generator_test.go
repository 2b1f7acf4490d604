package expression

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
)

// generator makes random conditions that compile. Each can be written in two
// ways that must mean the same: mirrored, with the sides of every operator
// swapped.
type generator struct {
	rand   *rand.Rand
	asking bool // known() and ?? may occur: they make a missing key a fact
	loops  int
	names  []string // of truths
	next   int
}

// writing gives an expression as it is, or mirrored.
type writing func(mirrored bool) string

func plainly(text string) writing { return func(bool) string { return text } }

func (g *generator) pick(of ...string) string { return of[g.rand.Intn(len(of))] }

func (g *generator) condition(depth int) writing {
	if depth <= 0 {
		return g.leaf()
	}
	switch g.rand.Intn(10) {
	case 0, 1, 2:
		return g.pair(g.pick("and", "or"), g.condition(depth-1), g.condition(depth-1))
	case 3:
		inner := g.condition(depth - 1)
		return func(m bool) string { return "not (" + inner(m) + ")" }
	case 4:
		return g.choice(depth)
	case 5, 6:
		return g.quantifier(depth)
	case 7:
		return g.let(depth)
	case 8:
		return g.pair(g.pick("==", "!="), g.condition(depth-1), g.condition(depth-1))
	}
	return g.leaf()
}

func (g *generator) pair(operator string, a, b writing) writing {
	return func(m bool) string {
		if m {
			return "(" + b(m) + ") " + flipped(operator) + " (" + a(m) + ")"
		}
		return "(" + a(m) + ") " + operator + " (" + b(m) + ")"
	}
}

func flipped(operator string) string {
	switch operator {
	case "<":
		return ">"
	case "<=":
		return ">="
	case ">":
		return "<"
	case ">=":
		return "<="
	}
	return operator
}

func (g *generator) choice(depth int) writing {
	c, yes, no := g.condition(depth-1), g.condition(depth-1), g.condition(depth-1)
	return func(m bool) string {
		if m {
			return fmt.Sprintf("(not (%s) ? (%s) : (%s))", c(m), no(m), yes(m))
		}
		return fmt.Sprintf("((%s) ? (%s) : (%s))", c(m), yes(m), no(m))
	}
}

func (g *generator) quantifier(depth int) writing {
	name, list := g.pick("all", "any", "none", "one"), g.list()
	g.loops++
	body := g.condition(depth - 1)
	g.loops--
	return func(m bool) string {
		if m && name == "none" {
			return fmt.Sprintf("(not any(%s, %s))", list, body(m))
		}
		return fmt.Sprintf("%s(%s, %s)", name, list, body(m))
	}
}

func (g *generator) list() string {
	return g.pick("vents", "vents", "nobody", "filter(vents, .x > 2 m)", "filter(vents, .kind == 'outlet')", "filter(vents, .flow > 0 cfm)", "beside(inlet)", "[inlet, outlet]")
}

func (g *generator) let(depth int) writing {
	g.next++
	name := fmt.Sprintf("t%d", g.next)
	value := g.condition(depth - 1)
	g.names = append(g.names, name)
	body := g.condition(depth - 1)
	g.names = g.names[:len(g.names)-1]
	return func(m bool) string { return fmt.Sprintf("(let %s = %s; %s)", name, value(m), body(m)) }
}

func (g *generator) leaf() writing {
	if len(g.names) > 0 && g.rand.Intn(4) == 0 {
		return plainly(g.pick(g.names...))
	}
	switch g.rand.Intn(8) {
	case 0:
		return plainly(g.thing() + ".open")
	case 1:
		return plainly(g.thing() + g.pick(".kind == 'outlet'", ".kind in ['inlet', 'relief']", ".tag == 'x'", ".season != 'summer'"))
	case 2:
		if g.asking {
			return plainly("known(" + g.thing() + g.pick(".flow", ".size.width", ".room.height") + ")")
		}
	case 3:
		return g.pair(g.pick("<", "<=", ">", ">=", "==", "!="), g.number(), g.number())
	}
	return g.pair(g.pick("<", "<=", ">", ">=", "==", "!="), g.length(2), g.length(2))
}

func (g *generator) thing() string {
	if g.loops > 0 && g.rand.Intn(2) == 0 {
		return "#"
	}
	return g.pick("inlet", "outlet", "vents[2]")
}

func (g *generator) number() writing {
	if g.loops > 1 { // keep the steps of an evaluation few
		return plainly(g.pick("1", "2", "home.bedrooms", "outlet.number"))
	}
	return plainly(g.pick("1", "3", "home.bedrooms", "outlet.number", "inlet.number", "len(vents)", "limit.local", "limit.people", "1 / (3 - outlet.number)",
		"count(vents, .flow > 0 cfm)", "count(vents, .x > 2 m)", "round(sum(vents, .x) / 1 m)", "len(filter(vents, .open))"))
}

func (g *generator) length(depth int) writing {
	if depth > 0 && g.rand.Intn(3) == 0 {
		a, b := g.length(depth-1), g.length(depth-1)
		if g.rand.Intn(2) == 0 {
			return g.pair("+", a, b)
		}
		name := g.pick("min", "max")
		return func(m bool) string {
			args := []string{a(m), b(m)}
			if m {
				slices.Reverse(args)
			}
			return name + "(" + strings.Join(args, ", ") + ")"
		}
	}
	if g.asking && g.rand.Intn(4) == 0 {
		return plainly("(" + g.thing() + ".height ?? 1 m)")
	}
	return plainly(g.pick(g.thing()+".x", g.thing()+".height", g.thing()+".room.height", "2 m", "-1 m", "limit.gap", "gap("+g.thing()+", inlet)",
		"drop("+g.thing()+", outlet)", "2 * "+g.thing()+".x", "table.reach("+g.thing()+".flow)", "inlet.size.width"))
}
