package airflow

import (
	"fmt"
	"sort"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
)

// Coefficient is the loss coefficient of a fitting, on the velocity pressure of
// the section that it belongs to.
type Coefficient struct {
	Value  float64
	Source string
}

const (
	smacna = "SMACNA HVAC duct systems design, table A-7"
	branch = "ASHRAE Fundamentals 2021 chapter 21, tables 10 and 11"
)

var coefficients = map[string]Coefficient{
	"elbow-90-smooth":    {0.22, smacna + " A, r/D 1.0"},
	"elbow-45-smooth":    {0.13, smacna + " A, r/D 1.0 times 0.60"},
	"elbow-90-gored":     {0.37, smacna + " B, four pieces, r/D 1.0"},
	"elbow-90-mitered":   {1.2, smacna + " C; up to 1.4 times more at low flow"},
	"elbow-45-mitered":   {0.34, smacna + " C; up to 1.4 times more at low flow"},
	"tee-branch":         {1.80, branch + ", plain tee"},
	"conical-tee-branch": {0.87, branch},
	"wye-branch":         {0.70, branch + ", plain 45 degree wye"},
	"conical-wye-branch": {0.45, branch},
	"straight-through":   {0.15, branch},
	"entry":              {0.5, "flush entry, from memory"},
	"bellmouth-entry":    {0.03, "ASHRAE Fundamentals 2021 chapter 21, table 20"},
	"exit":               {1.0, "ASHRAE Fundamentals 2021 chapter 21, table 20"},
	"reducer":            {0.06, "ASHRAE Fundamentals 2021 chapter 21, table 14"},
	"damper-open":        {0.2, "butterfly damper wide open, from memory"},
}

// CoefficientOf gives the coefficient of a fitting by its word. A fitting that
// the table lacks is asked for, never guessed: the error names the nearest words.
func CoefficientOf(kind string) (Coefficient, error) {
	if c, ok := coefficients[kind]; ok {
		return c, nil
	}
	var words []string
	for w := range coefficients {
		words = append(words, w)
	}
	sort.Strings(words)
	if near := document.Near(kind, words); near != "" {
		return Coefficient{}, fmt.Errorf("no loss coefficient for fitting %q: give loss_coefficient, or did you mean %q?", kind, near)
	}
	return Coefficient{}, fmt.Errorf("no loss coefficient for fitting %q: give loss_coefficient, or use one of %s", kind, strings.Join(words, ", "))
}
