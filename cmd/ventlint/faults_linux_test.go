package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The program as a process, with what can go wrong around it: pipes, disks, signals,
// other runs. TestMain puts it on the path.

// process prepares a run in the root of the repository.
func process(args ...string) (*exec.Cmd, *bytes.Buffer) {
	c := exec.Command("ventlint", args...)
	c.Dir = root
	var stderr bytes.Buffer
	c.Stderr = &stderr
	return c, &stderr
}

func exitCode(t *testing.T, err error) int {
	t.Helper()
	if err == nil {
		return 0
	}
	var exit *exec.ExitError
	require.ErrorAs(t, err, &exit)
	return exit.ExitCode()
}

// left lists the files of a folder.
func left(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	names := []string{}
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

// whole is a report as an undisturbed run writes it.
func whole(t *testing.T, design string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "out.json")
	c, _ := process("review", "--date", "2026-03-31", "--output", "json="+path, design)
	exitCode(t, c.Run())
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NotEmpty(t, text)
	return string(text)
}

// A reader that closes the pipe, as "head" does, loses what it did not read; the
// exit code and the files are those of any other run.
func TestClosedPipe(t *testing.T) {
	folder := t.TempDir()
	c, stderr := process("review", "--date", "2026-03-31", "--format", "json", "--output", "json="+folder+"/out.json", faults)
	pipe, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	line, err := bufio.NewReaderSize(pipe, 16).ReadString('\n')
	require.NoError(t, err)
	assert.Equal(t, "{\n", line)
	require.NoError(t, pipe.Close())
	assert.Equal(t, found, exitCode(t, c.Wait()))
	assert.Empty(t, stderr.String())
	text, err := os.ReadFile(folder + "/out.json")
	require.NoError(t, err)
	assert.True(t, whole(t, faults) == string(text), "the file is not whole")
	assert.Equal(t, []string{"out.json"}, left(t, folder))
}

// A report that does not fit on standard output is a failure, and writes no file.
func TestFullStandardOutput(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("no device that is always full: ", err)
	}
	defer full.Close()
	for _, args := range [][]string{{"review", faults}, {"worksheet", houseIP}, {"packs"}, {"draw", houseIP}, {"impact", "--from", "irc-2018", "--to", "irc-2021", houseIP}, {"version"},
		{}, {"help"}, {"help", "review"}, {"review", "--help"}, {"cite", "intake-exhaust-distance"}, {"completion", "bash"}, {"starter"}, {"config"}, {"schema", "design"}, {"prove", "minnesota"}} {
		folder := t.TempDir()
		if len(args) > 0 && args[0] == "review" {
			args = append(args, "--output", "json="+folder+"/out.json")
		}
		c, stderr := process(args...)
		c.Stdout = full
		assert.Equal(t, couldNot, exitCode(t, c.Run()), "%v", args)
		assert.Contains(t, stderr.String(), "no space left on device", "%v", args)
		assert.Empty(t, left(t, folder))
	}
}

// A full disk keeps what a file had, and no part of a new one.
func TestFullDisk(t *testing.T) {
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("cannot mount a small disk: ", err)
	}
	defer func() { assert.NoError(t, syscall.Unmount(disk, 0)) }()
	require.NoError(t, os.WriteFile(disk+"/out.html", []byte("earlier"), 0o644))
	c, stderr := process("review", "--output", "lines="+disk+"/out.lines", "--output", "html="+disk+"/out.html", houseIP)
	assert.Equal(t, couldNot, exitCode(t, c.Run()))
	assert.Regexp(t, `^ventlint: .*out\.html.*: no space left on device\n$`, stderr.String())
	text, err := os.ReadFile(disk + "/out.html")
	require.NoError(t, err)
	assert.Equal(t, "earlier", string(text))
	assert.Equal(t, []string{"out.html"}, left(t, disk))
}

// stuck starts a review that has staged its file and waits for a reader of its
// standard output.
func stuck(t *testing.T, folder string) (*exec.Cmd, *bytes.Buffer) {
	t.Helper()
	c, stderr := process("review", "--format", "json", "--output", "json="+folder+"/out.json", houseIP)
	pipe, err := c.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, c.Start())
	_, err = io.ReadFull(pipe, make([]byte, 1)) // standard output comes after the files
	require.NoError(t, err)
	return c, stderr
}

// An interrupted run says so, and leaves things as they were.
func TestInterrupt(t *testing.T) {
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		folder := t.TempDir()
		require.NoError(t, os.WriteFile(folder+"/out.json", []byte("earlier"), 0o644))
		c, stderr := stuck(t, folder)
		require.Len(t, left(t, folder), 2, "one is staged")
		require.NoError(t, c.Process.Signal(signal))
		assert.Equal(t, couldNot, exitCode(t, c.Wait()), signal)
		assert.Equal(t, "ventlint: interrupted: what was not yet written is not written\n", stderr.String())
		assert.Equal(t, []string{"out.json"}, left(t, folder))
		text, err := os.ReadFile(folder + "/out.json")
		require.NoError(t, err)
		assert.True(t, string(text) == "earlier", "the file was written")
	}
}

// So is one that waits for a design.
func TestInterruptWhileReading(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "late.vent.toml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o644))
	for _, args := range [][]string{{"review", pipe}, {"impact", "--from", "irc-2018", "--to", "irc-2021", pipe}} {
		c, stderr := process(args...)
		var stdout bytes.Buffer
		c.Stdout = &stdout
		require.NoError(t, c.Start())
		late, err := os.OpenFile(pipe, os.O_WRONLY, 0) // once the program reads
		require.NoError(t, err)
		require.NoError(t, c.Process.Signal(os.Interrupt))
		assert.Equal(t, couldNot, exitCode(t, c.Wait()), "%v", args)
		require.NoError(t, late.Close())
		assert.Empty(t, stdout.String())
		assert.Contains(t, stderr.String(), "interrupted")
	}
}

// A run that is killed at any moment leaves the earlier file or the new one.
func TestKilled(t *testing.T) {
	rounds := 12
	if testing.Short() {
		rounds = 4
	}
	folder := t.TempDir()
	out := folder + "/out.json"
	seen := map[string]int{}
	for i := range rounds {
		require.NoError(t, os.WriteFile(out, []byte("earlier"), 0o644))
		c, _ := process("review", "--date", "2026-03-31", "--format", "lines", "--output", "json="+out, faults)
		require.NoError(t, c.Start())
		time.Sleep(time.Duration(i) * 40 * time.Millisecond)
		_ = c.Process.Kill()
		_ = c.Wait()
		text, err := os.ReadFile(out)
		require.NoError(t, err)
		seen[string(text)]++
	}
	later := whole(t, faults)
	for text, n := range seen {
		assert.True(t, text == "earlier" || text == later, "%d files of %d bytes", n, len(text))
	}
}

// Runs that write the same file at once leave it whole.
func TestRunsAtOnce(t *testing.T) {
	folder := t.TempDir()
	var runs []*exec.Cmd
	for range 6 {
		c, _ := process("review", "--date", "2026-03-31", "--output", "json="+folder+"/out.json", faults)
		require.NoError(t, c.Start())
		runs = append(runs, c)
	}
	for _, c := range runs {
		assert.Equal(t, found, exitCode(t, c.Wait()))
	}
	text, err := os.ReadFile(folder + "/out.json")
	require.NoError(t, err)
	assert.True(t, whole(t, faults) == string(text), "the file is not whole")
	assert.Equal(t, []string{"out.json"}, left(t, folder))
}

// A folder that cannot be read ends the run: what is in it is not known. Nothing is
// unreadable for root, who runs the program as nobody.
func TestUnreadableFolder(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.Chmod(filepath.Dir(folder), 0o755))
	copyDesign(t, houseIP, folder+"/house.vent.toml")
	require.NoError(t, os.Mkdir(folder+"/closed", 0))
	c, stderr := process("review", folder)
	if os.Getuid() == 0 {
		const nobody = 65534
		program, err := os.ReadFile(c.Path)
		require.NoError(t, err)
		c.Path, c.Dir = folder+"/ventlint", folder
		require.NoError(t, os.WriteFile(c.Path, program, 0o755))
		c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	err := c.Run()
	if errors.Is(err, syscall.EACCES) || errors.Is(err, syscall.EPERM) {
		t.Skip("cannot run the program as nobody: ", err)
	}
	assert.Equal(t, couldNot, exitCode(t, err))
	assert.Equal(t, "ventlint: "+folder+"/closed: permission denied\n", stderr.String())
}

// A design that vanishes is told, and the others are reviewed.
func TestVanishedDesign(t *testing.T) {
	folder := t.TempDir()
	copyDesign(t, faults, folder+"/faulty.vent.toml")
	copyDesign(t, houseIP, folder+"/house.vent.toml")
	inputs, err := find([]string{folder}, "")
	require.NoError(t, err)
	require.Len(t, inputs, 2)
	require.NoError(t, os.Remove(folder+"/house.vent.toml"))
	_, err = inputs[1].read(nil)
	assert.ErrorContains(t, err, "no such file")
	text, err := inputs[0].read(nil)
	assert.NoError(t, err)
	assert.NotEmpty(t, text)

	require.NoError(t, os.Symlink("nowhere", folder+"/gone.vent.toml"))
	c, stderr := process("review", folder+"/gone.vent.toml", folder+"/faulty.vent.toml")
	assert.Equal(t, couldNot, exitCode(t, c.Run()))
	assert.Contains(t, stderr.String(), "gone.vent.toml: no such file")
}

// Links inside a folder are not followed, also one that takes the place of a design
// after the folder was searched; a folder may itself be named by a link.
func TestLinksLeadNowhere(t *testing.T) {
	folder, outside := t.TempDir(), t.TempDir()
	copyDesign(t, houseIP, folder+"/in/house.vent.toml")
	copyDesign(t, faults, outside+"/faulty.vent.toml")
	require.NoError(t, os.Symlink(outside, folder+"/folder"))
	require.NoError(t, os.Symlink(outside+"/faulty.vent.toml", folder+"/file.vent.toml"))
	require.NoError(t, os.Symlink(folder, outside+"/named"))
	for _, named := range []string{folder, folder + "/", outside + "/named"} {
		inputs, err := find([]string{named}, "")
		require.NoError(t, err)
		require.Len(t, inputs, 1)
		assert.Equal(t, strings.TrimSuffix(named, "/")+"/in/house.vent.toml", inputs[0].name)
		_, err = inputs[0].read(nil)
		assert.NoError(t, err)
	}
	inputs, err := find([]string{folder}, "")
	require.NoError(t, err)
	require.NoError(t, os.Remove(folder+"/in/house.vent.toml"))
	require.NoError(t, os.Symlink(outside+"/faulty.vent.toml", folder+"/in/house.vent.toml"))
	_, err = inputs[0].read(nil)
	assert.ErrorContains(t, err, "escapes")
}

// No report takes the place of a design or pack of the review, by whatever name it
// is called.
func TestOutputSparesWhatIsRead(t *testing.T) {
	folder := t.TempDir()
	design, pack := folder+"/house.vent.toml", folder+"/harbor-county.rules.toml"
	copyDesign(t, houseIP, design)
	copyDesign(t, "cmd/ventlint/testdata/story/harbor-county.rules.toml", pack)
	require.NoError(t, os.Symlink(design, folder+"/link"))
	require.NoError(t, os.Link(design, folder+"/twin"))
	for _, out := range []string{design, folder + "/link", folder + "/twin", pack} {
		c, stderr := process("review", "--pack", pack, "--output", "json="+out, folder)
		c.Dir = folder
		c.Args[len(c.Args)-1] = "."
		assert.Equal(t, couldNot, exitCode(t, c.Run()), out)
		assert.Contains(t, stderr.String(), "of this review", out)
	}
	text, err := os.ReadFile(design)
	require.NoError(t, err)
	assert.Contains(t, string(text), "format = 1")
}

func copyDesign(t *testing.T, from, to string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, from))
	require.NoError(t, err)
	require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
	require.NoError(t, os.WriteFile(to, text, 0o644))
}
