package design_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
)

const fewKeys = "format = 1\n[project]\nname = \"crowd\"\nstage = \"concept\"\nunits = \"IP\"\n[dwelling]\n"

// As many of each as a file may hold are read; one more is refused at its place.
func TestCrowds(t *testing.T) {
	for _, c := range []struct {
		before, each string
		most         int
	}{
		{"", "[[room]]\nid = \"x%d\"\nuse = \"closet\"\n", 300},
		{"", "[[line]]\nid = \"x%d\"\nkind = \"lot-line\"\n", 100},
		{"", "[[building_opening]]\nid = \"x%d\"\nkind = \"window\"\n", 500},
		{"", "[[opening]]\nid = \"x%d\"\nkind = \"intake\"\n", 500},
		{"", "[[source]]\nid = \"x%d\"\nkind = \"trash\"\n", 2000},
		{"", "[[ventilator]]\nid = \"x%d\"\nkind = \"erv\"\n", 30},
		{"[[ventilator]]\nid = \"v\"\nkind = \"erv\"\n", "[[ventilator.filter]]\nmerv = 8 # %d\n", 20},
		{"", "[[terminal]]\nid = \"x%d\"\nairstream = \"supply-air\"\n", 300},
		{"", "[[duct]]\nid = \"x%d\"\nairstream = \"supply-air\"\n", 300},
		{"[[duct]]\nid = \"d\"\nairstream = \"supply-air\"\n", "[[duct.fitting]]\nkind = \"elbow %d\"\n", 200},
		{"", "[[appliance]]\nid = \"x%d\"\nkind = \"stove\"\n", 100},
		{"", "[[variance]]\nrule = \"p:r%d\"\nreason = \"x\"\nby = \"owner\"\n", 500},
	} {
		t.Run(strings.SplitN(c.each, "\n", 2)[0], func(t *testing.T) {
			var b strings.Builder
			b.WriteString(fewKeys + c.before)
			for i := range c.most {
				fmt.Fprintf(&b, c.each, i)
			}
			_, problems := design.Load("crowd", []byte(b.String()))
			assert.Empty(t, problems)

			line := strings.Count(b.String(), "\n") + 1
			fmt.Fprintf(&b, c.each, c.most)
			d, problems := design.Load("crowd", []byte(b.String()))
			assert.Nil(t, d)
			require.Len(t, problems, 1)
			assert.Equal(t, fmt.Sprintf("found %d tables like this one, expected at most %d", c.most+1, c.most), problems[0].Message)
			assert.Contains(t, []int{line, line + 1}, problems[0].Position.Line)
		})
	}
}
