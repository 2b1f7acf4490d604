package reportfmt

import (
	"fmt"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// reportAnchor begins the anchors of the report at a place in a batch.
func reportAnchor(at int) string { return fmt.Sprintf("r%d-", at+1) }

func htmlHead(r *checker.Report, t Tool) []htmlPair {
	project := projectOf(r)
	head := []htmlPair{
		{"Site", textOr(project.Site, "not stated")},
		{"Jurisdiction", textOr(project.Jurisdiction, "not stated")},
		{"Designed by", textOr(project.Designer, "not stated")},
		{"Stage", string(project.Stage)},
		{"Design file", r.File},
		{"Reviewed on", r.Date},
		{"Made with", joined(" ", t.Name, t.Version)},
	}
	for _, pack := range r.Packs {
		head = append(head, htmlPair{"Rule pack", packText(pack)})
	}
	return head
}

// htmlCounts tells how many checks had each outcome.
func htmlCounts(r *checker.Report) []htmlPair {
	c := r.Count()
	var all []htmlPair
	for _, o := range []rules.Outcome{rules.Fail, rules.Open, rules.Review, rules.Pass, rules.NotDue, rules.NotApplicable, rules.Informational} {
		if n := c.Of[o]; n > 0 || o != rules.Informational {
			all = append(all, htmlPair{outcomeWords[o], fmt.Sprint(n)})
		}
		if o == rules.Review {
			all = append(all, htmlPair{"accepted", fmt.Sprint(c.Accepted)})
		}
	}
	return all
}
