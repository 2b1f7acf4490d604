package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/reportfmt"
)

// drawFlags are the choices of the draw command.
type drawFlags struct {
	asked  reviewFlags // what the review behind the drawing is asked
	what   string
	wall   string
	output string
}

func drawCommand(m machine) *cobra.Command {
	var f drawFlags
	c := &cobra.Command{
		Use:   "draw DESIGN",
		Short: "draw the plan, an elevation, the ducts or the fans, as SVG",
		Long: `Reviews the design and draws its site plan, or one wall as seen from outside, to
scale, as SVG: openings, sources, ground, the distances asked around intakes, and
those found too short, under the numbers that a report gives them. Packs that no
flag names are those of ventlint.toml, as in a review.

Without a review, "ducts" draws the tree of ducts on each side of each ventilator with its flows and
losses, "fan" what each fan delivers: its curves against the loss of its ducts.`,
		Example: `  ventlint draw house.vent.toml --output plan.svg
  ventlint draw house.vent.toml --what elevation --wall north --output north.svg
  ventlint draw house.vent.toml --what fan --output fan.svg`,
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error { return draw(m, f, c.Flags().Changed, args[0]) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringVar(&f.what, "what", "plan", "`drawing` to make: plan, elevation, ducts or fan")
	flags.StringVar(&f.wall, "wall", "", "`id` of the wall of an elevation")
	flags.StringVar(&f.output, "output", "", "`file` to write; standard output when not given")
	flags.StringArrayVar(&f.asked.packs, "pack", nil, "rule `pack`, by id or file; may be repeated")
	f.asked.configuration.add(c)
	return c
}

func draw(m machine, f drawFlags, changed func(string) bool, path string) error {
	err := f.check(path)
	if err == nil {
		err = f.asked.settle(m, changed, []string{path})
	}
	if err != nil {
		return err
	}
	drawn := f.site
	if f.what == "ducts" || f.what == "fan" {
		drawn = f.airways
	}
	picture, err := drawn(m, path)
	if err != nil {
		return err
	}
	return f.write(m, picture)
}

func (f drawFlags) check(path string) error {
	switch {
	case !slices.Contains([]string{"plan", "elevation", "ducts", "fan"}, f.what):
		return fmt.Errorf("--what %q, expected plan, elevation, ducts or fan", f.what)
	case f.what != "elevation" && f.wall != "":
		return fmt.Errorf("--wall %q is of an elevation, expected --what elevation with it", f.wall)
	case f.output != "" && sameFile(f.output, path):
		return fmt.Errorf("--output %q is the design", f.output)
	}
	return nil
}

// site draws the plan or a wall of a design, with what a review found.
func (f drawFlags) site(m machine, path string) (string, error) {
	report, err := f.review(m, path)
	if err != nil {
		return "", err
	}
	wall, err := f.find(report.Design)
	if err != nil {
		return "", err
	}
	return drawn(path, reportfmt.Draw(report, wall), "expected walls, or things with a place")
}

// review reads one design and reviews it.
func (f drawFlags) review(m machine, path string) (*checker.Report, error) {
	in, err := oneInput(path)
	if err != nil {
		return nil, err
	}
	packs, err := loadPacks(f.asked.packs, f.asked.packProblem)
	if err != nil {
		return nil, err
	}
	f.asked.date = m.now().Format(time.DateOnly)
	o := reviewOne(m, in, packs, f.asked)
	if o.failure != nil {
		return nil, refused(m, *o.failure)
	}
	return o.report, nil
}

// airways draws the ducts or the fans of a design, which no rule bears on.
func (f drawFlags) airways(m machine, path string) (string, error) {
	_, d, err := oneDesign(m, path)
	if err != nil {
		return "", err
	}
	if f.what == "fan" {
		picture, why := reportfmt.DrawFans(d)
		return drawn(path, picture, append(why, "expected a fan curve of a ventilator with ducts")...)
	}
	picture, why := reportfmt.DrawDucts(d)
	return drawn(path, picture, append(why, "expected ducts of a ventilator")...)
}

// drawn is a picture; nothing to draw is an error.
func drawn(path, picture string, why ...string) (string, error) {
	if picture == "" {
		return "", fmt.Errorf("%s: nothing to draw, %s", path, strings.Join(why, "; "))
	}
	return picture, nil
}

// find gives the wall of --wall, or nil for what is no elevation.
func (f drawFlags) find(d *design.Design) (*design.Wall, error) {
	if f.what != "elevation" {
		return nil, nil
	}
	var ids []string
	for _, w := range d.Walls {
		if w.ID == f.wall {
			return w, nil
		}
		ids = append(ids, w.ID)
	}
	if len(ids) == 0 {
		return nil, fmt.Errorf("--what elevation: the design has no wall")
	}
	return nil, fmt.Errorf("--wall %q, expected one of %s", f.wall, strings.Join(ids, ", "))
}

func (f drawFlags) write(m machine, picture string) error {
	report := func(w writer) error { _, err := io.WriteString(w, picture); return err }
	if f.output == "" {
		return write(m, report)
	}
	return save(f.output, report)
}
