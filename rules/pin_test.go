package rules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/ventlint/ventlint/rules"
)

// A pack may be asked for by its digest, or by the first digits of it.
func TestPinnedPacks(t *testing.T) {
	digest := builtIn(t, "practice").Digest()
	library := rules.NewLibrary(nil)
	for _, digits := range []int{12, 20, 64} {
		pack, err := library.Pack("practice@sha256:" + digest[:digits])
		require.NoError(t, err)
		assert.Equal(t, "practice", pack.Head.ID)
	}
	other := strings.Repeat("0", 12)
	_, err := library.Pack("practice@sha256:" + other)
	var mismatch *rules.OtherDigest
	require.ErrorAs(t, err, &mismatch)
	assert.Equal(t, rules.OtherDigest{Name: "practice", Pinned: other, Found: digest}, *mismatch)
	assert.Contains(t, err.Error(), digest[:12])
	for _, pin := range []string{"", "0123456789a", strings.ToUpper(digest), digest + "0", "0123456789ag"} {
		_, err := library.Pack("practice@sha256:" + pin)
		require.Error(t, err, pin)
		assert.Contains(t, err.Error(), "expected 12 to 64 of the digits 0-9 and a-f")
	}
	_, err = library.Pack("practise@sha256:" + digest)
	var unknown *rules.UnknownPack
	require.ErrorAs(t, err, &unknown)
	assert.Equal(t, "practise", unknown.Name)
}

// A pin counts also for a pack that was loaded before without one.
func TestPinOfLoadedPack(t *testing.T) {
	library := rules.NewLibrary(nil)
	_, err := library.Pack("practice")
	require.NoError(t, err)
	_, err = library.Pack("practice@sha256:000000000000")
	assert.Error(t, err)
}
