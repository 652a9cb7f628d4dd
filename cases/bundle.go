package cases

import (
	"fmt"
	"io/fs"
	"strings"
	"unicode"
)

// MaxBundleBytes bounds the files of one case together, in bytes.
const MaxBundleBytes = 256 << 20

// Bundle is a case with its files: the photos and recordings it names.
type Bundle struct {
	Case  Case
	Files map[string][]byte // by name, as photos/1.jpg
}

// CheckFileName refuses a name that could lead out of the bundle, that some
// system can't hold, or that is the case's own. The error is an ErrFileName.
func CheckFileName(name string) error {
	const longest = 200 // bytes; common file systems end at 255 for a part
	if !fs.ValidPath(name) || name == "." || len(name) > longest ||
		strings.ContainsAny(name, `\:`) || strings.ContainsFunc(name, unicode.IsControl) ||
		strings.EqualFold(name, "case.json") {
		return fmt.Errorf("file name %q: %w", clip(name), ErrFileName)
	}
	return nil
}
