package airflow

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/bounds"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func TestEquivalentDiameters(t *testing.T) {
	type sizes struct {
		Within float64
		Size   [][2]float64
		Round  []float64
	}
	var f struct {
		Rectangular sizes
		FlatOval    sizes `toml:"flat_oval"`
		Notes       struct {
			Within         float64
			Rectangle      [2]float64
			RectangleRound float64 `toml:"rectangle_round"`
			Oval           [][2]float64
			OvalRound      []float64 `toml:"oval_round"`
		}
		Code struct {
			Size          [2]float64
			Hydraulic     float64
			EqualFriction float64 `toml:"equal_friction"`
		}
	}
	published.Read(t, "equivalents", &f)
	make := func(shape func(a, b q.Length) (Shape, error), size [2]float64, unit float64) Shape {
		s, err := shape(q.Length(size[0]*unit), q.Length(size[1]*unit))
		require.NoError(t, err)
		return s
	}
	for i, size := range f.Rectangular.Size {
		assert.InDelta(t, f.Rectangular.Round[i], 1000*float64(make(Rectangular, size, 0.001).EqualFriction()), f.Rectangular.Within, size)
	}
	for i, size := range f.FlatOval.Size {
		assert.InDelta(t, f.FlatOval.Round[i], 1000*float64(make(FlatOval, size, 0.001).EqualFriction()), f.FlatOval.Within, size)
	}
	assert.InDelta(t, f.Notes.RectangleRound, float64(make(Rectangular, f.Notes.Rectangle, inch).EqualFriction())/inch, f.Notes.Within)
	for i, size := range f.Notes.Oval {
		assert.InDelta(t, f.Notes.OvalRound[i], float64(make(FlatOval, size, inch).EqualFriction())/inch, f.Notes.Within)
	}
	code := make(Rectangular, f.Code.Size, inch)
	assert.InDelta(t, f.Code.Hydraulic, float64(code.HydraulicDiameter())/inch, 0.005)
	assert.InDelta(t, f.Code.EqualFriction, float64(code.EqualFriction())/inch, 0.005)
}

// TestShapesWithEqualAxes holds that a flat oval with equal axes is round, and that
// the sides of a rectangle may come in any order.
func TestShapesWithEqualAxes(t *testing.T) {
	oval, err := FlatOval(0.2, 0.2)
	require.NoError(t, err)
	circle := round(t, 0.2)
	assert.InEpsilon(t, float64(circle.Area()), float64(oval.Area()), 1e-12)
	assert.InEpsilon(t, float64(circle.Perimeter()), float64(oval.Perimeter()), 1e-12)
	assert.InEpsilon(t, float64(circle.HydraulicDiameter()), float64(oval.HydraulicDiameter()), 1e-12)
	assert.InEpsilon(t, float64(circle.EqualFriction()), float64(oval.EqualFriction()), 0.005)

	a, _ := Rectangular(0.1, 0.3)
	b, _ := Rectangular(0.3, 0.1)
	assert.Equal(t, a, b)
	assert.InEpsilon(t, 0.15, float64(a.HydraulicDiameter()), 1e-12)
}

// TestEqualFrictionAgrees holds that a rectangle and its round equivalent lose
// about the same, the first with its hydraulic diameter and actual velocity.
func TestEqualFrictionAgrees(t *testing.T) {
	for _, sides := range [][2]q.Length{{0.1, 0.1}, {0.1, 0.2}, {0.1, 0.3}, {0.15, 0.25}} {
		flat, err := Rectangular(sides[0], sides[1])
		require.NoError(t, err)
		a := lossOf(t, StandardAir(), Section{Shape: flat, Material: rough(0.09 * mm), Length: 10}, 0.06)
		b := lossOf(t, StandardAir(), Section{Shape: round(t, flat.EqualFriction()), Material: rough(0.09 * mm), Length: 10}, 0.06)
		assert.InEpsilon(t, float64(b.Total), float64(a.Total), 0.06, sides)
	}
}

func TestShapesAreNamed(t *testing.T) {
	oval, _ := FlatOval(0.1, 0.2)
	flat, _ := Rectangular(0.2, 0.1)
	assert.Equal(t, "150 mm round", round(t, 0.15).String())
	assert.Equal(t, "200 mm x 100 mm flat oval", oval.String())
	assert.Equal(t, "200 mm x 100 mm rectangular", flat.String())
	assert.Equal(t, "no duct", Shape{}.String())
}

func TestShapesOutsideTheirRange(t *testing.T) {
	for _, x := range []q.Length{0, -1, 0.005, 6, q.Length(math.NaN()), q.Length(math.Inf(1))} {
		var out *bounds.Error
		_, err := Round(x)
		assert.ErrorAs(t, err, &out, x)
		_, err = Rectangular(0.1, x)
		assert.ErrorAs(t, err, &out, x)
		_, err = FlatOval(x, 0.1)
		assert.ErrorAs(t, err, &out, x)
	}
	assert.Zero(t, Shape{}.HydraulicDiameter())
	assert.Zero(t, Shape{}.EqualFriction())
	assert.Zero(t, Shape{}.Area())
	assert.Zero(t, Shape{}.Perimeter())
	_, err := Section{Length: 1}.Loss(StandardAir(), 0.01)
	assert.EqualError(t, err, "duct size is not given, expected a diameter or a width and a height")
	_, err = AbruptEnlargement(Shape{}, round(t, 0.1))
	assert.Error(t, err)
	_, err = AbruptEnlargement(round(t, 0.2), round(t, 0.1))
	assert.EqualError(t, err, "200 mm round opens into 100 mm round, expected a larger duct")
	_, err = TaperedEnlargement(round(t, 0.2), round(t, 0.1))
	assert.Error(t, err)
}
