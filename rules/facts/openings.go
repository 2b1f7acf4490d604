package facts

import (
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func (f *Facts) distance(a, b design.Placed) (q.Length, error)   { return f.Site.Distance(a, b) }
func (f *Facts) horizontal(a, b design.Placed) (q.Length, error) { return f.Site.Horizontal(a, b) }
func (f *Facts) rise(lower, upper design.Placed) (q.Length, error) {
	return f.Site.Rise(lower, upper)
}

func (f *Facts) clearHeight(o *design.Opening) (q.Length, error) {
	height, err := f.Site.Height(o)
	if err != nil || o.SurfaceBelow == nil {
		return height, err
	}
	return min(height, height-*o.SurfaceBelow), nil
}

func (f *Facts) sameFitting(a, b *design.Opening) (bool, error) {
	return a.Fitting != nil && b.Fitting != nil && *a.Fitting == *b.Fitting, nil
}

func (f *Facts) sameWall(a, b *design.Opening) (bool, error) {
	if a.Wall == nil || b.Wall == nil {
		return false, nil
	}
	return a.Wall.ID == b.Wall.ID, nil
}

func (f *Facts) served(o *design.Opening) (any, error) {
	if o.Serves == nil {
		return nil, &document.Missing{Ref: o.Ref, Key: "serves"}
	}
	return f.Design.Find(*o.Serves), nil
}

func (f *Facts) serves(o *design.Opening) (string, error) {
	thing, err := f.served(o)
	if err != nil {
		return "", err
	}
	return design.Label(thing), nil
}

// servedKind is the kind of what an opening serves.
type servedKind string

// Values lists the kinds of ventilators and of appliances.
func (servedKind) Values() []string {
	return append(design.VentilatorKind("").Values(), design.ApplianceKind("").Values()...)
}

func (f *Facts) servesKind(o *design.Opening) (servedKind, error) {
	thing, err := f.served(o)
	if err != nil {
		return "", err
	}
	if unit, is := thing.(*design.Ventilator); is {
		return servedKind(unit.Kind), nil
	}
	return servedKind(thing.(*design.Appliance).Kind), nil // the loader lets nothing else be served
}

func (f *Facts) named(thing any) (string, error) { return design.Label(thing), nil }
