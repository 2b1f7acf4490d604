package airflow

import (
	"fmt"
	"math"
	"testing"

	"github.com/ventlint/ventlint/checker/moistair"
	q "github.com/ventlint/ventlint/checker/quantity"
)

func finite(t *testing.T, numbers ...float64) {
	t.Helper()
	for _, x := range numbers {
		if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
			t.Fatalf("%v", numbers)
		}
	}
}

// FuzzSection holds that any numbers give an error or finite losses, and that the
// inverse comes back.
func FuzzSection(f *testing.F) {
	f.Add(1.204, 1.8e-5, 0.15, 0.0, 9e-5, 6.0, 0.0, 0.22, 1.0, 0.05)
	f.Add(0.9, 2e-5, 0.1, 0.3, 9e-4, 10_000.0, 0.45, -0.1, 0.0, 1e-300)
	f.Add(1.2, 1e-5, 5.0, 0.01, 0.0, 0.0, 0.0, 1e4, 1000.0, 100.0)
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 1e-9, 1.0, 0.1, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, density, viscosity, width, height, roughness, length, compression, c, equivalent, flow float64) {
		shape, err := Round(q.Length(width))
		if height != 0 {
			shape, err = Rectangular(q.Length(width), q.Length(height))
		}
		if err != nil {
			return
		}
		air := Air{moistair.Density(density), Viscosity(viscosity)}
		s := Section{Shape: shape, Material: Material{Name: "any", Roughness: q.Length(roughness), Compressible: true}, Length: q.Length(length), Compression: q.Ratio(compression),
			Fittings: []Fitting{{Name: "a", Count: 3, Coefficient: c}, {Name: "b", Count: 1, EquivalentLength: q.Length(equivalent)}, {Name: "m", Count: 2, Coefficient: math.Abs(c), Miter: true}}}
		loss, err := s.Loss(air, q.Flow(flow))
		if err != nil {
			return
		}
		finite(t, float64(loss.Total), float64(loss.Straight), float64(loss.Fitted), float64(loss.Velocity), float64(loss.VelocityPressure), loss.Reynolds, loss.Friction.Factor, float64(loss.Gradient), loss.Compression.Factor, loss.Coefficient)
		back, err := s.Flow(air, loss.Total)
		if err != nil || loss.Total < 1e-9 {
			return
		}
		if math.Abs(float64(back)-flow) > 1e-6*flow {
			t.Fatalf("%v comes back as %v", flow, float64(back))
		}
	})
}

// FuzzFittingName holds that any text ends in a fitting or an error that asks.
func FuzzFittingName(f *testing.F) {
	f.Add("Elbow, 90 degrees, smooth, r/D 1.5")
	f.Add("teee 45 entry brnch")
	f.Add("\x00\xff 1e999 inf nan 0x1p4")
	f.Fuzz(func(t *testing.T, name string) {
		k, err := FittingNamed(name)
		if err == nil && (k.Name == "" || k.Coefficient <= 0) || err != nil && (k != KnownFitting{} || err.Error() == "") {
			t.Fatalf("%q: %v, %v", name, k, err)
		}
	})
}

// plan reads a system from bytes: five for each run (its two nodes, diameter, length,
// loss), with ends at some nodes.
func plan(t *testing.T, data []byte) (runs []Run, ends []End, flows Flows) {
	flows = Flows{}
	for i := 0; i+4 < len(data) && i < 400; i += 5 {
		b := data[i : i+5]
		node := func(x byte) string {
			if x%8 == 0 {
				return "unit"
			}
			return fmt.Sprint("n", x%32)
		}
		run := Run{ID: fmt.Sprint("r", i), From: node(b[0]), To: node(b[1]), Sections: []Section{{Shape: round(t, 0.01+q.Length(b[2])/64), Length: q.Length(b[3]) / 4}}}
		if b[4]%2 == 1 {
			run.Losses = []StatedLoss{{"loss", q.Pressure(b[4]), 0.001 + q.Flow(b[3])/1000, 1 + float64(b[2])/255}}
		}
		runs = append(runs, run)
		if b[4]%3 > 0 {
			ends = append(ends, End{ID: run.To, Losses: run.Losses})
			flows[run.To] = q.Flow(b[4]) / 1000
		}
	}
	return runs, ends, flows
}

// FuzzSystem holds that any layout gives an error or a solution that conserves flow
// and has even pressures; the solver must end.
func FuzzSystem(f *testing.F) {
	f.Add([]byte{0, 1, 10, 20, 1, 1, 2, 6, 30, 2, 1, 3, 6, 40, 4}, 0.05)
	f.Add([]byte{1, 0, 10, 20, 1, 0, 2, 6, 30, 2, 2, 1, 6, 40, 4}, 1e-9)
	f.Add([]byte{0, 1, 0, 0, 2, 0, 2, 255, 0, 2}, 99.0)
	f.Fuzz(func(t *testing.T, data []byte, total float64) {
		runs, ends, flows := plan(t, data)
		s, err := NewSystem(StandardAir(), "unit", runs, ends)
		if err != nil {
			return
		}
		if loss, err := s.Design(flows); err == nil {
			finite(t, float64(loss.Pressure), float64(loss.Flow))
		}
		loss, err := s.Open(q.Flow(total))
		if err != nil {
			if _, stuck := err.(*NotConverged); stuck {
				t.Fatal(err)
			}
			return
		}
		even(t, loss, float64(loss.Flow))
		fan := curveOf(t, 0, 300, 0.02, 200, 0.02, 150, 0.05, 0)
		o, err := s.MeetOpen(fan)
		if err == nil && o.Meeting == OnCurve {
			onCurve(t, fan, Point{o.Flow, o.Losses().Pressure})
		}
	})
}

// FuzzCurve holds that any points give an error or a curve whose places agree.
func FuzzCurve(f *testing.F) {
	f.Add(0.0, 200.0, 0.05, 100.0, 0.08, 0.0, 0.06, 1.1)
	f.Add(0.01, 5.0, 0.01, 0.0, 0.02, 0.0, 0.01, 0.5)
	f.Add(math.NaN(), 1.0, 2.0, 3.0, 1e308, -1e308, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, q1, p1, q2, p2, q3, p3, flow, speed float64) {
		c, err := NewCurve(Point{q.Flow(q1), q.Pressure(p1)}, Point{q.Flow(q2), q.Pressure(p2)}, Point{q.Flow(q3), q.Pressure(p3)})
		if err != nil {
			return
		}
		p, err := c.PressureAt(q.Flow(flow))
		if err == nil {
			finite(t, float64(p))
			back, err := c.FlowAt(p)
			if err != nil || back > q.Flow(flow)*(1+1e-9)+1e-9 {
				t.Fatalf("%v at %v comes back as %v, %v", p, flow, float64(back), err)
			}
		}
		if law, err := Speed(speed); err == nil {
			if faster, err := law.Curve(c); err == nil && len(faster.Points()) != 3 {
				t.Fatal(faster)
			}
		}
	})
}
