package drawing

import (
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	q "github.com/ventlint/ventlint/checker/quantity"
	"github.com/ventlint/ventlint/checker/site"
	"github.com/ventlint/ventlint/rules"
)

const faulty = "faults/alder-court-faults.vent.toml"

func load(t *testing.T, source string) *design.Design {
	t.Helper()
	d, problems := design.Load("house.vent.toml", []byte(source))
	require.Empty(t, problems)
	return d
}

func shipped(t *testing.T, name string) *design.Design {
	t.Helper()
	source, err := os.ReadFile(filepath.Join("../../testdata/designs", name))
	require.NoError(t, err)
	return load(t, string(source))
}

// packs are loaded once for all tests.
var packs = sync.OnceValue(func() []*rules.Effective {
	library := rules.NewLibrary(os.ReadFile)
	var all []*rules.Effective
	for _, name := range []string{"irc-2021", "practice"} {
		pack, err := library.Pack(name)
		if err != nil {
			panic(err)
		}
		all = append(all, pack)
	}
	return all
})

// reviewed reviews a design by the shipped packs and numbers its problems.
func reviewed(t *testing.T, d *design.Design) (*checker.Report, []Finding) {
	t.Helper()
	r := checker.Review(d, checker.Request{File: "house.vent.toml", Packs: packs(), Date: "2026-03-14"})
	var findings []Finding
	for i := range r.Results {
		if r.Results[i].Problem() {
			findings = append(findings, Finding{len(findings) + 1, &r.Results[i]})
		}
	}
	return r, findings
}

func wall(t *testing.T, d *design.Design, id string) *design.Wall {
	t.Helper()
	w, ok := d.Find(id).(*design.Wall)
	require.True(t, ok)
	return w
}

// element is one element of an SVG, read by a reader of XML that knows nothing of
// how it was written.
type element struct {
	XMLName  xml.Name
	Attr     []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func parse(t *testing.T, svg string) element {
	t.Helper()
	var root element
	d := xml.NewDecoder(strings.NewReader(svg))
	require.NoError(t, d.Decode(&root))
	_, err := d.Token()
	if err == nil {
		_, err = d.Token() // the line end after the element
	}
	require.ErrorIs(t, err, io.EOF)
	return root
}

func (e element) get(name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func (e element) number(t *testing.T, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.get(name), 64)
	require.NoError(t, err, "%s of %s", name, e.XMLName.Local)
	return v
}

// all lists the elements that a test holds for, in document order.
func (e element) all(holds func(element) bool) []element {
	var found []element
	if holds(e) {
		found = append(found, e)
	}
	for _, c := range e.Children {
		found = append(found, c.all(holds)...)
	}
	return found
}

func (e element) group(t *testing.T, attribute, value string) element {
	t.Helper()
	found := e.all(func(x element) bool { return x.get(attribute) == value })
	require.NotEmpty(t, found, "%s=%q", attribute, value)
	return found[0]
}

func (e element) child(t *testing.T, name string) element {
	t.Helper()
	for _, c := range e.Children {
		if c.XMLName.Local == name {
			return c
		}
	}
	require.Fail(t, "no "+name)
	return element{}
}

// points reads the corners of a path of straight lines.
func points(t *testing.T, path string) []spot {
	t.Helper()
	var all []spot
	for _, word := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		x, y, ok := strings.Cut(strings.TrimSpace(word), " ")
		require.True(t, ok, path)
		a, err := strconv.ParseFloat(x, 64)
		require.NoError(t, err)
		b, err := strconv.ParseFloat(y, 64)
		require.NoError(t, err)
		all = append(all, spot{a, b})
	}
	return all
}

// ruler reads pixels for a metre off the scale bar, as a reader would.
func ruler(t *testing.T, root element) float64 {
	t.Helper()
	bar := root.group(t, "class", "scale")
	return bar.child(t, "rect").number(t, "width") / (bar.number(t, "data-length") / 1000)
}

func drawn(t *testing.T, name, id string) (*design.Design, *site.Site, element) {
	t.Helper()
	d := shipped(t, name)
	r, findings := reviewed(t, d)
	s := site.New(d)
	if id == "" {
		return d, s, parse(t, Plan(d, s, Mark(r, findings), "p").SVG)
	}
	return d, s, parse(t, Elevation(d, s, wall(t, d, id), Mark(r, findings), "e").SVG)
}

func length(m float64) *q.Length { l := q.Length(m); return &l }
