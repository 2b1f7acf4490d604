package rules

import (
	"fmt"
	"strings"
)

const (
	pinMark  = "@sha256:"
	leastPin = 12 // hexadecimal digits of a digest that tell a pack
	mostPin  = 64 // all of them
)

// unpinned parts a pack's name from the digest that it is pinned to; pin is
// empty without one.
func unpinned(name string) (pack, pin string, err error) {
	pack, pin, pinned := strings.Cut(name, pinMark)
	if pinned && (len(pin) < leastPin || len(pin) > mostPin || strings.Trim(pin, "0123456789abcdef") != "") {
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
	if pin == "" {
		return nil
	}
	if found := e.Digest(); !strings.HasPrefix(found, pin) {
		return &OtherDigest{name, pin, found}
	}
	return nil
}
