package rules

import (
	"fmt"
	"regexp"
	"strings"
)

const (
	pinMark  = "@sha256:"
	leastPin = 12 // hexadecimal digits of a digest that tell a pack
)

var pinDigits = regexp.MustCompile(`^[0-9a-f]{12,64}$`)

// unpinned parts a pack's name from the digest that it is pinned to; pin is
// empty without one.
func unpinned(name string) (pack, pin string, err error) {
	pack, pin, pinned := strings.Cut(name, pinMark)
	if pinned && !pinDigits.MatchString(pin) {
		return pack, "", fmt.Errorf("found the digest %.70q of pack %q, expected %d to 64 of the digits 0-9 and a-f that \"ventlint packs %s\" prints", pin, pack, leastPin, pack)
	}
	return pack, pin, nil
}

// OtherDigest says that a pack is not the one that was pinned.
type OtherDigest struct{ Name, Pinned, Found string }

// Error names both digests.
func (e *OtherDigest) Error() string {
	return fmt.Sprintf("pack %q has the digest sha256:%s, expected sha256:%s: it is not the pack that was pinned", e.Name, e.Found[:max(leastPin, len(e.Pinned))], e.Pinned)
}

// pinned checks a pack against a pin.
func (e *Effective) pinned(name, pin string) error {
	if found := e.Digest(); !strings.HasPrefix(found, pin) {
		return &OtherDigest{name, pin, found}
	}
	return nil
}
