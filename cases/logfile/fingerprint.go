package logfile

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"
)

// Fingerprint names a heading, for remembering what its columns were taken
// for. Case, blanks around the texts and the order of columns don't matter.
func Fingerprint(header []string) string {
	texts := make([]string, len(header))
	for i, h := range header {
		texts[i] = strings.ToLower(strings.TrimSpace(h))
	}
	slices.Sort(texts)
	sum := sha256.Sum256([]byte(strings.Join(texts, "\x1f")))
	return hex.EncodeToString(sum[:16])
}
