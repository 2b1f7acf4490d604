package airflow

import (
	"fmt"
	"sort"
	"strings"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Material is what a duct is made of, as far as friction goes.
type Material struct {
	Roughness q.Length
	Flexible  bool // compression adds to its friction
	Source    string
}

const handbook = "ASHRAE Fundamentals 2021 chapter 21 table 1"

// materials holds the roughness of each; where the table gives a range, the
// category value for general use or the rougher end.
var materials = map[string]Material{
	"galvanized-steel": {0.09e-3, false, handbook},
	"stainless-steel":  {0.09e-3, false, handbook + ", as galvanized"},
	"copper":           {0.046e-3, false, handbook + ", medium smooth; drawn tubing is smoother"},
	"aluminium":        {0.061e-3, false, handbook},
	"pvc":              {0.046e-3, false, handbook},
	"hdpe":             {0.046e-3, false, handbook + ", as PVC"},
	"flexible":         {0.9e-3, true, handbook + ", fully extended"},
	"flexible-metal":   {2.1e-3, true, handbook + ", fully extended"},
	"lined":            {1.52e-3, false, handbook + ", faced liner"},
	"duct-board":       {0.9e-3, false, "medium rough, from memory"},
}

// MaterialNamed gives the roughness of a material; an unknown one is an error
// that lists those known.
func MaterialNamed(name string) (Material, error) {
	if m, ok := materials[name]; ok {
		return m, nil
	}
	var names []string
	for n := range materials {
		names = append(names, n)
	}
	sort.Strings(names)
	return Material{}, fmt.Errorf("no roughness for %q, expected one of %s", name, strings.Join(names, ", "))
}
