package expression

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// In the world of the tests vent b ("outlet") gives no flow, and vent c a
// negative one.
var truths = map[string]Truth{
	"inlet.flow > 20 cfm":                                            True,
	"outlet.flow > 20 cfm":                                           Unknown,
	"not (outlet.flow > 20 cfm)":                                     Unknown,
	"inlet.flow > outlet.flow":                                       Unknown,
	"outlet.flow > 20 cfm and inlet.kind == 'outlet'":                False,
	"inlet.kind == 'outlet' and outlet.flow > 20 cfm":                False,
	"outlet.flow > 20 cfm or inlet.kind == 'inlet'":                  True,
	"inlet.kind == 'inlet' or outlet.flow > 20 cfm":                  True,
	"outlet.flow > 20 cfm and inlet.kind == 'inlet'":                 Unknown,
	"outlet.flow > 20 cfm or inlet.kind == 'outlet'":                 Unknown,
	"all(vents, .flow > 0 cfm)":                                      False,
	"any(vents, .flow > 0 cfm)":                                      True,
	"any(vents, .flow > 100 cfm)":                                    Unknown,
	"none(vents, .flow < 0 cfm)":                                     False,
	"none(vents, .flow > 1 m3/s)":                                    Unknown,
	"all(vents, .kind == 'inlet' or .flow > 0 cfm)":                  False,
	"all(vents, not known(.flow) or .flow > -2 m3/s)":                True,
	"all(filter(vents, known(.flow)), .flow > -2 m3/s)":              True,
	"one(vents, .kind == 'outlet')":                                  False,
	"one(vents, .kind == 'inlet')":                                   True,
	"one(vents, .flow > 0 cfm)":                                      Unknown,
	"one([1, 1, 2], # == 1 or outlet.flow > 2 cfm)":                  False,
	"count(vents, .flow > 0 cfm) >= 1":                               Unknown,
	"count(vents, known(.flow)) == 2":                                True,
	"sum(vents, .flow) > 3 cfm":                                      Unknown,
	"sum(filter(vents, known(.flow)), .flow) < 3 cfm":                True,
	"outlet.flow > 20 cfm ? true : inlet.kind == 'inlet'":            True,
	"outlet.flow > 20 cfm ? true : inlet.kind == 'outlet'":           Unknown,
	"outlet.flow > 2 cfm ? outlet.height > 1 m : false":              Unknown,
	"(outlet.flow > 2 cfm ? 1 m : 2 m) > 0 m":                        Unknown,
	"known(outlet.flow) ? outlet.flow > 20 cfm : true":               True,
	"known(outlet.flow) and outlet.flow > 20 cfm":                    False,
	"outlet.flow > 20 cfm and known(outlet.flow)":                    False,
	"(outlet.flow ?? 50 cfm) > 20 cfm":                               True,
	"(inlet.flow ?? 1 cfm) > 20 cfm":                                 True,
	"(outlet.flow ?? (outlet.height * 1 m * 1 m/s)) > 20 cfm":        Unknown,
	"(outlet.flow ?? vents[2].flow ?? 1 cfm) < 0 cfm":                True,
	"(outlet.flow ?? outlet.flow ?? 1 cfm) > 0 cfm":                  True,
	"(outlet.flow ?? (inlet.flow ?? 1 cfm)) > 20 cfm":                True,
	"(vents[9].flow ?? 1 cfm) > 20 cfm":                              Unknown,
	"let f = outlet.flow; f > 3 cfm":                                 Unknown,
	"let f = outlet.flow; inlet.kind == 'inlet'":                     True,
	"let f = outlet.flow > 3 cfm; f or not f":                        Unknown,
	"let n = count(vents, .x > 2 m); any(vents, n > 1 and .x > 8 m)": True,
	"let n = count(vents, .x > 2 m); all(vents, n < 1 or .x > 0 m)":  True,
	"any(vents, let f = .flow; f > 3 cfm)":                           True,
	"all(vents, let v = #; any(vents, gap(v, #) > 1 m))":             True,
	"inlet.size.width > 3 mm":                                        Unknown,
	"known(inlet.size.width)":                                        False,
	"known(vents[2].size)":                                           True,
	"known(vents[2].size.width)":                                     False,
	"(inlet.size.width ?? 4 mm) > 3 mm":                              True,
	"inlet.room.height > 7 ft":                                       True,
	"outlet.room.height > 7 ft":                                      Unknown,
	"vents[2].room.height > 7 ft":                                    Unknown, // the link leads nowhere
	"known(vents[2].room)":                                           False,
	"inlet.room != outlet.room":                                      True,
	"report.date == 'x'":                                             Unknown,
	"known(report)":                                                  False,
	"known(report.date)":                                             False,
	"known(home)":                                                    True,
	"known(home.area)":                                               True,
	"(report.date ?? 'y') == 'y'":                                    True,
	"inlet.open":                                                     True,
	"outlet.open":                                                    Unknown,
	"outlet.open or inlet.open":                                      True,
	"outlet.open == inlet.open":                                      Unknown,
	"(outlet.open or inlet.open) == true":                            True,
	"drop(inlet, outlet) > 1 m":                                      Unknown,
	"doubtful(inlet) > 1 m":                                          Unknown,
	"doubtful(inlet) > 1 m or inlet.open":                            True,
	"limit.local > 3 m":                                              Unknown,
	"limit.local > 3 m or inlet.open":                                True,
	"all(nobody, .open)":                                             True,
	"any(nobody, .open)":                                             False,
	"none(nobody, .open)":                                            True,
	"all(outlet.room.height > 1 m ? vents : nobody, .open)":          Unknown,
	"same(inlet, inlet) and not same(inlet, outlet)":                 True,
}

func TestTruthIsKleene(t *testing.T) {
	for text, want := range truths {
		t.Run(text, func(t *testing.T) {
			c, s := condition(t, text), newScope(t)
			truth, err := c.Truth(s)
			require.NoError(t, err)
			assert.Equal(t, want, truth)
			e, err := c.Explain(s)
			require.NoError(t, err)
			assert.Equal(t, want, e.Truth, "explained")
			if want == Unknown {
				assert.True(t, len(e.Missing)+len(e.Undetermined) > 0, "says why")
			}
		})
	}
}
