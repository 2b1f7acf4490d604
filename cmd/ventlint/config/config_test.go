package config

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

const every = `designs = ["designs", "more/**/*.vent.toml"]
except = ["designs/drafts"]
pack = ["irc-2021@sha256:0123456789ab", "county/local.rules.toml", "/packs/a.rules.toml@sha256:0123456789ab"]
format = "lines"
output = ["sarif=out/all.sarif", "junit=/reports/out.xml"]
fail-on = "warning"
baseline = "accepted.json"
fail-on-new = true
ignore-variances = false
color = "never"
`

func TestEveryKey(t *testing.T) {
	c, problems := Load("../ventlint.toml", []byte(every))
	require.Empty(t, problems)
	require.Equal(t, rules.Warning, *c.FailOn)
	require.Equal(t, Form("lines"), *c.Format)
	require.Equal(t, Color("never"), *c.Color)
	require.True(t, *c.FailOnNew)
	require.False(t, *c.IgnoreVariances)
	require.Equal(t, "../accepted.json", c.Path(*c.Baseline))
	require.Equal(t, "irc-2021@sha256:0123456789ab", c.PackName(c.Packs[0]))
	require.Equal(t, "../county/local.rules.toml", c.PackName(c.Packs[1]))
	require.Equal(t, "/packs/a.rules.toml@sha256:0123456789ab", c.PackName(c.Packs[2]))
	require.Equal(t, "sarif=../out/all.sarif", c.OutputName(c.Outputs[0]))
	require.Equal(t, "junit=/reports/out.xml", c.OutputName(c.Outputs[1]))
	require.Equal(t, 41, c.Packs[1].Position().Column, "each entry has a place")
}

func TestAnEmptyFileSaysNothing(t *testing.T) {
	c, problems := Load("ventlint.toml", nil)
	require.Empty(t, problems)
	require.Nil(t, c.FailOn)
	require.Empty(t, c.Packs)
}

func TestMistakes(t *testing.T) {
	for source, want := range map[string]string{
		`fail_on = "error"`:                       `1:1: unknown key "fail_on"; did you mean "fail-on"?`,
		`fail-on = "errors"`:                      `1:11: found "errors", expected one of "error", "warning" or "note"; did you mean "error"?`,
		`format = "sarf"`:                         `1:10: found "sarf", expected one of "text", "markdown", "html", "lines", "json", "csv", "sarif", "sarif-evidence", "junit", "annotations" or "gitlab"; did you mean "sarif"?`,
		`pack = "irc-2021"`:                       `1:8: found "irc-2021", expected a list; write ["irc-2021"]`,
		`pack = []`:                               `1:8: found an empty list, expected one entry or more; leave the key out`,
		`pack = [2021]`:                           `1:9: found 2021, expected text in quotes; `,
		`output = ["out.sarif"]`:                  `1:11: found "out.sarif", expected a form and a file such as "sarif=out.sarif"; `,
		`output = ["sarif="]`:                     `1:11: found "sarif=", expected a form and a file such as "sarif=out.sarif"; `,
		`output = ["sarif=a", "json=b/../a"]`:     `1:22: found the file "a" twice, expected a file for each report; `,
		`designs = ["a\\b"]`:                      `1:12: found a backslash in "a\\b", expected / between folders; `,
		`designs = [" "]`:                         `1:12: found an empty text, expected a design, a folder, or a pattern such as "designs/**"; `,
		`designs = ["a/[b"]`:                      `1:12: found "a/[b", which has a [ without its ]; `,
		`designs = ["a**/b"]`:                     `1:12: found ** beside other characters in "a**/b", expected it between slashes alone; `,
		`designs = ["*/../b"]`:                    `1:12: found .. after a wildcard in "*/../b", expected it before; `,
		`except = ["a"]`:                          `1:1: found except without designs, from which it takes; `,
		`baseline = ""`:                           `1:12: found an empty text, expected the report of an earlier review; `,
		`fail-on-new = "true"`:                    `1:15: found "true", expected true or false; write true without quotes`,
		`color = "off"`:                           `1:9: found "off", expected one of "auto", "always" or "never"; `,
		`date = "2026-03-31"`:                     `1:1: unknown key "date"; expected one of "designs", "except", "pack", "format", "output", "fail-on", "baseline", "fail-on-new", "ignore-variances" or "color"`,
		"pack = [\"irc-2021\"\n":                  `1:8: the list that begins here is not closed`,
		"[review]\nfail-on = \"error\"":           `1:2: unknown key "review"; `,
		"color = \"auto\"\ncolor = \"never\"":     `2:1: `,
		`pack = ["irc-2012"]`:                     `1:9: no pack "irc-2012", expected one that `,
		`output = ["sarf=out.sarif"]`:             `1:11: unknown format "sarf", expected one of `,
		`pack = ["local.toml@sha256:0123456789"]`: `1:9: no pack "local.toml", expected one that `,
	} {
		c, problems := Load("ventlint.toml", []byte(source))
		require.Nil(t, c, source)
		require.Len(t, problems, 1, source)
		p := problems[0]
		require.Contains(t, fmt.Sprintf("%d:%d: %s; %s", p.Position.Line, p.Position.Column, p.Message, p.Hint), want, source)
	}
}

func TestAllMistakesAtOnceInFileOrder(t *testing.T) {
	_, problems := Load("ventlint.toml", []byte("output = [\"sarf=a\", 3]\ncolour = 1\npack = [\"irc-2O21\"]\nbaseline = \" \"\nfail-on = 2\n"))
	var at []int
	for _, p := range problems {
		at = append(at, p.Position.Line)
	}
	require.Equal(t, []int{1, 1, 2, 3, 4, 5}, at)
	require.Equal(t, `did you mean "sarif"?`, problems[0].Hint)
	require.Equal(t, `did you mean "irc-2021"?`, problems[3].Hint)
}

// tree makes empty files below a new working folder.
func tree(t *testing.T, names ...string) string {
	t.Helper()
	folder := t.TempDir()
	for _, name := range names {
		name = filepath.Join(folder, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, nil, 0o644))
	}
	t.Chdir(folder)
	return folder
}

func TestFind(t *testing.T) {
	folder := tree(t, "ventlint.toml", "lots/.git/HEAD", "lots/row/a.vent.toml", "worktree/.git", "worktree/b/c.vent.toml", "deep/er/a.vent.toml")
	for from, want := range map[string]string{
		".": "ventlint.toml", "deep/er": "ventlint.toml", "lots/row": "", "lots": "", "worktree/b": "",
	} {
		found, err := Find(filepath.Join(folder, from))
		require.NoError(t, err)
		if want != "" {
			want = filepath.Join(folder, want)
		}
		require.Equal(t, want, found, from)
	}
	require.NoError(t, os.Remove(filepath.Join(folder, "ventlint.toml")))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "lots", FileName), nil, 0o644))
	found, err := Find(filepath.Join(folder, "lots", "row"))
	require.NoError(t, err)
	require.Equal(t, filepath.Join(folder, "lots", FileName), found, "beside the mark of the repository")
}

func TestSelect(t *testing.T) {
	tree(t, "a.vent.toml", "a.rules.toml", "designs/b.vent.toml", "designs/x/c.vent.toml", "designs/x/y/d.vent.toml",
		"designs/drafts/e.vent.toml", ".git/f.vent.toml", ".more/h.vent.toml", "[1]/g.vent.toml", "sub/ventlint.toml")
	for _, c := range []struct {
		file, designs, except string
		want                  []string
	}{
		{"ventlint.toml", `"a.vent.toml"`, ``, []string{"a.vent.toml"}},
		{"ventlint.toml", `"designs"`, `"designs/drafts/"`, []string{"designs/b.vent.toml", "designs/x/c.vent.toml", "designs/x/y/d.vent.toml"}},
		{"ventlint.toml", `"./designs/"`, `"**/drafts", "**/c.*"`, []string{"designs/b.vent.toml", "designs/x/y/d.vent.toml"}},
		{"ventlint.toml", `"designs/*.vent.toml", "designs/b.vent.toml"`, ``, []string{"designs/b.vent.toml"}},
		{"ventlint.toml", `"designs/*"`, `"designs/[dx]*"`, []string{"designs/b.vent.toml"}},
		{"ventlint.toml", `"designs/**/?.vent.toml"`, `"designs/*/*"`, []string{"designs/b.vent.toml"}},
		{"ventlint.toml", `"**/x/**/*.vent.toml"`, ``, []string{"designs/x/c.vent.toml", "designs/x/y/d.vent.toml"}},
		{"ventlint.toml", `"."`, `"designs"`, []string{"[1]/g.vent.toml", "a.vent.toml"}},
		{"ventlint.toml", `".more/*"`, ``, []string{".more/h.vent.toml"}},
		{"sub/ventlint.toml", `"../designs/x"`, `"../**/y"`, []string{"designs/x/c.vent.toml"}},
		{"[1]/ventlint.toml", `"*"`, ``, []string{"[1]/g.vent.toml"}},
	} {
		source := "designs = [" + c.designs + "]\n"
		if c.except != "" {
			source += "except = [" + c.except + "]\n"
		}
		config, problems := Load(c.file, []byte(source))
		require.Empty(t, problems, source)
		got, problems := config.Select()
		require.Empty(t, problems, source)
		require.Equal(t, c.want, got, source)
	}
}

func TestSelectThroughALink(t *testing.T) {
	folder := tree(t, "kept/designs/a.vent.toml", "work/here")
	require.NoError(t, os.Symlink(filepath.Join(folder, "kept"), "linked"))
	c, problems := Load("ventlint.toml", []byte("designs = ['linked/designs', 'linked/**']"))
	require.Empty(t, problems)
	got, problems := c.Select()
	require.Empty(t, problems)
	require.Equal(t, []string{"linked/designs/a.vent.toml"}, got)
}

func TestSelectFromOutside(t *testing.T) {
	folder := tree(t, "designs/a.vent.toml", "drafts/b.vent.toml", "work/here")
	t.Chdir(filepath.Join(folder, "work"))
	c, problems := Load("../ventlint.toml", []byte("designs = ['**']\nexcept = ['drafts']"))
	require.Empty(t, problems)
	got, problems := c.Select()
	require.Empty(t, problems)
	require.Equal(t, []string{"../designs/a.vent.toml"}, got)

	c, problems = Load("../ventlint.toml", []byte(fmt.Sprintf("designs = [%q]", filepath.ToSlash(folder)+"/d*")))
	require.Empty(t, problems)
	got, problems = c.Select()
	require.Empty(t, problems)
	require.Len(t, got, 2, "%v", got)
}

func TestPatternsThatSelectNothing(t *testing.T) {
	tree(t, "designs/a.vent.toml", "designs/house.toml")
	for source, want := range map[string]string{
		"designs = [\"design/**\"]":                  "1:12: no design at \"design/**\", expected files named *.vent.toml",
		"designs = [\"designs/house.toml\"]":         "1:12: no design at \"designs/house.toml\", expected files named *.vent.toml",
		"designs = [\"designs\"]\nexcept = [\"**\"]": "2:10: found patterns that leave out every design, expected some to remain",
	} {
		c, problems := Load("ventlint.toml", []byte(source))
		require.Empty(t, problems, source)
		_, problems = c.Select()
		require.Len(t, problems, 1, source)
		p := problems[0]
		require.Equal(t, want, fmt.Sprintf("%d:%d: %s", p.Position.Line, p.Position.Column, p.Message), source)
	}
}
