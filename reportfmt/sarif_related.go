package reportfmt

import (
	"fmt"
	"strings"

	"github.com/ventlint/ventlint/checker/document"
	"github.com/ventlint/ventlint/rules"
)

// mostRelated bounds the places that a result links to; hosts keep a hundred,
// readers fewer.
const mostRelated = 20

// relatedPlaces are what a result links to, numbered from 1: its other subjects,
// then the keys that are missing or that decided.
type relatedPlaces struct {
	file           string
	subjects, keys []sarifLocation
}

func relatedTo(p placed) relatedPlaces {
	all := relatedPlaces{file: p.File}
	for i, s := range p.Result.Subjects {
		if i > 0 && s.Position.Line > 0 {
			all.subjects = all.with(all.subjects, s.Label, s.Position, s.Pointer)
		}
	}
	if p.Result.Outcome == rules.Open {
		for _, m := range p.Result.Missing {
			all.keys = all.with(all.keys, m.Key, m.Position, "")
		}
		return all
	}
	for _, i := range p.Result.Inputs {
		all.keys = all.with(all.keys, i.Key, i.Position, "")
	}
	return all
}

func (r relatedPlaces) with(list []sarifLocation, text string, at document.Position, pointer string) []sarifLocation {
	count := len(r.subjects) + len(r.keys)
	if count == mostRelated {
		return list
	}
	return append(list, sarifLocation{
		ID:       count + 1,
		Physical: sarifPhysical{Artifact: sarifArtifactOf(r.file), Region: sarifRegionOf(at)},
		Logical:  sarifLogicalOf(pointer),
		Message:  &sarifText{Text: sarifPlain(oneLine(text))},
	})
}

func (r relatedPlaces) locations() []sarifLocation { return append(r.subjects, r.keys...) }

// text links to every related place: hosts show no other.
func (r relatedPlaces) text() string {
	return sentences([]string{
		labelled("Also concerned: ", sarifLinks(r.subjects)),
		labelled("Keys: ", sarifLinks(r.keys)),
	})
}

var ofLink = strings.NewReplacer(`\`, `\\`, "[", `\[`, "]", `\]`)

func sarifLinks(locations []sarifLocation) string {
	var links []string
	for _, l := range locations {
		text := ofLink.Replace(l.Message.Text)
		links = append(links, fmt.Sprintf("[%s](%d)", text, l.ID))
	}
	return strings.Join(links, ", ")
}
