package rules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// A pack whose samples would make more designs than can be held is refused at the
// first sample that is too many.
func TestTooManyBigSamples(t *testing.T) {
	const sample = "[[rule.sample]]\nname = \"s\"\nbase = \"big\"\nexpect = \"fail\"\n"
	text := "[pack]\nid = \"giant\"\ntitle = \"Giant (invented)\"\nunits = \"IP\"\n" +
		"[base.big]\ndesign = '''\n" + strings.Repeat("# text\n", 40_000) + "'''\n" +
		"[[rule]]\nid = \"x\"\ntitle = \"x\"\ntopic = \"rates\"\nlevel = \"note\"\ndue = \"final\"\nrequire = 'len(rooms) > 0'\nsays = \"x\"\nremedy = \"x\"\nbasis = []\n"
	for i, line := range []string{"", "", "", "40030:1"} {
		text += strings.Replace(sample, `"s"`, `"s`+strings.Repeat("s", i)+`"`, 1)
		_, err := files(map[string]string{"giant.rules.toml": text}).Pack("giant.rules.toml")
		if line == "" {
			require.NoError(t, err)
			continue
		}
		var invalid *rules.InvalidPack
		require.ErrorAs(t, err, &invalid)
		assert.Contains(t, err.Error(), "giant.rules.toml:"+line+": the designs of the samples of rule \"x\" are larger than 1048576 bytes together")
	}
}
