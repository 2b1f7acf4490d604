package site

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

const published = "../../testdata/published/"

// openingsCase is one case of testdata/published/openings: a part of a design
// and what is known of its distances.
type openingsCase struct {
	Case     string            `toml:"case,required"`
	Title    string            `toml:"title,required"`
	Source   string            `toml:"source,required"`
	Walls    []*design.Wall    `toml:"wall"`
	Openings []*design.Opening `toml:"opening"`
	Expect   []expectation     `toml:"expect"`
}

type expectation struct {
	Between    []string  `toml:"between,required"`
	Distance   *q.Length `toml:"distance,required"`
	Horizontal *q.Length `toml:"horizontal"`
	Rise       *q.Length `toml:"rise"`
	String     *q.Length `toml:"string"` // pulled tight around the building
	Within     q.Length  `toml:"within,required"`
	Limit      *q.Length `toml:"limit"`
	Kept       *bool     `toml:"kept"`
	Through    *bool     `toml:"through"`     // the straight line runs through the building
	StringKept *bool     `toml:"string_kept"` // the limit is kept along the string
}

// TestOpeningsCases checks the vectors BV-01 to BV-08, BV-25 and BV-26.
func TestOpeningsCases(t *testing.T) {
	files, err := filepath.Glob(published + "openings/bv-*.toml")
	require.NoError(t, err)
	require.Len(t, files, 10)
	for _, file := range files {
		c := readCase(t, file)
		d := &design.Design{Walls: c.Walls, Openings: c.Openings}
		t.Run(c.Case, func(t *testing.T) {
			for _, e := range c.Expect {
				e.check(t, New(d), c.find(e.Between[0]), c.find(e.Between[1]))
			}
		})
	}
}

func readCase(t *testing.T, file string) openingsCase {
	t.Helper()
	source, err := os.ReadFile(file)
	require.NoError(t, err)
	tree, problems := document.Parse(filepath.Base(file), source)
	require.Empty(t, problems)
	var c openingsCase
	require.Empty(t, tree.Decode(&c))
	for _, o := range c.Openings {
		for _, w := range c.Walls {
			if w.ID == o.Wall.ID {
				o.Wall.To = w
			}
		}
	}
	return c
}

func (c openingsCase) find(id string) *design.Opening {
	for _, o := range c.Openings {
		if o.ID == id {
			return o
		}
	}
	return nil
}

func (e expectation) check(t *testing.T, s *Site, a, b any) {
	t.Helper()
	within := max(float64(e.Within), 1e-12)
	got, err := s.Distance(a, b)
	require.NoError(t, err)
	assert.InDelta(t, float64(*e.Distance), float64(got), within, "distance")
	if e.Horizontal != nil {
		got, err := s.Horizontal(a, b)
		require.NoError(t, err)
		assert.InDelta(t, float64(*e.Horizontal), float64(got), within, "horizontal")
	}
	if e.Rise != nil {
		got, err := s.Rise(a, b)
		require.NoError(t, err)
		assert.InDelta(t, float64(*e.Rise), float64(got), 1e-12, "rise")
	}
	if e.String != nil {
		m, err := s.TautMeasure(a, b)
		require.NoError(t, err)
		assert.InDelta(t, float64(*e.String), float64(m.Length), within, "string")
		assert.Equal(t, *e.Through, m.Through, "through the building")
		assert.Equal(t, *e.StringKept, q.Compare(float64(m.Length), float64(*e.Limit)) >= 0, "%v against %v", m.Length, *e.Limit)
	}
	if e.Limit != nil {
		assert.Equal(t, *e.Kept, q.Compare(float64(got), float64(*e.Limit)) >= 0, "%v against %v", got, *e.Limit)
	}
}

type flatThing struct {
	At                      *[2]float64
	Along, Outline          [][2]float64
	Diameter, Width, Height *q.Length
}

func (f flatThing) source() *design.Source {
	p := design.Placement{Level: metres(0.75), Diameter: f.Diameter, Width: f.Width, Height: f.Height}
	if f.At != nil {
		p.At = at(f.At[0], f.At[1])
	}
	for _, c := range f.Along {
		p.Along = append(p.Along, *at(c[0], c[1]))
	}
	for _, c := range f.Outline {
		p.Outline = append(p.Outline, *at(c[0], c[1]))
	}
	return source("thing", p)
}

// Values made with shapely: see flat.py beside them.
func TestFlatDistances(t *testing.T) {
	var data struct {
		Cases []struct {
			A, B     flatThing
			Distance float64
		}
	}
	read(t, "distances/flat.json", &data)
	require.Len(t, data.Cases, 300)
	for i, c := range data.Cases {
		a, b := c.A.source(), c.B.source()
		assert.InDelta(t, c.Distance, horizontal(t, a, b), 1e-9, "case %d on the plan", i)
		assert.InDelta(t, c.Distance, distance(t, a, b), 1e-9, "case %d at one level", i)
		assert.InDelta(t, c.Distance, horizontal(t, b, a), 1e-9, "case %d turned", i)
	}
}

type pieceCase struct {
	Kind                                    string
	Centre, Normal, Across, Along, From, To vec
	Radius                                  float64
}

func (c pieceCase) piece() piece {
	switch c.Kind {
	case "segment":
		return segment{c.From, c.To}
	case "disc":
		return disc{c.Centre, c.Normal.times(1 / c.Normal.length()), c.Radius}
	}
	normal := c.Across.cross(c.Along)
	return rectangle(c.Centre, c.Across, c.Along, normal.times(1/normal.length()))
}

// Values made with scipy and by sampling: see space.py beside them. The
// minimiser reaches about 1e-6; a sample never lies nearer than the nearest edge.
func TestSpaceDistances(t *testing.T) {
	var data struct {
		Cases []struct {
			A, B              pieceCase
			Distance, Sampled float64
		}
	}
	read(t, "distances/space.json", &data)
	require.Len(t, data.Cases, 150)
	for i, c := range data.Cases {
		got := c.A.piece().to(c.B.piece()).gap
		assert.InDelta(t, c.Distance, got, 2e-6, "case %d", i)
		assert.LessOrEqual(t, got, c.Sampled+1e-12, "case %d", i)
	}
}

func read(t *testing.T, file string, into any) {
	t.Helper()
	text, err := os.ReadFile(published + file)
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, into))
}
