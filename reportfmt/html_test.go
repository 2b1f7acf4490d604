package reportfmt

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker"
	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/rules"
)

// markup is what a reader of XML sees of a page.
type markup struct {
	names    []string // of elements, in document order
	parents  []string // of each
	ids      map[string]int
	links    []string
	fetched  []string // addresses that a browser would load
	headings []int
	text     string
}

func readMarkup(t *testing.T, page string) markup {
	t.Helper()
	m := markup{ids: map[string]int{}}
	d := xml.NewDecoder(strings.NewReader(page))
	var open []string
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			require.Empty(t, open)
			return m
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			m.start(x, append([]string{""}, open...)[len(open)])
			open = append(open, x.Name.Local)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			m.text += string(x)
		}
	}
}

func (m *markup) start(x xml.StartElement, parent string) {
	name := x.Name.Local
	m.names, m.parents = append(m.names, name), append(m.parents, parent)
	if level, ok := strings.CutPrefix(name, "h"); ok && len(level) == 1 && level >= "1" && level <= "6" {
		m.headings = append(m.headings, int(level[0]-'0'))
	}
	for _, a := range x.Attr {
		switch a.Name.Local {
		case "id":
			m.ids[a.Value]++
		case "href":
			m.links = append(m.links, a.Value)
		case "src", "srcset", "action", "poster", "data":
			m.fetched = append(m.fetched, a.Value)
		}
	}
}

func (m markup) count(name string) int {
	n := 0
	for _, x := range m.names {
		if x == name {
			n++
		}
	}
	return n
}

// faultyHouse is a real review, with drawings and a worksheet, made once for all
// tests.
var faultyHouse = sync.OnceValue(func() Batch {
	const name = "../testdata/designs/faults/alder-court-faults.vent.toml"
	source, err := os.ReadFile(name)
	if err != nil {
		panic(err)
	}
	d, problems := design.Load(name, source)
	if len(problems) > 0 {
		panic(problems[0].Message)
	}
	library := rules.NewLibrary(os.ReadFile)
	var packs []*rules.Effective
	for _, id := range d.Project.Codes {
		pack, err := library.Pack(id)
		if err != nil {
			panic(err)
		}
		packs = append(packs, pack)
	}
	return batch(checker.Review(d, checker.Request{File: "house.vent.toml", Packs: packs, Date: "2026-03-14"}))
})

func htmlPages(t *testing.T) map[string]string {
	t.Helper()
	pages := map[string]string{"real": written(t, "html", faultyHouse())}
	for name, b := range batches() {
		pages[name] = written(t, "html", b)
	}
	return pages
}

// A page is well-formed, loads nothing, runs nothing, and every link in it leads
// to a place in it.
func TestHTMLPagesStandAlone(t *testing.T) {
	for name, page := range htmlPages(t) {
		m := readMarkup(t, page)
		require.Empty(t, m.fetched, name)
		require.Zero(t, m.count("script")+m.count("link")+m.count("iframe")+m.count("img"), name)
		for id, n := range m.ids {
			require.Equal(t, 1, n, "%s: %s", name, id)
		}
		for _, link := range m.links {
			require.Contains(t, m.ids, strings.TrimPrefix(link, "#"), name)
		}
		require.NotRegexp(t, `url\((?:[^#]|#[^)]*\.)|@import|\son\w+=`, htmlTextOf(page), name)
	}
}

// htmlTextOf is a page without what its texts say: its tags and its style.
func htmlTextOf(page string) string {
	return regexp.MustCompile(`>[^<]*<`).ReplaceAllStringFunc(page, func(s string) string {
		if strings.Contains(s, "font:") {
			return s
		}
		return "><"
	})
}

func TestHTMLPagesCanBeReadByEar(t *testing.T) {
	for name, page := range htmlPages(t) {
		m := readMarkup(t, page)
		require.Equal(t, 1, m.count("main"), name)
		require.Equal(t, 1, m.count("h1"), name)
		require.Contains(t, page, `<html lang="en"`, name)
		level := 0
		for _, h := range m.headings {
			require.LessOrEqual(t, h, level+1, "%s: a level of headings is left out", name)
			level = h
		}
		require.Equal(t, m.count("table"), m.count("caption"), name)
		require.Equal(t, strings.Count(page, "<th"), strings.Count(page, "<th scope=")+strings.Count(page, "<thead"), name)
		require.Equal(t, m.count("svg"), strings.Count(page, `role="img"`), name)
		require.Equal(t, m.count("svg"), m.count("desc"), name)
	}
}

// Every rule has every one of its subjects, and every problem its number.
func TestHTMLMatrixIsComplete(t *testing.T) {
	b := faultyHouse()
	page := written(t, "html", b)
	r := b.Reports[0]
	require.Equal(t, len(r.Results), strings.Count(page, `<span class="subject">`))
	asked := map[string]int{}
	for i := range r.Results {
		asked[ruleID(&r.Results[i])]++
	}
	for id, subjects := range asked {
		ruled := between(t, page, "<code>"+id+"</code></th>", "</tbody>")
		require.Equal(t, subjects, strings.Count(ruled, `<span class="subject">`), id)
	}
	number := 0
	for i := range r.Results {
		if r.Results[i].Problem() {
			number++
			require.Contains(t, page, `href="#r1-finding-`+strconv.Itoa(number)+`"`)
		}
	}
	require.Greater(t, number, 20)
}

// A finding that a drawing shows has a link to it, and the drawing one back.
func TestHTMLFindingsAndDrawingsLeadToEachOther(t *testing.T) {
	b := faultyHouse()
	page := written(t, "html", b)
	shown := 0
	for _, d := range drawingsOf(b.Reports[0], 0) {
		figure := between(t, page, `<figure id="`+drawingAnchor(d)+`"`, "</figure>")
		for _, n := range d.Findings {
			anchor := findingAnchor("r1-", n)
			require.Contains(t, figure, `href="#`+anchor+`"`)
			require.Contains(t, between(t, page, `id="`+anchor+`"`, "</div>\n<div class=\"entry\""), `href="#`+drawingAnchor(d)+`"`)
			shown++
		}
	}
	require.Greater(t, shown, 10)
}

func between(t *testing.T, text, from, to string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, from)
	require.True(t, ok, from)
	inside, _, _ := strings.Cut(rest, to)
	return inside
}

func TestHTMLEscapesWhatADesignSays(t *testing.T) {
	for _, name := range []string{"odd", "hostile"} {
		page := written(t, "html", batches()[name])
		require.NotContains(t, page, "<b>")
		require.NotContains(t, page, "<script")
		require.NotContains(t, page, "\x1b")
		require.NotContains(t, page, "\u202e")
	}
	require.Contains(t, readMarkup(t, written(t, "html", batches()["hostile"])).text, `<script>alert("x")</script>&amp;`)
}

var (
	textColour = regexp.MustCompile(`[ ;{]color: #([0-9a-f]{6})`)
	background = regexp.MustCompile(`background: #([0-9a-f]{6})`)
)

// Web Content Accessibility Guidelines 2.1, success criterion 1.4.3: at least
// 4.5 to 1 for text. Every text colour is tried on every light ground.
func TestHTMLTextHasContrast(t *testing.T) {
	for _, ink := range textColour.FindAllStringSubmatch(htmlStyle, -1) {
		for _, ground := range background.FindAllStringSubmatch(htmlStyle, -1) {
			a, b := luminance(t, ink[1]), luminance(t, ground[1])
			if ink[1] == "ffffff" != (b < 0.2) {
				continue // white is for dark grounds, the others for light ones
			}
			require.GreaterOrEqual(t, (max(a, b)+0.05)/(min(a, b)+0.05), 4.5, "#%s on #%s", ink[1], ground[1])
		}
	}
}

// luminance is the relative luminance of a colour, as the same guidelines define it.
func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	sum := 0.0
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		v, err := strconv.ParseUint(colour[2*i:2*i+2], 16, 8)
		require.NoError(t, err)
		c := float64(v) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += share * c
	}
	return sum
}

func TestDrawGivesPlanOrElevation(t *testing.T) {
	r := faultyHouse().Reports[0]
	require.Contains(t, Draw(r, nil), "plan of the site")
	require.Contains(t, Draw(r, r.Design.Walls[0]), "elevation of wall &#34;south&#34;")
	require.Empty(t, Draw(&checker.Report{Design: &design.Design{}}, nil))
}
