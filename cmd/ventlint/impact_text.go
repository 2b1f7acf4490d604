package main

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/impact"
	"github.com/ventlint/ventlint/reportfmt"
)

// impactText writes the report for people.
func impactText(w writer, d *impact.Document) error {
	for _, side := range []struct {
		word string
		pack impact.PackUsed
	}{{"from", d.From}, {"to", d.To}} {
		edition := ""
		if side.pack.Edition != "" {
			edition = ", edition " + side.pack.Edition
		}
		fmt.Fprintf(w, "%-5s %s: %s%s\n      sha256:%s\n", side.word, side.pack.ID, side.pack.Title, edition, side.pack.Digest)
	}
	fmt.Fprintf(w, "\n%d of %d designs judged under both\n", d.Judged, d.Set.Designs)
	printFailed(w, d.Failed)
	printDesigns(w, d)
	printChangedRules(w, d)
	printNear(w, d)
	printSilent(w, d)
	return nil
}

func printFailed(w writer, failed impact.List[impact.FailedDesign]) {
	if failed.Count == 0 {
		return
	}
	fmt.Fprintf(w, "\nNOT JUDGED\n")
	for _, f := range failed.Listed {
		fmt.Fprintf(w, "  %s: %s\n", reportfmt.Visible(f.Design), reportfmt.Visible(f.Problem))
	}
	andMore(w, failed.Count-len(failed.Listed))
}

func andMore(w writer, n int) {
	if n > 0 {
		fmt.Fprintf(w, "  and %d more\n", n)
	}
}

func printDesigns(w writer, d *impact.Document) {
	fmt.Fprintf(w, "\nDESIGNS, by what weighs most in them\n")
	turnedAll := 0
	for _, c := range d.Designs {
		fmt.Fprintf(w, "  %7d  %s\n", c.Designs, turned(c.From, c.To))
		if c.From != c.To {
			turnedAll += c.Designs
		}
	}
	fmt.Fprintf(w, "\nDESIGNS THAT CHANGE: %d\n", d.Changed.Count)
	if d.Changed.Count > 0 {
		fmt.Fprintf(w, "  %d of them in what weighs most, the others in single rules alone\n", turnedAll)
	}
	for _, c := range d.Changed.Listed {
		fmt.Fprintf(w, "  %s: %s\n", reportfmt.Visible(c.Design), turned(c.From, c.To))
		for _, r := range c.Rules {
			fmt.Fprintf(w, "      %s: %s\n", r.Rule, turned(r.From, r.To))
		}
		if c.More > 0 {
			fmt.Fprintf(w, "      and %d more rules\n", c.More)
		}
	}
	andMore(w, d.Changed.Count-len(d.Changed.Listed))
}

func turned(from, to impact.State) string {
	if from == to {
		return string(from) + ", as before"
	}
	return fmt.Sprintf("%s -> %s", from, to)
}

func printChangedRules(w writer, d *impact.Document) {
	fmt.Fprintf(w, "\nRULES THAT CHANGE\n")
	none := true
	for _, r := range d.Rules {
		changes := impact.Changes(r.Cases)
		if len(changes) == 0 {
			continue
		}
		none = false
		fmt.Fprintf(w, "  %s\n%s\n", r.Rule, wrap(r.Title, 6))
		for _, c := range changes {
			fmt.Fprintf(w, "  %7d  %s\n", c.Designs, turned(c.From, c.To))
		}
	}
	if none {
		fmt.Fprintf(w, "  none\n")
	}
}

func printNear(w writer, d *impact.Document) {
	fmt.Fprintf(w, "\nNARROW PASSES under %s, within %g %% of what is required\n", d.To.ID, d.Margin)
	none := true
	for _, r := range d.Rules {
		if r.Nearest == nil {
			continue
		}
		none = false
		n := r.Nearest
		fmt.Fprintf(w, "  %7d  %s\n", r.Near, r.Rule)
		fmt.Fprintf(w, "           nearest: %s, %s: %s %s %s (%.2f %%)\n", reportfmt.Visible(n.Design), n.Subjects, n.Found, n.Operator, n.Required, 100*n.Share)
	}
	if none {
		fmt.Fprintf(w, "  none\n")
	}
}

// printSilent tells the rules that never asked anything: some found all good,
// some had nothing to say.
func printSilent(w writer, d *impact.Document) {
	var good, silent []string
	for _, r := range d.Rules {
		switch {
		case r.Fires():
		case r.Passes():
			good = append(good, r.Rule)
		default:
			silent = append(silent, r.Rule)
		}
	}
	for _, group := range []struct {
		title string
		rules []string
	}{{"RULES THAT ONLY PASS", good}, {"RULES THAT NEVER APPLY", silent}} {
		list := strings.Join(group.rules, ", ")
		if list == "" {
			list = "none"
		}
		fmt.Fprintf(w, "\n%s under either pack: %d\n%s\n", group.title, len(group.rules), wrap(list, 2))
	}
}
