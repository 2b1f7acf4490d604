package airflow

import "errors"

// side is the tree on one side of the fan. Its branches stand so that each comes
// after the one nearer the fan; roots are those at the fan. A branch is a run or an
// end, and every branch without children is an end.
type side struct {
	branches []branch
	roots    []int
}

type branch struct {
	id       string
	run      int // index in the system, or -1 for an end
	parent   int // nearer the fan, or -1
	children []int
	conduits []conduit
	stated   []StatedLoss
}

// drop is the loss at a flow of zero or more.
func (b *branch) drop(flow float64) float64 {
	var sum float64
	for i := range b.conduits {
		sum += b.conduits[i].drop(flow)
	}
	for _, s := range b.stated {
		sum += s.drop(flow)
	}
	return sum
}

// growth is a system while its trees are being built. Its runs form no loop.
type growth struct {
	*System
	at     map[string][]int // runs by node
	endAt  map[string]int
	placed []bool // runs in a tree, or told as faulty
	faults []error
}

// grow builds both sides outward from the fan, nearer branches first.
func (s *System) grow() error {
	if faults := loops(s.runs); faults != nil {
		return errors.Join(faults...)
	}
	g := growth{System: s, at: map[string][]int{}, endAt: map[string]int{}, placed: make([]bool, len(s.runs))}
	for i, r := range s.runs {
		g.at[r.From] = append(g.at[r.From], i)
		g.at[r.To] = append(g.at[r.To], i)
	}
	for i, e := range s.ends {
		g.endAt[e.ID] = i
	}
	g.side(&s.inlet, true)
	g.side(&s.outlet, false)
	g.unconnected()
	return errors.Join(g.faults...)
}

// outer is the node of a run away from the fan.
func (r Run) outer(inlet bool) string {
	if inlet {
		return r.From
	}
	return r.To
}

func (g *growth) side(t *side, inlet bool) {
	for _, i := range g.at[g.fan] {
		if g.runs[i].outer(!inlet) == g.fan {
			g.extend(t, i, -1)
		}
	}
	for b := 0; b < len(t.branches); b++ {
		if run := t.branches[b].run; run >= 0 {
			g.beyond(t, b, inlet)
		}
	}
}

func (g *growth) extend(t *side, run, parent int) {
	g.placed[run] = true
	r := g.runs[run]
	b := branch{id: r.ID, run: run, parent: parent, stated: r.Losses}
	for _, s := range r.Sections {
		b.conduits = append(b.conduits, s.conduit(g.air))
	}
	t.add(b)
}

func (t *side) add(b branch) {
	at := len(t.branches)
	t.branches = append(t.branches, b)
	if b.parent < 0 {
		t.roots = append(t.roots, at)
	} else {
		t.branches[b.parent].children = append(t.branches[b.parent].children, at)
	}
}

// beyond adds what begins where a run ends.
func (g *growth) beyond(t *side, parent int, inlet bool) {
	from := t.branches[parent]
	node := g.runs[from.run].outer(inlet)
	for _, i := range g.at[node] {
		switch {
		case g.placed[i]:
		case g.runs[i].outer(!inlet) == node:
			g.extend(t, i, parent)
		default:
			g.placed[i] = true
			g.fault(Against, g.runs[i].ID, from.id)
		}
	}
	if e, ok := g.endAt[node]; ok {
		delete(g.endAt, node)
		t.add(branch{id: g.ends[e].ID, run: -1, parent: parent, stated: g.ends[e].Losses})
	} else if len(g.at[node]) == 1 {
		g.fault(Dangling, from.id, node)
	}
}

// unconnected tells of runs and ends that no tree reached, unless that is because
// of a fault already told.
func (g *growth) unconnected() {
	if len(g.faults) > 0 {
		return
	}
	for i, r := range g.runs {
		if !g.placed[i] {
			g.fault(Unconnected, r.ID)
		}
	}
	for _, e := range g.ends {
		if _, left := g.endAt[e.ID]; left {
			g.fault(Unconnected, e.ID)
		}
	}
}

func (g *growth) fault(f Fault, ids ...string) {
	g.faults = append(g.faults, &LayoutError{f, ids})
}
