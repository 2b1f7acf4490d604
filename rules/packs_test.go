package rules_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// shipped keeps the packs of the program compiled for all tests, which run one
// after the other.
var shipped = rules.NewLibrary(nil)

func builtIn(t testing.TB, id string) *rules.Effective {
	t.Helper()
	pack, err := shipped.Pack(id)
	require.NoError(t, err)
	return pack
}

// Every rule that ships shows what it does, every kind of outcome it can have has
// been seen, and its samples notice every change that matters. What a pack takes
// over as it is has been proven with the pack that it comes from.
func TestShippedPacksProve(t *testing.T) {
	for _, id := range rules.BuiltIn() {
		t.Run(id, func(t *testing.T) {
			pack := builtIn(t, id)
			require.NotEmpty(t, pack.Rules)
			for _, rule := range pack.Rules {
				if rule.Pack == id || len(rule.Reached) > 0 {
					proves(t, pack, rule)
				} // any other is proven with the pack that it comes from, unchanged
			}
		})
	}
}

func proves(t *testing.T, pack *rules.Effective, rule *rules.Compiled) {
	t.Helper()
	var runs []rules.SampleRun
	if testing.Short() {
		runs = pack.Prove(rule)
	} else {
		p := pack.ProveRule(rule)
		runs = p.Runs
		assert.Empty(t, p.Gaps, rule.ID)
		assert.False(t, p.Unshown, rule.ID)
		assert.Empty(t, p.Survivors, rule.ID)
		assert.Empty(t, p.Unneeded, rule.ID)
	}
	for _, run := range runs {
		assert.NoError(t, run.Err, "%s, %q", rule.ID, run.Sample.Name)
		assert.Equal(t, string(run.Sample.Expect), string(run.Got), "%s, %q", rule.ID, run.Sample.Name)
	}
}

// A rule without a source, a remedy or a way to be found is not one.
func TestShippedRulesAreDocumented(t *testing.T) {
	seen := map[string]string{}
	for _, id := range rules.BuiltIn() {
		for _, rule := range builtIn(t, id).Rules {
			assert.NotEmpty(t, rule.Basis, rule.ID)
			assert.NotEmpty(t, rule.Title, rule.ID)
			assert.NotEmpty(t, rule.Remedy, rule.ID)
			assert.Regexp(t, `^[a-z0-9]+(-[a-z0-9]+)*$`, rule.ID)
			if rule.Pack == id {
				assert.Empty(t, seen[rule.ID], "rule %q stands in %q and in %q", rule.ID, id, seen[rule.ID])
				seen[rule.ID] = id
			}
		}
	}
	assert.GreaterOrEqual(t, len(seen), 40)
}

// Practice advises; it never refuses.
func TestPracticeIsNeverAnError(t *testing.T) {
	for _, rule := range builtIn(t, "practice").Rules {
		assert.NotEqual(t, rules.Error, rule.Level, rule.ID)
	}
}

// The digest of a pack depends on its bytes alone.
func TestDigestIsStable(t *testing.T) {
	assert.Equal(t, builtIn(t, "irc-2021").Digest(), builtIn(t, "irc-2021").Digest())
	assert.NotEqual(t, builtIn(t, "irc-2021").Digest(), builtIn(t, "practice").Digest())
}
