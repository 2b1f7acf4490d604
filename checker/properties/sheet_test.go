package properties

import (
	"regexp"
	"strings"
)

// sheet is the text of a design, taken apart into tables so that it can be
// written anew: in another order, with keys left out, with other values.
type sheet struct {
	head   []entry // before the first table
	blocks []*block
}

// block is a table of the top level and those that belong to it.
type block struct{ parts []*part }

type part struct {
	header  string
	entries []entry
}

type entry struct{ key, value string }

var keyed = regexp.MustCompile(`^([a-z0-9_]+)\s*=\s*(.*)$`)

// sheetOf takes a design apart. It knows what designs are written with: no texts of
// several lines, no dotted keys.
func sheetOf(text string) *sheet {
	s := &sheet{}
	var open *entry // a list of several lines
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(uncommented(line))
		switch m := keyed.FindStringSubmatch(line); {
		case line == "":
		case open != nil:
			open.value += " " + line
		case m != nil:
			open = s.add(entry{m[1], m[2]})
		default:
			s.begin(line)
		}
		if open != nil && balanced(open.value) {
			open = nil
		}
	}
	return s
}

func (s *sheet) add(e entry) *entry {
	list := &s.head
	if n := len(s.blocks); n > 0 {
		parts := s.blocks[n-1].parts
		list = &parts[len(parts)-1].entries
	}
	*list = append(*list, e)
	return &(*list)[len(*list)-1]
}

// begin starts a table: one with a dotted header belongs to the one before it.
func (s *sheet) begin(header string) {
	p := &part{header: header}
	if n := len(s.blocks); n > 0 && strings.Contains(header, ".") {
		s.blocks[n-1].parts = append(s.blocks[n-1].parts, p)
		return
	}
	s.blocks = append(s.blocks, &block{[]*part{p}})
}

func (s *sheet) text() string {
	var b strings.Builder
	write := func(list []entry) {
		for _, e := range list {
			b.WriteString(e.key + " = " + e.value + "\n")
		}
	}
	write(s.head)
	for _, block := range s.blocks {
		for _, p := range block.parts {
			b.WriteString("\n" + p.header + "\n")
			write(p.entries)
		}
	}
	return b.String()
}

// parts lists all tables, in the order of the file.
func (s *sheet) parts() []*part {
	var list []*part
	for _, b := range s.blocks {
		list = append(list, b.parts...)
	}
	return list
}

// noun is the header of a table without its brackets.
func (p *part) noun() string { return strings.Trim(p.header, "[]") }

// uncommented is a line without its comment.
func uncommented(line string) string {
	for i, inside := 0, false; i < len(line); i++ {
		switch c := line[i]; {
		case c == '\\' && inside:
			i++
		case c == '"':
			inside = !inside
		case c == '#' && !inside:
			return line[:i]
		}
	}
	return line
}

var quotedText = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)

func balanced(value string) bool {
	bare := quotedText.ReplaceAllString(value, "")
	return strings.Count(bare, "[") == strings.Count(bare, "]") && strings.Count(bare, "{") == strings.Count(bare, "}")
}
