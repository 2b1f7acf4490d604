package design_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const head = `format = 1
project = { name = "Invented house", stage = "concept", units = "IP" }
dwelling = {}
`

const box = head + `
wall = [
  { id = "south", from = ["0 ft", "0 ft"], to = ["40 ft", "0 ft"], height = "9 ft" },
  { id = "east", from = ["40 ft", "0 ft"], to = ["40 ft", "30 ft"] },
  { id = "north", from = ["40 ft", "30 ft"], to = ["0 ft", "30 ft"] },
  { id = "west", from = ["0 ft", "30 ft"], to = ["0 ft", "0 ft"] },
]
`

// What is odd but can be must load.
func TestWhatIsNoMistake(t *testing.T) {
	for name, source := range map[string]string{
		"the least design":                     head,
		"one wall with a place":                head + `wall = [{ id = "a", from = ["0 ft", "0 ft"], to = ["9 ft", "0 ft"] }]`,
		"two walls that do not meet":           head + `wall = [{ id = "a", from = ["0 ft", "0 ft"], to = ["9 ft", "0 ft"] }, { id = "b", from = ["9 ft", "5 ft"], to = ["0 ft", "5 ft"] }]`,
		"walls of which one has no place":      head + `wall = [{ id = "a", from = ["0 ft", "0 ft"], to = ["9 ft", "0 ft"] }, { id = "b" }, { id = "c", from = ["3 ft", "3 ft"], to = ["1 ft", "1 ft"] }]`,
		"ends that meet but for rounding":      head + `wall = [{ id = "a", from = ["0 m", "0 m"], to = ["9 m", "0 m"] }, { id = "b", from = ["9.009 m", "0 m"], to = ["0 m", "5 m"] }, { id = "c", from = ["0 m", "5 m"], to = ["0 m", "-9 mm"] }]`,
		"a straight wall in two pieces":        head + `wall = [{ id = "a", from = ["0 m", "0 m"], to = ["4 m", "0 m"] }, { id = "a2", from = ["4 m", "0 m"], to = ["9 m", "0 m"] }, { id = "b", from = ["9 m", "0 m"], to = ["0 m", "5 m"] }, { id = "c", from = ["0 m", "5 m"], to = ["0 m", "0 m"] }]`,
		"a footprint with a corner inwards":    head + `wall = [{ id = "a", from = ["0 m", "0 m"], to = ["9 m", "0 m"] }, { id = "b", from = ["9 m", "0 m"], to = ["9 m", "4 m"] }, { id = "c", from = ["9 m", "4 m"], to = ["5 m", "4 m"] }, { id = "d", from = ["5 m", "4 m"], to = ["5 m", "8 m"] }, { id = "e", from = ["5 m", "8 m"], to = ["0 m", "8 m"] }, { id = "f", from = ["0 m", "8 m"], to = ["0 m", "0 m"] }]`,
		"an opening that touches a corner":     box + `opening = [{ id = "o", kind = "intake", wall = "south", from_left = "3 in", diameter = "6 in" }]`,
		"an opening that fills a wall":         box + `opening = [{ id = "o", kind = "intake", wall = "east", from_left = "15 ft", width = "30 ft" }]`,
		"an opening up to the eaves":           box + `opening = [{ id = "o", kind = "intake", wall = "south", above_grade = "8 ft 9 in", height = "6 in" }]`,
		"a window below grade":                 box + `building_opening = [{ id = "o", kind = "window", wall = "south", above_grade = "-2 ft" }]`,
		"a place that lacks its wall":          box + `opening = [{ id = "o", kind = "intake", from_left = "90 ft", above_grade = "99 ft" }]`,
		"an opening that is not on the roof":   box + `opening = [{ id = "o", kind = "intake", wall = "south", roof = false }]`,
		"heights above ground off the walls":   box + `source = [{ id = "a", kind = "lp-cylinder", at = ["-9 ft", "0 ft"], level = "2 ft", above_grade = "3 ft" }, { id = "b", kind = "flue", roof = true, at = ["9 ft", "9 ft"], level = "20 ft", above_grade = "19 ft" }, { id = "c", kind = "street", along = [["0 ft", "-9 ft"], ["9 ft", "-9 ft"]], above_grade = "0 ft" }, { id = "d", kind = "parking", outline = [["0 ft", "-9 ft"], ["9 ft", "-9 ft"], ["9 ft", "-20 ft"]], above_grade = "0 ft" }]`,
		"an outline that runs clockwise":       head + `source = [{ id = "s", kind = "parking", outline = [["0 m", "0 m"], ["0 m", "5 m"], ["5 m", "0 m"]] }]`,
		"a fan curve with a level piece":       head + `ventilator = [{ id = "v", kind = "hrv", supply_fan = [{ flow = "0 cfm", pressure = "100 Pa" }, { flow = "40 cfm", pressure = "100 Pa" }, { flow = "60 cfm", pressure = "0 Pa" }] }]`,
		"a fan that holds its flow":            head + `ventilator = [{ id = "v", kind = "hrv", supply_fan = [{ flow = "60 cfm", pressure = "100 Pa" }, { flow = "60 cfm", pressure = "20 Pa" }] }]`,
		"running all the time, in other words": head + `ventilator = [{ id = "v", kind = "hrv", control = "continuous", minutes_per_hour = "60 min", on_time = "1 h", cycle = "60 min" }]`,
		"ducts in a row and a branch":          head + `duct = [{ id = "a", airstream = "supply-air", to = "b" }, { id = "b", airstream = "supply-air", from = "a" }, { id = "c", airstream = "supply-air", from = "a" }]`,
		"half of a combination fitting":        head + `opening = [{ id = "o", kind = "intake", fitting = "hood" }]`,
		"distances stated in two places":       head + `opening = [{ id = "a", kind = "intake" }, { id = "b", kind = "exhaust" }]` + "\n" + `stated_distance = [{ between = ["a", "b"], distance = "9 ft" }, { between = ["b", "a"], horizontal = "9 ft", rise = "-2 ft" }, { between = ["a", "b"], rise = "2 ft" }]`,
		"an electric range that nothing vents": head + `appliance = [{ id = "a", kind = "range", fuel = "electric", vent = "unvented" }]`,
		"saturated air in summer":              strings.Replace(head, "{}", `{ summer_outdoor = "80 F", summer_wet_bulb = "80 F" }`, 1),
		"a reference before what it leads to":  head + "terminal = [{ id = 't', airstream = 'supply-air', room = 'r' }]\nroom = [{ id = 'r', use = 'bedroom' }]",
		"ids with letters of any alphabet":     head + "room = [{ id = 'küche_2-ost', use = 'kitchen' }]",
		"the longest length":                   head + "line = [{ id = 'l', kind = 'lot-line', from = ['-10000 m', '0 m'], to = ['10000 m', '0 m'] }]",
	} {
		t.Run(name, func(t *testing.T) {
			require.NotNil(t, loaded(t, source))
		})
	}
}
