package reportfmt

import (
	"strings"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/rules"
)

// basisText says where a requirement comes from and, unless its writer read it
// there, how far that may be relied on.
func basisText(b rules.Basis) string {
	text := joined(", ", joined(" ", b.Document, b.Edition), b.Section)
	if p := provenance(b.Read); strings.HasPrefix(p, strings.ToLower(text)) {
		text = p
	} else if p != "" {
		text += " (" + p + ")"
	}
	return oneLine(joined("; ", text, b.Remark))
}

// provenance is empty for what was read in a public copy.
func provenance(r rules.Read) string {
	switch r {
	case "seen":
		return ""
	case "secondary":
		return "read in a secondary document"
	case "memory":
		return "from memory, check before relying on it"
	case "practice":
		return "common practice, no published source"
	case "derived":
		return "worked out from other figures"
	}
	return "source not stated, check before relying on it"
}

// basisTexts gives one text for each basis of a rule.
func basisTexts(bases []rules.Basis) []string {
	var all []string
	for _, b := range bases {
		all = append(all, basisText(b))
	}
	return all
}

// localLimits tells the limits that another pack than the rule's own has set,
// each with its basis: the rule's basis does not cover them.
func localLimits(r *checker.Result) []string {
	var all []string
	for _, l := range r.Limits {
		if l.Pack != r.Pack {
			all = append(all, oneLine(joined(", ", l.Value+" set by "+l.Pack, strings.Join(basisTexts(l.Basis), "; "))))
		}
	}
	return all
}

// joined joins the parts that are not empty.
func joined(separator string, parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, separator)
}
