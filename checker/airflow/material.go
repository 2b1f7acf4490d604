package airflow

import (
	"fmt"
	"slices"

	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Provenance is how a figure is known.
type Provenance string

// The ways of knowing.
const (
	Seen     Provenance = "seen"     // read in the document named
	Memory   Provenance = "memory"   // of the document named, not looked up again
	Practice Provenance = "practice" // of the trade, no document
)

// Material is what a duct is made of, as friction sees it. MaterialNamed gives
// those of design files; any other needs a Roughness only.
type Material struct {
	Name         string
	Roughness    q.Length // absolute, 0 to 10 mm
	Least, Most  q.Length // range of the material; equal to zero when not published
	Compressible bool     // flexible duct with a known loss when not fully stretched
	Source       string
	Provenance   Provenance
	Remark       string
}

const (
	roughnessTable = "ASHRAE Fundamentals 2021, chapter 21, table 1"
	mm             = q.Length(0.001)
)

// materials holds the roughness for general use, which is that of the category a
// material belongs to; the range is the material's own.
var materials = []Material{
	{Name: "galvanized-steel", Roughness: 0.09 * mm, Least: 0.049 * mm, Most: 0.15 * mm, Source: roughnessTable, Provenance: Seen,
		Remark: "category average; longitudinal seam 0.049 to 0.098 mm, spiral 0.061 to 0.12 mm, rectangular 0.082 to 0.15 mm"},
	{Name: "stainless-steel", Roughness: 0.09 * mm, Provenance: Practice, Remark: "taken as galvanized sheet, since joints and seams are alike"},
	{Name: "copper", Roughness: 0.09 * mm, Provenance: Practice, Remark: "taken as galvanized sheet, since joints and seams are alike; drawn tubing has 0.00046 mm"},
	{Name: "aluminium", Roughness: 0.046 * mm, Least: 0.037 * mm, Most: 0.061 * mm, Source: roughnessTable, Provenance: Seen, Remark: "category medium smooth; round"},
	{Name: "pvc", Roughness: 0.046 * mm, Least: 0.009 * mm, Most: 0.046 * mm, Source: roughnessTable, Provenance: Seen, Remark: "category medium smooth"},
	{Name: "hdpe", Roughness: 0.046 * mm, Provenance: Practice, Remark: "taken as PVC, for duct that is smooth inside"},
	{Name: "flexible", Roughness: 0.9 * mm, Least: 0.09 * mm, Most: 0.9 * mm, Compressible: true, Source: roughnessTable, Provenance: Seen,
		Remark: "category medium rough; non-metallic with wire, fully stretched"},
	{Name: "flexible-metal", Roughness: 3.0 * mm, Least: 1.2 * mm, Most: 2.1 * mm, Source: roughnessTable, Provenance: Seen,
		Remark: "category rough; corrugated, fully stretched; the category is rougher than the material's range"},
	{Name: "lined", Roughness: 3.0 * mm, Least: 1.52 * mm, Most: 4.57 * mm, Source: roughnessTable, Provenance: Seen,
		Remark: "category rough; faced liner 1.52 mm, spray coated 4.57 mm"},
	{Name: "duct-board", Roughness: 0.9 * mm, Least: 0.075 * mm, Most: 0.391 * mm, Source: roughnessTable, Provenance: Seen,
		Remark: "category medium rough; the range is that of foil-faced phenolic board; fibrous glass board has 0.9 mm, from memory"},
}

// Materials lists the materials of design files.
func Materials() []Material { return slices.Clone(materials) }

// MaterialNamed gives a material by the word that design files use for it. Any
// other word is an error that names the nearest.
func MaterialNamed(name string) (Material, error) {
	var known []string
	for _, m := range materials {
		if m.Name == name {
			return m, nil
		}
		known = append(known, m.Name)
	}
	if near := document.Near(name, known); near != "" {
		return Material{}, fmt.Errorf("material %q has no known roughness, expected one such as %q", name, near)
	}
	return Material{}, fmt.Errorf("material %q has no known roughness, expected one of %s", name, quoted(known))
}
