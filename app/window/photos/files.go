package photos

import (
	"path/filepath"
	"slices"
	"strings"

	"loopbook/app/window/filename"
	"loopbook/cases"
)

// endings are of files that are taken for pictures; what they really are
// is told by their content.
func endings() []string {
	return []string{".jpg", ".jpeg", ".png", ".gif", ".bmp", ".tif", ".tiff", ".webp", ".heic", ".heif"}
}

// IsPhoto reports whether a dropped file is taken for a picture.
func IsPhoto(path string) bool {
	return slices.Contains(endings(), strings.ToLower(filepath.Ext(path)))
}

// photoName is a name that no other picture of the case has.
func photoName(name, hash string, taken map[string]string) string {
	for file, had := range taken {
		if had == hash && strings.HasPrefix(file, "photos/") {
			return file
		}
	}
	own := "photos/" + filename.Of(strings.TrimSuffix(name, filepath.Ext(name))) + strings.ToLower(filepath.Ext(name))
	return cases.FreeFileName(own, func(free string) bool { return taken[free] != "" })
}
