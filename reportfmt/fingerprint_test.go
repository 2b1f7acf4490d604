package reportfmt

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFingerprintKeepsWhenTheFileIsRearranged(t *testing.T) {
	r := failedSeparation()
	before := fingerprint(&r)
	require.Regexp(t, "^[0-9a-f]{32}$", before)
	r.Position = at(400, 2, 9)
	r.Pointer = "/opening/7/from_left"
	r.Message = "another distance now"
	r.Comparisons = nil
	require.Equal(t, before, fingerprint(&r))
}

func TestFingerprintTellsFindingsApart(t *testing.T) {
	r := failedSeparation()
	seen := map[string]bool{fingerprint(&r): true}
	other := failedSeparation()
	other.Subjects[1].ID = "dryer"
	swapped := failedSeparation()
	swapped.Subjects[0], swapped.Subjects[1] = swapped.Subjects[1], swapped.Subjects[0]
	rule := failedSeparation()
	rule.Rule.ID = "another-rule"
	pack := failedSeparation()
	pack.Pack = "model-code"
	place := failedSeparation()
	place.Pointer = "/opening/0/above_grade"
	first, second := notedLabel(), notedLabel() // subjects without ids keep the numbers of the pointer
	second.Pointer = "/terminal/4/loss"
	one, two := openAccess(), openAccess() // a part of a thing has no id
	one.Subjects = append(one.Subjects, placedAt(subject("filter", "ventilator[1].filter[1]", ""), at(80, 1, 9), "/ventilator/0/filter/0"))
	two.Subjects = append(two.Subjects, placedAt(subject("filter", "ventilator[1].filter[2]", ""), at(80, 1, 9), "/ventilator/0/filter/1"))
	for _, f := range []string{fingerprint(&one), fingerprint(&two), fingerprint(&other), fingerprint(&swapped), fingerprint(&rule), fingerprint(&pack),
		fingerprint(&place), fingerprint(&first), fingerprint(&second)} {
		require.False(t, seen[f])
		seen[f] = true
	}
}
