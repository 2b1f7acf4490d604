package rules_test

import (
	"os"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// Every pack of the folder ships, under the id that it gives itself.
func TestBuiltIn(t *testing.T) {
	entries, err := os.ReadDir("packs")
	require.NoError(t, err)
	var ids []string
	for _, e := range entries {
		ids = append(ids, strings.TrimSuffix(e.Name(), ".rules.toml"))
	}
	assert.Equal(t, ids, rules.BuiltIn())
	library := rules.NewReviewLibrary(nil)
	for _, id := range ids {
		pack, err := library.Pack(id)
		require.NoError(t, err)
		assert.Equal(t, id, pack.Head.ID)
		source, err := os.ReadFile("packs/" + id + ".rules.toml")
		require.NoError(t, err)
		assert.Equal(t, string(source), pack.Files[0].Source, id)
	}
}

const circle = "[pack]\nid = \"ID\"\ntitle = \"One of a circle (invented)\"\nunits = \"IP\"\nextends = [\"OTHER.rules.toml\", \"irc-2021\"]\n"

// Packs are loaded once however many ask for them at a time, and packs that extend
// each other in a circle are refused, at whichever of them one begins.
func TestLibraryAskedByMany(t *testing.T) {
	library := files(map[string]string{
		"east.rules.toml": strings.NewReplacer("ID", "east", "OTHER", "west").Replace(circle),
		"west.rules.toml": strings.NewReplacer("ID", "west", "OTHER", "east").Replace(circle),
	})
	const many = 8
	var packs [many]*rules.Effective
	var circles [2 * many]error
	var wait sync.WaitGroup
	for i := range many {
		wait.Go(func() { packs[i], _ = library.Pack("irc-2018") })
		wait.Go(func() { _, circles[2*i] = library.Pack("east.rules.toml") })
		wait.Go(func() { _, circles[2*i+1] = library.Pack("west.rules.toml") })
	}
	wait.Wait()
	require.NotNil(t, packs[0])
	for i := range many {
		assert.Same(t, packs[0], packs[i])
		assert.ErrorContains(t, circles[2*i], `pack "east.rules.toml" extends itself through east.rules.toml, west.rules.toml`)
		assert.ErrorContains(t, circles[2*i+1], `pack "west.rules.toml" extends itself through west.rules.toml, east.rules.toml`)
	}
}

// A library that reads no files knows none.
func TestLibraryWithoutFiles(t *testing.T) {
	_, err := rules.NewLibrary(nil).Pack("county.rules.toml")
	var unknown *rules.UnknownPack
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "county.rules.toml", unknown.Name)
}

// A file that could not be loaded is looked at again.
func TestLibraryTriesAgain(t *testing.T) {
	packs := map[string]string{}
	library := files(packs)
	_, err := library.Pack("county.rules.toml")
	require.ErrorIs(t, err, os.ErrNotExist)
	packs["county.rules.toml"] = "[pack]\nid = \"county\"\ntitle = \"A county (invented)\"\nunits = \"IP\"\nextends = [\"irc-2021\"]\n"
	pack, err := library.Pack("county.rules.toml")
	require.NoError(t, err)
	again, err := library.Pack("county.rules.toml")
	require.NoError(t, err)
	assert.Same(t, pack, again)
}

// What a rule uses is named as a whole word, by the texts that the language reads.
func TestUsesOfARule(t *testing.T) {
	pack := countyOf(t, `
[limits.near]
value = "3 ft"
basis = [{ document = "county ordinance (invented)", read = "practice" }]

[limits.far]
value = "10 ft"
basis = [{ document = "county ordinance (invented)", read = "practice" }]

[[rule]]
id = "apart"
title = "Intakes lie apart from exhausts"
topic = "openings"
level = "error"
due = "permit"
each = { intake = "intakes", exhaust = "exhausts" }
when = "rise(intake, exhaust) < limit.near"
require = "distance(intake, exhaust) >= max(limit.near, limit.far)"
says = "{distance(intake, exhaust)}: unlimit.low, limit.5, the limit. and taut(intake, exhaust)"
remedy = "keep {limit.far} apart"
basis = [{ document = "county ordinance (invented)", read = "practice" }]
`)
	rule := pack.Rule("apart")
	require.NotNil(t, rule)
	assert.Equal(t, []string{"far", "near"}, rule.LimitsUsed())
	assert.Equal(t, []string{}, rule.TablesUsed())
	assert.Equal(t, []string{"distance", "rise"}, rule.Distances())
}
