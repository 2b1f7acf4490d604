package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker/impact"
	"github.com/ventlint/ventlint/rules"
)

// impactFlags are the choices of one comparison.
type impactFlags struct {
	from, to string
	format   string
	margin   float64
	longest  int
	part     string
	merge    bool
}

func impactCommand(m machine) *cobra.Command {
	var f impactFlags
	c := &cobra.Command{
		Use:   "impact --from PACK --to PACK PATH...",
		Short: "tell what a change of rules does to many designs",
		Long: `Judges each design (*.vent.toml) of the paths under two packs, and reports which
designs and which rules come out otherwise, which designs pass narrowly, and which
rules never ask anything. A design counts by the heaviest level at which something
fails or lacks an input; a rule by its worst outcome over the design. Variances
count for nothing: the question is what the packs ask.

A pass is narrow when a quantity lies within --margin of what its rule requires.
Where either of two comparisons suffices, both are looked at.

The work can be spread: --part k/n judges every n-th design, in the order of their
names, and gives json; --merge puts the parts together, to the report that an
undivided run would have given. Every part must be given the same paths.

exit code  0  all designs were judged, whatever came of it
           2  bad usage, or a pack or design that cannot be read or is invalid`,
		Example: `  ventlint impact --from irc-2021 --to harbor-county.rules.toml designs/
  ventlint impact --from irc-2021 --to irc-2024 --part 1/2 designs/ > a.json
  ventlint impact --from irc-2021 --to irc-2024 --part 2/2 designs/ > b.json
  ventlint impact --merge a.json b.json`,
		RunE: func(_ *cobra.Command, paths []string) error { return runImpact(m, f, paths) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringVar(&f.from, "from", "", "`pack` to compare with, by id or file")
	flags.StringVar(&f.to, "to", "", "`pack` whose effect is asked, by id or file")
	flags.StringVar(&f.format, "format", "text", "`form` of the report: text, json or csv")
	flags.Float64Var(&f.margin, "margin", 5, "share of what is required within which a pass is narrow, in `percent`")
	flags.IntVar(&f.longest, "list", 20, "largest `number` of designs that a list names; all are counted")
	flags.StringVar(&f.part, "part", "", "judge every n-th design only, as `k/n` such as 1/4; gives json")
	flags.BoolVar(&f.merge, "merge", false, "merge the json of parts, which the paths name")
	return c
}

func runImpact(m machine, f impactFlags, paths []string) error {
	show, err := f.check(paths)
	if err != nil {
		return err
	}
	var document *impact.Document
	if f.merge {
		document, err = mergeParts(paths)
	} else {
		document, err = f.compare(m, paths)
	}
	if err != nil {
		return err
	}
	if err := write(m, func(w writer) error { return show(w, document) }); err != nil {
		return err
	}
	return impactVerdict(m, document)
}

// impactForms are the forms of the report.
var impactForms = map[string]func(writer, *impact.Document) error{
	"text": impactText,
	"json": func(w writer, d *impact.Document) error { return d.Write(w) },
	"csv":  impactCSV,
}

// check refuses flags that mean nothing, before any work is done.
func (f *impactFlags) check(paths []string) (show func(writer, *impact.Document) error, err error) {
	if f.part != "" && f.format == "text" {
		f.format = "json"
	}
	show = impactForms[f.format]
	switch {
	case show == nil:
		return nil, fmt.Errorf("--format %q, expected text, json or csv", f.format)
	case f.merge && (f.from != "" || f.to != "" || f.part != ""):
		return nil, fmt.Errorf("--merge takes the json of parts alone: what they compare stands in them")
	case f.merge && len(paths) == 0:
		return nil, fmt.Errorf("no part named, expected the files that --part gave")
	case f.merge:
		return show, nil
	case f.from == "" || f.to == "":
		return nil, fmt.Errorf("impact needs two packs, --from PACK and --to PACK")
	case len(paths) == 0:
		return nil, fmt.Errorf("no design named, expected files or folders")
	case f.part != "" && f.format != "json":
		return nil, fmt.Errorf("--part gives json, found --format %s", f.format)
	case !(f.margin >= 0 && f.margin <= 100):
		return nil, fmt.Errorf("--margin %v, expected a percentage from 0 to 100", f.margin)
	case f.longest < 0 || f.longest > 10_000:
		return nil, fmt.Errorf("--list %d, expected a number from 0 to 10000", f.longest)
	}
	return show, nil
}

// compare judges the designs of the paths.
func (f *impactFlags) compare(m machine, paths []string) (*impact.Document, error) {
	part, err := parsePart(f.part)
	if err != nil {
		return nil, err
	}
	inputs, err := findDesigns(paths)
	if err != nil {
		return nil, err
	}
	names := make([]string, len(inputs))
	for i, in := range inputs {
		names[i] = in.name
	}
	library := rules.NewReviewLibrary(readFile)
	from, err := loadPack(library, f.from)
	if err != nil {
		return nil, err
	}
	to, err := loadPack(library, f.to)
	if err != nil {
		return nil, err
	}
	comparison := impact.Compare(from, to, f.margin/100)
	tally := judgeAll(m, comparison, everyNth(inputs, part), f.longest)
	return comparison.Document(tally, impact.SetOf(names), part), nil
}

// parsePart reads "2/5"; nil for the whole.
func parsePart(text string) (*impact.Part, error) {
	if text == "" {
		return nil, nil
	}
	k, n, _ := strings.Cut(text, "/")
	number, wrong := strconv.Atoi(k)
	of, alsoWrong := strconv.Atoi(n)
	if wrong != nil || alsoWrong != nil || number < 1 || number > of {
		return nil, fmt.Errorf("--part %q, expected a part and their number such as 1/4", text)
	}
	return &impact.Part{Number: number, Of: of}, nil
}

// everyNth gives the designs of a part.
func everyNth(inputs []input, part *impact.Part) []input {
	if part == nil {
		return inputs
	}
	var list []input
	for i := part.Number - 1; i < len(inputs); i += part.Of {
		list = append(list, inputs[i])
	}
	return list
}

// impactVerdict ends with an error where designs were not judged: what is said of
// the others is not the whole.
func impactVerdict(m machine, d *impact.Document) error {
	if n := d.Failed.Count; n > 0 {
		fmt.Fprintf(m.stderr, "ventlint: %d of %d designs could not be judged\n", n, n+d.Judged)
		return errTold
	}
	if d.Part == nil && d.Decided() == 0 {
		return fmt.Errorf("no rule of either pack could be asked of these designs: nothing was compared")
	}
	return nil
}
