package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	hostileHead = "[pack]\nid = \"hostile\"\ntitle = \"Hostile (invented)\"\nunits = \"IP\"\ndefault_base = \"lot\"\n"
	aSample     = "[[rule.sample]]\nname = \"s%d\"\nexpect = \"%s\"\n"
)

// based is the head of a pack whose samples vary a lot with many openings.
func based(openings int) string {
	return hostileHead + "[base.lot]\ndesign = '''\n" + lot + crowd(openings, "[[opening]]\nid = \"o%d\"\nkind = \"intake\"\n") + "'''\n"
}

// samples are n samples of a rule.
func samples(n int, expect string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, aSample, i, expect)
	}
	return b.String()
}

var hostileProofs = map[string]string{
	"rules over triples":       strings.Replace(hostileHead, "default_base = \"lot\"\n", "", 1) + crowd(1000, pairRule),
	"a crowd of samples":       based(2) + fmt.Sprintf(plainRule, 1) + samples(12_000, "pass"),
	"samples of giant designs": based(3000) + fmt.Sprintf(plainRule, 1) + samples(7, "pass"),
	"wrong samples":            based(100) + fmt.Sprintf(plainRule, 1) + samples(180, "fail"),
	"too many samples":         based(100) + fmt.Sprintf(plainRule, 1) + samples(2000, "fail"),
	"samples of costly rules":  based(60) + fmt.Sprintf(pairRule, 1) + samples(190, "fail"),
	"parents of one another":   strings.Replace(hostileHead, "default_base = \"lot\"", "extends = [\"hostile.rules.toml\"]", 1),
	"many parents":             strings.Replace(hostileHead, "default_base = \"lot\"", "extends = "+many(10_000, `"practice"`), 1),
}

// Proving a hostile pack, and judging what it changes, ends as a review does.
func TestHostileProofs(t *testing.T) {
	folder := t.TempDir()
	design, pack := filepath.Join(folder, "house.vent.toml"), filepath.Join(folder, "hostile.rules.toml")
	require.NoError(t, os.WriteFile(design, []byte(lot+crowd(200, "[[opening]]\nid = \"o%d\"\nkind = \"intake\"\n")), 0o644))
	for name, text := range hostileProofs {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, os.WriteFile(pack, []byte(text), 0o644))
			told := withinBounds(t, name+", proven", "prove", pack)
			if strings.Contains(name, "costly") {
				require.Regexp(t, `(?m)^r1: \d+ samples not tried\nr1: changes beyond the first 0 not tried\n(.*\n)*hostile: 1 rules not proven in full: `, told)
			}
			withinBounds(t, name+", impact", "impact", "--from", "irc-2021", "--to", pack, design)
		})
	}
}
