package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/checker/document/documenttest"
)

// What a hostile file may take of the whole process. Seconds are told and not asserted,
// since other work slows a machine: only what hangs fails.
const (
	mostMegabytes = 256
	hangs         = 60 * time.Second
)

// crowd writes a table over and over, with its number.
func crowd(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

const (
	lot  = "format = 1\n[project]\nname = \"hostile\"\nstage = \"final\"\nunits = \"IP\"\n[dwelling]\nfloor_area = \"2000 ft2\"\nbedrooms = 3\nelevation = \"0 ft\"\n"
	erv  = "[[ventilator]]\nid = \"v\"\nkind = \"erv\"\nsupply_flow = \"100 cfm\"\nextract_flow = \"100 cfm\"\n"
	duct = "material = \"pvc\"\ndiameter = \"6 in\"\nlength = \"3 ft\"\nelbows = 0\nflow = \"1 cfm\"\n"
	end  = "[[opening]]\nid = \"o\"\nkind = \"intake\"\nloss = \"1 Pa\"\nloss_at = \"100 cfm\"\n[[duct]]\nid = \"oa\"\nairstream = \"outdoor-air\"\nfrom = \"o\"\nto = \"v\"\n" + duct

	openingOnWall = "[[opening]]\nid = \"o%[1]d\"\nkind = \"exhaust\"\nwall = \"w%[1]d\"\nfrom_left = \"60 mm\"\nabove_grade = \"1 m\"\ndiameter = \"20 mm\"\n"
)

// ring is a footprint of many walls; a jagged one has a corner inward at every other.
func ring(n int, jagged bool) string {
	at := func(i int) string {
		radius := 100.0
		if jagged && i%2 == 1 {
			radius = 50
		}
		sin, cos := math.Sincos(2 * math.Pi * float64(i%n) / float64(n))
		return fmt.Sprintf("[\"%.4f m\", \"%.4f m\"]", radius*cos, radius*sin)
	}
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "[[wall]]\nid = \"w%d\"\nfrom = %s\nto = %s\ngrade = \"0 m\"\nheight = \"%d m\"\n", i, at(i), at(i+1), 3+i%4)
	}
	return b.String()
}

// outlines are jagged areas of many points, all over one another.
func outlines(n, points int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "[[source]]\nid = \"a%d\"\nkind = \"driveway\"\nlevel = \"0 m\"\noutline = [", i)
		for k := range points {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(points))
			radius := 40 + 20*float64(k%2)
			fmt.Fprintf(&b, "[\"%.2f m\", \"%.2f m\"],", radius*cos+float64(i), radius*sin)
		}
		b.WriteString("]\n")
	}
	return b.String()
}

// chain is ducts one after the other.
func chain(n int) string {
	var b strings.Builder
	b.WriteString("[[duct]]\nid = \"d0\"\nairstream = \"supply-air\"\nfrom = \"v\"\n" + duct)
	for i := range n {
		fmt.Fprintf(&b, "[[duct]]\nid = \"d%d\"\nairstream = \"supply-air\"\nfrom = \"d%d\"\n"+duct, i+1, i)
	}
	return b.String()
}

var hostileDesigns = map[string]string{
	"a star of ducts": lot + erv + end + crowd(299, "[[duct]]\nid = \"d%[1]d\"\nairstream = \"supply-air\"\nfrom = \"v\"\nto = \"t%[1]d\"\n"+duct+
		"[[terminal]]\nid = \"t%[1]d\"\nairstream = \"supply-air\"\nflow = \"1 cfm\"\nloss = \"1 Pa\"\nloss_at = \"1 cfm\"\n"),
	"a chain of ducts":   lot + erv + end + chain(290),
	"a crowd of ducts":   lot + crowd(3000, "[[duct]]\nid = \"d%d\"\nairstream = \"supply-air\"\n"),
	"openings x sources": lot + crowd(200, "[[opening]]\nid = \"i%[1]d\"\nkind = \"intake\"\n[[opening]]\nid = \"e%[1]d\"\nkind = \"exhaust\"\n") + crowd(2000, "[[source]]\nid = \"s%d\"\nkind = \"flue\"\n"),
	"a crowd in places": lot + crowd(500, "[[opening]]\nid = \"i%[1]d\"\nkind = \"intake\"\nat = [\"%[1]d m\", \"3 m\"]\nlevel = \"1 m\"\ndiameter = \"1 m\"\n") +
		crowd(2000, "[[source]]\nid = \"s%[1]d\"\nkind = \"flue\"\nat = [\"%[1]d m\", \"-90 m\"]\nlevel = \"2 m\"\npoint = true\n"),
	"outlines":           lot + crowd(500, "[[opening]]\nid = \"i%[1]d\"\nkind = \"intake\"\nat = [\"%[1]d m\", \"3 m\"]\nlevel = \"1 m\"\ndiameter = \"1 m\"\n") + outlines(20, 190),
	"a round house":      lot + ring(1000, false) + crowd(40, openingOnWall),
	"a jagged house":     lot + ring(1000, true) + crowd(60, openingOnWall) + "[[source]]\nid = \"s\"\nkind = \"flue\"\nat = [\"-200 m\", \"0 m\"]\nlevel = \"1 m\"\ndiameter = \"1 m\"\n",
	"a long text":        strings.Replace(lot, "hostile", strings.Repeat("A", 900_000), 1) + erv,
	"long ids":           lot + crowd(200, "[[source]]\nid = \""+strings.Repeat("b", 2000)+"%d\"\nkind = \"flue\"\n"),
	"fan curves":         lot + crowd(30, "[[ventilator]]\nid = \"v%d\"\nkind = \"erv\"\nsupply_flow = \"100 cfm\"\nsupply_fan = ["+strings.Repeat("{ flow = \"1 cfm\", pressure = \"1 Pa\" }, ", 300)+"]\n"),
	"figures at the end": lot + "[[source]]\nid = \"s\"\nkind = \"flue\"\nat = [\"-9999 m\", \"9999 m\"]\nlevel = \"9999 m\"\ndiameter = \"0.0000001 mm\"\n" + ring(4, false),
	"more than is read":  lot + strings.Repeat("#", 1<<20),
}

// Hostile designs end with a result or a clear error, within memory.
func TestHostileDesigns(t *testing.T) {
	for name, text := range hostileDesigns {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "hostile.vent.toml")
			require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
			withinBounds(t, name+" as json", "review", "--format", "json", path)
			if testing.Short() {
				return
			}
			withinBounds(t, name+" as html", "review", "--format", "html", path)
			withinBounds(t, name+", worksheet", "worksheet", path)
		})
	}
}

const aRule = "[[rule]]\nid = \"r%d\"\ntitle = \"x\"\ntopic = \"openings\"\nlevel = \"error\"\ndue = \"concept\"\n"

// pairRule compares every opening with every other.
const pairRule = aRule + `each = { a = "openings", b = "openings", c = "openings" }
require = 'all(openings, let x = #; any(openings, .id == x.id or .id == a.id)) and a.kind == b.kind and b.kind == c.kind'
says = "{named(a)} {named(b)}"
remedy = "x"
basis = [{ document = "x", read = "practice" }]
`

// plainRule is true of every house.
const plainRule = aRule + `require = 'len(openings) >= 0'
says = "x"
remedy = "x"
basis = [{ document = "x", read = "practice" }]
`

// Hostile packs end so as well.
func TestHostilePacks(t *testing.T) {
	head := "[pack]\nid = \"hostile\"\ntitle = \"Hostile (invented)\"\nunits = \"IP\"\n"
	design := filepath.Join(t.TempDir(), "house.vent.toml")
	require.NoError(t, os.WriteFile(design, []byte(lot+crowd(200, "[[opening]]\nid = \"o%d\"\nkind = \"intake\"\n")), 0o644))
	for name, text := range map[string]string{
		"rules over triples": head + crowd(1000, pairRule),
		"plain rules":        head + crowd(2000, plainRule),
		"a long expression":  head + strings.Replace(fmt.Sprintf(plainRule, 1), "len(openings) >= 0", strings.Repeat("(", 500_000), 1),
		"long texts":         head + strings.Replace(fmt.Sprintf(plainRule, 1), `says = "x"`, `says = "`+strings.Repeat("{named(a)}", 90_000)+`"`, 1),
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "hostile.rules.toml")
			require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
			withinBounds(t, name, "review", "--format", "json", "--pack", path, design)
		})
	}
}

// withinBounds runs the program, which must end in time, within memory, with an
// exit code of its own and something said on standard output, which it gives, or
// beside it.
func withinBounds(t *testing.T, name string, args ...string) string {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), hangs)
	defer cancel()
	c := exec.CommandContext(ctx, "ventlint", args...)
	var stdout, stderr bytes.Buffer
	c.Stdout, c.Stderr = &stdout, &stderr
	code, megabytes := peakOf(t, c)
	require.NoError(t, ctx.Err(), "%s hangs", name)
	seconds := (c.ProcessState.UserTime() + c.ProcessState.SystemTime()).Seconds()
	t.Logf("hostile: %s: exit code %d, %.2f s of processor, %.0f MB, %d bytes told", name, code, seconds, megabytes, stdout.Len()+stderr.Len())
	assert.Contains(t, []int{clean, found, couldNot}, code)
	assert.NotContains(t, stderr.String(), "goroutine ")
	assert.Positive(t, stdout.Len()+stderr.Len())
	assert.Positive(t, megabytes)
	if !documenttest.RaceDetector {
		assert.LessOrEqual(t, megabytes, float64(mostMegabytes))
	}
	return stdout.String()
}

// peakOf runs the program and gives its exit code and the most memory it held, in MB.
func peakOf(t *testing.T, c *exec.Cmd) (code int, megabytes float64) {
	t.Helper()
	told := filepath.Join(t.TempDir(), "peak")
	c.Env = append(os.Environ(), peakFile+"="+told)
	code = exitCode(t, c.Run())
	text, err := os.ReadFile(told)
	if errors.Is(err, os.ErrNotExist) {
		return code, 0 // it was ended from outside
	}
	require.NoError(t, err)
	megabytes, err = strconv.ParseFloat(string(text), 64)
	require.NoError(t, err)
	return code, megabytes
}
