package airflow

import (
	"cmp"
	"fmt"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Section is a length of duct of one shape and material with the fittings in it.
type Section struct {
	Shape       Shape
	Material    Material
	Length      q.Length // installed, 0 to 10 km
	Compression q.Ratio  // of flexible duct, 0 to 45 %; see CompressionFactor
	Fittings    []Fitting
}

const mostLength q.Length = 10_000

func (s Section) check() error {
	if err := s.Shape.given(); err != nil {
		return err
	}
	relative := float64(s.Material.Roughness / s.Shape.HydraulicDiameter())
	err := cmp.Or(
		bounds.Check("roughness", s.Material.Roughness, 0, 10*mm),
		bounds.Check("roughness by hydraulic diameter", relative, 0, mostRoughness),
		bounds.Check("length", s.Length, 0, mostLength),
		bounds.Check("compression", s.Compression, 0, mostCompression),
		s.checkCompression())
	if err != nil {
		return err
	}
	return s.checkFittings()
}

func (s Section) checkCompression() error {
	switch {
	case s.Compression <= 0:
		return nil
	case !s.Material.Compressible:
		return fmt.Errorf("compression %q is of material %q, expected flexible duct, the only one whose loss when compressed is known", s.Compression, s.Material.Name)
	case !s.Shape.round():
		return fmt.Errorf("compression %q is of a %s duct, expected a round one", s.Compression, s.Shape.name)
	}
	return nil
}

func (s Section) checkFittings() error {
	var sum float64
	for _, f := range s.Fittings {
		if err := f.check(); err != nil {
			return err
		}
		if !f.Miter {
			sum += float64(f.Count) * f.Coefficient
		}
	}
	if q.Compare(sum, 0) < 0 {
		return fmt.Errorf("loss coefficients of fittings add up to %q, expected 0 or more in a section", q.Format(sum, q.SI))
	}
	return nil
}
