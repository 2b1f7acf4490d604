package reportfmt

import (
	"crypto/sha1"
	"fmt"
)

// guidOf names something for good: version 5 of RFC 9562, a SHA-1 of a name in
// the name space of this program, which is that of its address.
func guidOf(name string) string {
	space := nameBased(addresses, "https://github.com/ventlint/ventlint")
	g := nameBased(space, name)
	return fmt.Sprintf("%x-%x-%x-%x-%x", g[:4], g[4:6], g[6:8], g[8:10], g[10:])
}

// addresses is the name space of URLs, by appendix A of RFC 9562.
var addresses = [16]byte{0x6b, 0xa7, 0xb8, 0x11, 0x9d, 0xad, 0x11, 0xd1, 0x80, 0xb4, 0x00, 0xc0, 0x4f, 0xd4, 0x30, 0xc8}

func nameBased(space [16]byte, name string) [16]byte {
	sum := sha1.Sum(append(space[:], name...))
	g := [16]byte(sum[:16])
	g[6] = g[6]&0x0f | 0x50 // version
	g[8] = g[8]&0x3f | 0x80 // variant
	return g
}
