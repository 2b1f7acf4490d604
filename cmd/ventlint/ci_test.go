package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

const (
	reviewAction   = ".github/actions/review/action.yml"
	reviewWorkflow = ".github/workflows/review.yml"
	commitHooks    = ".pre-commit-hooks.yaml"
)

// step is one step of a job or action.
type step struct {
	ID, Uses, Run, Shell, If string
	With, Env                map[string]any
}

type workflow struct {
	On   map[string]any
	Jobs map[string]struct{ Steps []step }
}

type action struct {
	Inputs map[string]any
	Runs   struct{ Steps []step }
}

type hook struct{ ID, Entry, Language, Files string }

// fromYAML reads a file of the repository.
func fromYAML(t *testing.T, path string, into any) {
	t.Helper()
	source, err := os.ReadFile(filepath.Join(root, path))
	require.NoError(t, err)
	require.NoError(t, yaml.Unmarshal(source, into), path)
}

func workflows(t *testing.T) map[string]workflow {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(root, ".github/workflows/*.yml"))
	require.NoError(t, err)
	all := map[string]workflow{}
	for _, path := range paths {
		var w workflow
		name, err := filepath.Rel(root, path)
		require.NoError(t, err)
		fromYAML(t, name, &w)
		require.NotEmpty(t, w.Jobs, name)
		all[filepath.ToSlash(name)] = w
	}
	return all
}

// steps lists the steps of all workflows and of the action.
func steps(t *testing.T) []step {
	t.Helper()
	var a action
	fromYAML(t, reviewAction, &a)
	list := a.Runs.Steps
	for _, w := range workflows(t) {
		for _, job := range w.Jobs {
			require.NotEmpty(t, job.Steps)
			list = append(list, job.Steps...)
		}
	}
	return list
}

// What others run is pinned by commit; what is run of this repository is there, and
// gets only what it takes.
func TestUsedActions(t *testing.T) {
	pinned := regexp.MustCompile(`^[a-z]+/[a-z/-]+@[0-9a-f]{40}$`)
	var taken action
	fromYAML(t, reviewAction, &taken)
	own := 0
	for _, s := range steps(t) {
		require.True(t, (s.Uses == "") != (s.Run == ""), "a step either uses or runs: %+v", s)
		if path, ok := strings.CutPrefix(s.Uses, "./.ventlint/"); ok {
			require.FileExists(t, filepath.Join(root, path, "action.yml"))
			for input := range s.With {
				require.Contains(t, taken.Inputs, input)
			}
			own++
		} else if s.Uses != "" {
			require.Regexp(t, pinned, s.Uses)
		}
	}
	require.Equal(t, 1, own)
}

// called is a call of the program in a script, to the end of the line.
var called = regexp.MustCompile(`(?m)(?:^|[ /])ventlint"? ([a-z]+)((?: .*)?)$`)

// Each command and flag that the files for pipelines give is one of the program's.
func TestPipelinesCallWhatThereIs(t *testing.T) {
	var hooks []hook
	fromYAML(t, commitHooks, &hooks)
	require.Len(t, hooks, 2)
	var scripts []string
	for _, h := range hooks {
		require.Equal(t, "golang", h.Language)
		regexp.MustCompile(h.Files)
		scripts = append(scripts, h.Entry)
	}
	for _, s := range steps(t) {
		scripts = append(scripts, s.Run)
	}
	calls := 0
	for _, m := range called.FindAllStringSubmatch(strings.Join(scripts, "\n"), -1) {
		command, rest, err := commands(machine{}).Find([]string{m[1]})
		require.NoError(t, err, m[0])
		require.Empty(t, rest, m[0])
		for _, flag := range regexp.MustCompile(` --([a-z-]+)`).FindAllStringSubmatch(m[2], -1) {
			require.NotNil(t, command.Flags().Lookup(flag[1]), m[0])
		}
		calls++
	}
	require.Equal(t, 3, calls, "two hooks and the action")
}

// Inputs that a workflow or action reads are those that it declares.
func TestInputsAreDeclared(t *testing.T) {
	var a action
	fromYAML(t, reviewAction, &a)
	declared := map[string]map[string]any{reviewAction: a.Inputs}
	call := workflows(t)[reviewWorkflow].On["workflow_call"].(map[string]any)
	declared[reviewWorkflow] = call["inputs"].(map[string]any)
	for path, inputs := range declared {
		source, err := os.ReadFile(filepath.Join(root, path))
		require.NoError(t, err)
		read := map[string]bool{}
		for _, m := range regexp.MustCompile(`inputs\.([a-z]+)`).FindAllStringSubmatch(string(source), -1) {
			require.Contains(t, inputs, m[1], path)
			read[m[1]] = true
		}
		require.Len(t, read, len(inputs), "%s: every input counts", path)
	}
}

// The script of the action reviews what it is given, or what ventlint.toml says,
// leaves a report for the upload, and ends as the program does.
func TestActionReviews(t *testing.T) {
	shell, err := exec.LookPath("bash")
	if err != nil {
		t.Skip("no bash here, which the action needs")
	}
	program, err := exec.LookPath("ventlint")
	require.NoError(t, err)
	for _, c := range []struct {
		arguments, settings string
		code                int
		report              bool
	}{
		{"--fail-on\nerror\n\n--pack\nharbor-county.rules.toml\nsound.vent.toml\n", "", clean, true},
		{"--pack=harbor-county.rules.toml\nfaulty.vent.toml", "", found, true},
		{"", "designs = ['f*']\npack = ['harbor-county.rules.toml']\n", found, true},
		{"broken.vent.toml", "", couldNot, true},
		{"", "", couldNot, false},
	} {
		folder := t.TempDir()
		require.NoError(t, os.CopyFS(folder, os.DirFS("testdata/story")))
		require.NoError(t, os.Symlink(program, filepath.Join(folder, "ventlint")))
		if c.settings != "" {
			require.NoError(t, os.WriteFile(filepath.Join(folder, "ventlint.toml"), []byte(c.settings), 0o644))
		}
		script := exec.Command(shell, "--noprofile", "--norc", "-e", "-o", "pipefail", "-c", actionScript(t))
		script.Dir = folder
		script.Env = append(os.Environ(), "ARGUMENTS="+c.arguments, "RUNNER_TEMP="+folder, "GITHUB_OUTPUT="+filepath.Join(folder, "given"))
		said, _ := script.CombinedOutput()
		require.Equal(t, c.code, script.ProcessState.ExitCode(), "%s", said)
		given, _ := os.ReadFile(filepath.Join(folder, "given"))
		require.Equal(t, c.report, len(given) > 0, "%s", said)
		if c.report {
			require.Equal(t, "sarif="+filepath.Join(folder, "ventlint.sarif")+"\n", string(given))
		}
	}
}

func actionScript(t *testing.T) string {
	t.Helper()
	var a action
	fromYAML(t, reviewAction, &a)
	for _, s := range a.Runs.Steps {
		if s.ID == "review" {
			return s.Run
		}
	}
	require.Fail(t, "the action has no step that reviews")
	return ""
}
