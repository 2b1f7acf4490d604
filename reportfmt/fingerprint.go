package reportfmt

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"github.com/ventlint/ventlint/checker"
)

// fingerprint identifies a finding within its file from one version of the file
// to the next: 32 hexadecimal digits of the SHA-256 of the rule, the ids of its
// subjects, and the pointer. It knows no line. Where every subject has an id,
// the numbers in the pointer are left out, so that a table may move in the file; a
// subject without one goes by its own pointer.
func fingerprint(r *checker.Result) string {
	parts := []string{ruleID(r)}
	named := len(r.Subjects) > 0
	for _, s := range r.Subjects {
		parts = append(parts, cmp.Or(s.ID, s.Pointer))
		named = named && s.ID != ""
	}
	if r.Others > 0 {
		parts = append(parts, string(r.Outcome))
	}
	pointer := r.Pointer
	if named {
		pointer = withoutNumbers(pointer)
	}
	sum := sha256.Sum256([]byte(strings.Join(append(parts, pointer), "\x00")))
	return hex.EncodeToString(sum[:16])
}

func withoutNumbers(pointer string) string {
	var kept []string
	for _, part := range strings.Split(pointer, "/") {
		if part == "" || strings.Trim(part, "0123456789") != "" {
			kept = append(kept, part)
		}
	}
	return strings.Join(kept, "/")
}
