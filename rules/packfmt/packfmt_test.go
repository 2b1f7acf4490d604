package packfmt_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/design"
	"github.com/ventlint/ventlint/checker/design/designtest"
	"github.com/ventlint/ventlint/rules"
	"github.com/ventlint/ventlint/rules/facts"
	"github.com/ventlint/ventlint/rules/packfmt"
)

var update = flag.Bool("update", false, "write the catalogue and the expected output anew")

const harborCounty = "../../testdata/packs/harbor-county.rules.toml"

// library keeps the packs compiled for all tests, which run one after the other.
var library = rules.NewLibrary(os.ReadFile)

func pack(t *testing.T, name string) *rules.Effective {
	t.Helper()
	p, err := library.Pack(name)
	require.NoError(t, err)
	return p
}

func builtIn(t *testing.T) []*rules.Effective {
	t.Helper()
	var list []*rules.Effective
	for _, id := range rules.BuiltIn() {
		list = append(list, pack(t, id))
	}
	return list
}

// flattened writes a pack as one file and loads it again.
func flattened(t *testing.T, e *rules.Effective) (*rules.Effective, string) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, packfmt.TOML(&b, e))
	flat, err := rules.NewLibrary(func(string) ([]byte, error) { return b.Bytes(), nil }).Pack("flat.rules.toml")
	require.NoError(t, err, b.String())
	return flat, b.String()
}

// The county's pack in one file proves, and leaves no gap that the county's own
// does not.
func TestOneFileProves(t *testing.T) {
	flat, text := flattened(t, pack(t, harborCounty))
	assert.Empty(t, flat.Head.Extends)
	for _, r := range flat.Rules {
		assert.Equal(t, "harbor-county", r.Pack)
		for _, run := range flat.Prove(r) {
			assert.True(t, run.Passed(), "%s, %q: %v %v", r.ID, run.Sample.Name, run.Got, run.Err)
		}
	}
	for _, id := range []string{"intake-exhaust-distance", "smooth-duct-length", "shelter-of-the-unit", "intake-above-spray"} {
		p := flat.ProveRule(flat.Rule(id))
		assert.Empty(t, p.Survivors, id)
		assert.Empty(t, p.Gaps, id)
	}
	for _, part := range []string{
		"[limits.intake_to_exhaust]\n# of harbor-county\nvalue = \"12 ft\"",
		"[limits.exhaust_above_intake]\n# of irc-2021\n",
		"# of irc-2021\n# basis by harbor-county\n# level by harbor-county\n# remedy by harbor-county\nid = \"control-marking\"",
		"# switched off by harbor-county: combination-fitting-halves",
		"[table.smooth_duct_length]\n# of harbor-county\n",
	} {
		assert.Contains(t, text, part)
	}
}

// Every shipped pack in one file says the same of every design as the pack does.
func TestOneFileJudgesAlike(t *testing.T) {
	packs := append(builtIn(t), pack(t, harborCounty))
	for _, e := range packs {
		flat, _ := flattened(t, e)
		require.Equal(t, len(e.Rules), len(flat.Rules), e.Head.ID)
		for seed := range uint64(5) {
			d, problems := design.Load("house", []byte(designtest.House(seed)))
			require.Empty(t, problems)
			for i, r := range e.Rules {
				require.Equal(t, r.ID, flat.Rules[i].ID)
				assert.True(t, rules.SameOutcomes(e, r, flat, flat.Rules[i]), r.ID)
				assert.Equal(t, judged(r.Ask(facts.Of(d))), judged(flat.Rules[i].Ask(facts.Of(d))), r.ID)
			}
		}
	}
}

func judged(list []rules.Judgement) []string {
	var texts []string
	for _, j := range list {
		texts = append(texts, string(j.Outcome)+": "+j.Message+"; "+j.Remedy+"; "+j.Reason)
	}
	return texts
}

// Base designs of one name from two packs stay apart, and texts of all kinds
// survive.
func TestAwkwardTexts(t *testing.T) {
	base := "\n[base.hut]\ndesign = '''\nformat = 1\n[project]\nname = \"NAME\"\nstage = \"permit\"\nunits = \"IP\"\n[dwelling]\n'''\n"
	head := "[pack]\nid = \"ID\"\ntitle = \"Invented \\\"quotes\\\" and \\\\ and 'both'\"\nunits = \"SI\"\ndefault_base = \"hut\"\nEXTENDS\n"
	rule := `
[limits.most_ID]
value = 5
basis = [{ document = "None", read = "practice", remark = "a \"remark\" with 'quotes'\tand a tab" }]

[[rule]]
id = "rooms-of-ID"
title = "Rooms"
topic = "rates"
level = "note"
open_level = "note"
due = "concept"
aliases = ["rooms-before-ID"]
require = """
dwelling.bedrooms <= limit.most_ID
  and project.name != 'it''s'"""
says = '''it's "so"'''
remedy = "mend '''it''' \\ now"
caution = "care"
basis = [{ document = "None", edition = "1", section = "2", read = "practice" }]

[[rule.sample]]
name = "how many is not said"
expect = "open"

[[rule.sample]]
name = "few"
expect = "pass"
with = "dwelling = { bedrooms = 5 }"
`
	rule = strings.ReplaceAll(rule, "'it''s'", "'its'")
	file := func(id, extends string) string {
		return strings.NewReplacer("ID", id, "NAME", "Hut of "+id, "EXTENDS", extends).Replace(head + base + rule)
	}
	files := map[string]string{"a.rules.toml": file("a", ""), "b.rules.toml": file("b", `extends = ["a.rules.toml"]`)}
	e, err := rules.NewLibrary(func(name string) ([]byte, error) { return []byte(files[name]), nil }).Pack("b.rules.toml")
	require.NoError(t, err)
	flat, text := flattened(t, e)
	assert.Contains(t, text, "[base.hut]\n# of a")
	assert.Contains(t, text, "[base.hut-2]\n# of b")
	for i, r := range e.Rules {
		got := flat.Rules[i]
		assert.Equal(t, r.Require, got.Require)
		assert.Equal(t, r.Says, got.Says)
		assert.Equal(t, r.Remedy, got.Remedy)
		assert.Equal(t, r.Aliases, got.Aliases)
		assert.Equal(t, r.OpenLevel, got.OpenLevel)
		assert.Equal(t, r.Basis, got.Basis)
		for _, run := range flat.Prove(got) {
			assert.True(t, run.Passed())
		}
	}
	assert.Equal(t, e.Head.Title, flat.Head.Title)
	assert.Equal(t, e.Limits["most_a"].Part.Basis, flat.Limits["most_a"].Part.Basis)
}

func TestJSON(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, packfmt.JSON(&b, pack(t, harborCounty)))
	var p struct {
		ID, Digest string
		Limits     []struct {
			Name, Pack string
			Value      any
		}
		Rules []struct {
			ID, Pack string
			Given    map[string]string `json:"changed_by"`
			Samples  []struct{ Pack string }
		}
		Off []struct{ Rule, Pack string } `json:"switched_off"`
	}
	require.NoError(t, json.Unmarshal(b.Bytes(), &p))
	assert.Equal(t, "harbor-county", p.ID)
	assert.Equal(t, pack(t, harborCounty).Digest(), p.Digest)
	found := 0
	for _, l := range p.Limits {
		if l.Name == "intake_to_exhaust" {
			found++
			assert.Equal(t, "harbor-county", l.Pack)
			assert.Equal(t, "12 ft", l.Value)
		}
	}
	for _, r := range p.Rules {
		assert.NotEmpty(t, r.Samples, r.ID)
		if r.ID == "control-marking" {
			found++
			assert.Equal(t, "irc-2021", r.Pack)
			assert.Equal(t, map[string]string{"basis": "harbor-county", "level": "harbor-county", "remedy": "harbor-county"}, r.Given)
		}
	}
	assert.Equal(t, 2, found)
	require.Len(t, p.Off, 1)
	assert.Equal(t, "combination-fitting-halves", p.Off[0].Rule)
}

func TestMarkdown(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, packfmt.Markdown(&b, pack(t, harborCounty)))
	text := b.String()
	for _, part := range []string{
		"# harbor-county: Harbor County ventilation amendments (invented) (2026)\n",
		"## openings\n", "  - [`intake-exhaust-distance`](#intake-exhaust-distance): ",
		"### intake-exhaust-distance\n",
		"From `irc-2021`, sample by `harbor-county`; altered by limit \"intake_to_exhaust\" of `harbor-county`.",
		"| `intake_to_exhaust` of `harbor-county` | 12 ft | Harbor County Code 2026 14.08.030 \\[seen\\] |",
		"| from 4 in | 100 | 25 | 10 | not permitted |",
		"| `combination-fitting-halves` | `harbor-county` | ",
	} {
		assert.Contains(t, text, part)
	}
}

// The catalogue in the repository is that of the packs in the repository, page by
// page, and its links lead somewhere.
func TestCatalogueIsCurrent(t *testing.T) {
	packs := builtIn(t)
	pages := packfmt.Catalogue(packs)
	if *update {
		require.NoError(t, os.RemoveAll("../catalogue"))
		require.NoError(t, os.Mkdir("../catalogue", 0o755))
		for name, text := range pages {
			require.NoError(t, os.WriteFile("../"+name, text, 0o644))
		}
	}
	for name, text := range pages {
		want, err := os.ReadFile("../" + name)
		require.NoError(t, err)
		require.True(t, bytes.Equal(want, text), "%s is not that of the packs: run go test ./rules/packfmt -update", name)
	}
	files, err := os.ReadDir("../catalogue")
	require.NoError(t, err)
	assert.Len(t, files, len(pages)-1, "no page is left of a pack that is gone")
	for _, e := range packs {
		for _, r := range e.Rules {
			assert.Contains(t, string(pages["catalogue/"+r.Pack+".md"]), "\n### "+r.ID+"\n")
			assert.Contains(t, string(pages["CATALOGUE.md"]), "(catalogue/"+r.Pack+".md#"+r.ID+")")
		}
	}
}

var pageLink = regexp.MustCompile(`\]\(([^)#]*)#([^)]+)\)`)

// Every link to a heading finds it.
func TestCatalogueLinks(t *testing.T) {
	pages := packfmt.Catalogue(builtIn(t))
	count := 0
	for name, text := range pages {
		for _, link := range pageLink.FindAllStringSubmatch(string(text), -1) {
			to := name
			if link[1] != "" {
				to = path.Join(path.Dir(name), link[1])
			}
			heading := regexp.QuoteMeta(link[2]) + "|table " + regexp.QuoteMeta(strings.TrimPrefix(link[2], "table-"))
			require.True(t, regexp.MustCompile(`(?m)^##+ (`+heading+`)$`).Match(pages[to]), "%s: %s", name, link[0])
			count++
		}
	}
	assert.Greater(t, count, 800)
}
