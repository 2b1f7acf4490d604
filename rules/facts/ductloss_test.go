package facts

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	q "github.com/ventlint/ventlint/checker/quantity"
)

// Every line of a duct can be followed: its inputs, put into its formula, give its
// result.
func TestLinesOfDuctsFollowFromTheirInputs(t *testing.T) {
	source := strings.Replace(flat, "to = \"bed\"\nmaterial = \"galvanized-steel\"\ndiameter = \"4 in\"\nlength = \"15 ft\"\nelbows = 0", `to = "bed"
material = "galvanized-steel"
width = "4 in"
height = "3 in"
length = "15 ft"
extra_loss = "4 Pa"
extra_loss_at = "20 cfm"
fitting = [{ kind = "elbow", count = 2, loss_coefficient = 0.3 }, { kind = "boot", equivalent_length = "10 ft" }]`, 1)
	require.NotEqual(t, flat, source)
	f, _ := factsOf(t, source)
	f = f.listed()
	for _, duct := range f.Design.Ducts {
		loss, err := f.ductLoss(duct).get()
		require.NoError(t, err)
		in := map[string]float64{"k": 1}
		for _, i := range f.ductLoss(duct).line.Inputs {
			name, _, _ := strings.Cut(strings.ReplaceAll(i.Name, ",", " "), " ")
			switch v := i.Value.(type) {
			case q.Length:
				in[name] = float64(v)
			case q.Pressure:
				in[name] = float64(v)
			case float64:
				in[name] = v
			}
		}
		sum := (in["f"]*in["k"]*in["L"]+in["f"]*in["Le"])/in["D"]*in["pv"] + in["C"]*in["pv"] + in["extra"]
		assert.InEpsilon(t, sum, float64(loss), 1e-9, duct.ID)
	}
}

func TestWhatALineOfADuctLacks(t *testing.T) {
	f, _ := factsOf(t, strings.Replace(flat, "compression = \"4 %\"\n", "", 1))
	for _, duct := range f.Design.Ducts {
		_, err := f.ductLoss(duct).get()
		assert.Equal(t, []string{"duct.to-living.compression"}, missingKeys(t, err), duct.ID)
	}
}

// A small flexible duct is beyond what was measured, and says so.
func TestCompressionBeyondWhatWasMeasured(t *testing.T) {
	f, _ := factsOf(t, flat)
	for _, duct := range f.Design.Ducts {
		line := f.ductLoss(duct).line
		assert.Equal(t, duct.ID == "to-living", strings.Contains(line.Taken, "beyond"), duct.ID)
	}
}
