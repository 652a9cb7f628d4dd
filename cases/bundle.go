package cases

import (
	"fmt"
	"io/fs"
	"path"
	"strings"
	"unicode"
)

// MaxBundleBytes bounds the files of one case together, in bytes.
const MaxBundleBytes = 256 << 20

// Bundle is a case with its files: the photos and recordings it names.
type Bundle struct {
	Case  Case
	Files map[string][]byte // by name, as photos/1.jpg
	Class string            // the name of the class set that it came with; "": none
	// Sealed: with that set it came to be practised on, and stays shut until it was answered.
	Sealed bool
}

// CheckFileName refuses a name that could lead out of the bundle, that some
// system can't hold, or that is the case's own. The error is an ErrFileName.
func CheckFileName(name string) error {
	const longest = 200 // bytes; common file systems end at 255 for a part
	if !fs.ValidPath(name) || name == "." || len(name) > longest ||
		strings.ContainsAny(name, `\:`) || strings.ContainsFunc(name, unicode.IsControl) ||
		strings.EqualFold(name, "case.json") {
		return fmt.Errorf("file name %q: %w", Clip(name), ErrFileName)
	}
	return nil
}

// FreeFileName is the name, or the first of NAME-2, NAME-3 … that isn't taken: a case's file is never written over by
// another one, since a step back leads to it.
func FreeFileName(name string, taken func(name string) bool) string {
	ending, free := path.Ext(name), name
	for n := 2; taken(free); n++ {
		free = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(name, ending), n, ending)
	}
	return free
}
