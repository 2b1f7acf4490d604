package airflow_test

import (
	"fmt"

	"github.com/ventlint/ventlint/checker/airflow"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Two rooms on one fan: what the ducts take at design flows, and what the fan
// delivers when nothing throttles the nearer room.
func Example() {
	steel, _ := airflow.MaterialNamed("galvanized-steel")
	elbow, _ := airflow.FittingNamed("smooth elbow, 90 degrees, r/D 1")
	duct := func(d, length q.Length, elbows int) []airflow.Section {
		shape, _ := airflow.Round(d)
		return []airflow.Section{{Shape: shape, Material: steel, Length: length, Fittings: []airflow.Fitting{elbow.Times(elbows)}}}
	}
	loss := func(name string, p q.Pressure, flow q.Flow) []airflow.StatedLoss {
		return []airflow.StatedLoss{{Name: name, Loss: p, Flow: flow}}
	}
	air, _ := airflow.AirAt(300, 293.15)
	system, err := airflow.NewSystem(air, "fan",
		[]airflow.Run{
			{ID: "fresh", From: "intake", To: "fan", Sections: duct(0.15, 4, 2)},
			{ID: "near", From: "fan", To: "study", Sections: duct(0.1, 5, 2)},
			{ID: "far", From: "fan", To: "bedroom", Sections: duct(0.1, 14, 4)},
		},
		[]airflow.End{
			{ID: "intake", Losses: loss("hood", 12, 0.04)},
			{ID: "study", Losses: loss("grille", 6, 0.015)},
			{ID: "bedroom", Losses: loss("grille", 6, 0.015)},
		})
	if err != nil {
		fmt.Println(err)
		return
	}

	design, _ := system.Design(airflow.Flows{"study": 0.015, "bedroom": 0.018})
	fmt.Println("needs", design.Pressure, "for", design.Flow, "through", design.Outlet.Critical)
	study, _ := design.End("study")
	fmt.Println("damper to the study takes", study.Damper)

	fan, _ := airflow.NewCurve(airflow.Point{Flow: 0, Pressure: 90}, airflow.Point{Flow: 0.05, Pressure: 20})
	open, _ := system.MeetOpen(fan)
	study, _ = open.Losses().End("study")
	bedroom, _ := open.Losses().End("bedroom")
	fmt.Println("delivers", open.Flow, "at", open.Pressure, "without dampers:", study.Flow, "and", bedroom.Flow)
	// Output:
	// needs 34.5 Pa for 33 L/s through bedroom
	// damper to the study takes 13.8 Pa
	// delivers 38.8 L/s at 35.7 Pa without dampers: 21.9 L/s and 16.9 L/s
}
