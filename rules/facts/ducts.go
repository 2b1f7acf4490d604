package facts

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// layout turns the ducts of two airstreams into the runs of a system around a
// unit. What the design leaves out is gathered, so that all of it is named.
type layout struct {
	facts   *Facts
	runs    []airflow.Run
	ends    []airflow.End
	flows   airflow.Flows // of the terminals, and of the opening: all that the unit moves
	missing document.MissingAll
	trouble error
}

// add takes the ducts of an airstream. moved is what passes an outdoor opening.
func (l *layout) add(stream design.Airstream, moved q.Flow) (found bool) {
	ended := map[string]bool{}
	for _, d := range l.facts.Design.Ducts {
		if d.Airstream != stream {
			continue
		}
		found = true
		from, to := l.nodes(d)
		l.runs = append(l.runs, airflow.Run{ID: d.ID, From: from, To: to, Sections: []airflow.Section{l.section(d)}, Losses: l.extra(d)})
		for _, node := range []string{from, to} {
			if !ended[node] {
				ended[node] = true
				l.end(node, moved)
			}
		}
	}
	return found
}

// nodes are where a duct begins and ends. Ducts that name each other meet at the
// end of the one nearer the unit.
func (l *layout) nodes(d *design.Duct) (from, to string) {
	inward := d.Airstream == "outdoor-air" || d.Airstream == "extract-air"
	near, nearKey, far, farKey := d.From, "from", d.To, "to"
	if inward {
		near, nearKey, far, farKey = d.To, "to", d.From, "from"
	}
	begin := l.node(d, near, nearKey)
	beyond := "end of " + d.ID
	if far != nil {
		if _, isDuct := l.facts.Design.Find(*far).(*design.Duct); !isDuct {
			beyond = *far
		}
	} else if !l.continued(d.ID) {
		l.lack(d.Ref, farKey)
	}
	if inward {
		return beyond, begin
	}
	return begin, beyond
}

// node is where a duct meets what is nearer the unit. A duct that names nothing
// there may be named by the one before it.
func (l *layout) node(d *design.Duct, near *string, key string) string {
	if near == nil {
		for _, other := range l.facts.Design.Ducts {
			if other.Airstream == d.Airstream && (is(other.From, d.ID) || is(other.To, d.ID)) {
				return "end of " + other.ID
			}
		}
		l.lack(d.Ref, key)
		return ""
	}
	if _, isDuct := l.facts.Design.Find(*near).(*design.Duct); isDuct {
		return "end of " + *near
	}
	return *near
}

func is(id *string, what string) bool { return id != nil && *id == what }

// continued tells whether another duct begins at the end of one.
func (l *layout) continued(id string) bool {
	for _, d := range l.facts.Design.Ducts {
		if is(d.From, id) || is(d.To, id) {
			return true
		}
	}
	return false
}

// end makes a node an end of the system where a terminal or an opening stands.
func (l *layout) end(node string, moved q.Flow) {
	switch thing := l.facts.Design.Find(node).(type) {
	case *design.Terminal:
		l.flows[node] = need(l, thing.Flow, thing.Ref, "flow")
		l.ends = append(l.ends, airflow.End{ID: node, Losses: l.stated(node, thing.Ref, thing.Loss, "loss", thing.LossFlow, "loss_at")})
	case *design.Opening:
		l.flows[node] = moved
		l.ends = append(l.ends, airflow.End{ID: node, Losses: l.stated(node, thing.Ref, thing.Loss, "loss", thing.LossFlow, "loss_at")})
	}
}

func (l *layout) lack(ref document.Ref, key string) {
	l.missing = append(l.missing, document.Missing{Ref: ref, Key: key})
}

func need[T any](l *layout, v *T, ref document.Ref, key string) T {
	if v == nil {
		l.lack(ref, key)
		var none T
		return none
	}
	return *v
}

// stated is a maker's loss at a flow; both are needed.
func (l *layout) stated(name string, ref document.Ref, loss *q.Pressure, key string, at *q.Flow, atKey string) []airflow.StatedLoss {
	return []airflow.StatedLoss{{Name: name, Loss: need(l, loss, ref, key), Flow: need(l, at, ref, atKey)}}
}

func (l *layout) extra(d *design.Duct) []airflow.StatedLoss {
	if d.ExtraLoss == nil && d.ExtraLossFlow == nil {
		return nil
	}
	return l.stated("extra loss", d.Ref, d.ExtraLoss, "extra_loss", d.ExtraLossFlow, "extra_loss_at")
}

// section is what one duct costs.
func (l *layout) section(d *design.Duct) airflow.Section {
	s := airflow.Section{Shape: l.shape(d), Length: need(l, d.Length, d.Ref, "length")}
	if material := need(l, d.Material, d.Ref, "material"); material != "" {
		var err error
		s.Material, err = airflow.MaterialNamed(string(material))
		l.fail(d, err)
	}
	if s.Material.Compressible {
		s.Compression = need(l, d.Compression, d.Ref, "compression")
	}
	if d.Fittings == nil && (d.Elbows == nil || *d.Elbows > 0) {
		l.lack(d.Ref, "fitting")
	}
	for _, f := range d.Fittings {
		fitting, err := fittingOf(f)
		l.fail(d, err)
		s.Fittings = append(s.Fittings, fitting)
	}
	return s
}

// fittingOf takes what the design states of a fitting, else the table's
// coefficient; a fitting that the table lacks is asked for.
func fittingOf(f *design.Fitting) (airflow.Fitting, error) {
	fitting := airflow.Fitting{Name: f.Kind, Count: 1}
	if f.Count != nil {
		fitting.Count = *f.Count
	}
	switch {
	case f.LossCoefficient != nil:
		fitting.Coefficient = *f.LossCoefficient
	case f.EquivalentLength != nil:
		fitting.EquivalentLength = *f.EquivalentLength
	default:
		known, err := airflow.FittingNamed(f.Kind)
		return known.Times(fitting.Count), err
	}
	return fitting, nil
}

func (l *layout) shape(d *design.Duct) airflow.Shape {
	var s airflow.Shape
	var err error
	switch {
	case d.Diameter != nil:
		s, err = airflow.Round(*d.Diameter)
	case d.Width == nil && d.Height == nil:
		l.lack(d.Ref, "diameter")
		return s
	default:
		w, h := need(l, d.Width, d.Ref, "width"), need(l, d.Height, d.Ref, "height")
		switch {
		case w == 0 || h == 0:
			return s
		case d.FlatOval != nil && *d.FlatOval:
			s, err = airflow.FlatOval(w, h)
		default:
			s, err = airflow.Rectangular(w, h)
		}
	}
	l.fail(d, err)
	return s
}

func (l *layout) fail(d *design.Duct, err error) {
	if err != nil && l.trouble == nil {
		l.trouble = fmt.Errorf("%s: %w", design.Label(d), err)
	}
}
