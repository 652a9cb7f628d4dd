// Package filename names the files that the window writes, and says where they lie.
package filename

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// InDocuments is where a file lies in the documents' folder, which is there then.
func InDocuments(name string) (string, error) {
	home, err := os.UserHomeDir()
	if err != nil {
		return "", err
	}
	dir := filepath.Join(home, "Documents", "Loopbook")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		var path *fs.PathError
		if errors.As(err, &path) {
			err = path.Err
		}
		return "", fmt.Errorf("nothing was written: its folder %s isn't there and can't be made (%w)", dir, err)
	}
	return filepath.Join(dir, name), nil
}

// OfCase names a file after a case's title and what of the case it holds: each thing has a name of its own, so that none
// is written over another. The end of the case's id parts it from others of the same title, and stays the case's.
func OfCase(title, id, what, ending string) string {
	return Of(title) + " (" + Of(id[max(0, len(id)-idTail):]) + ") - " + Of(what) + ending
}

// idTail is as much of an id as no two cases of a title have in common.
const idTail = 5

// longName leaves room for what a file is of.
const longName = 60

// Of makes a name that any system can hold from a case's title.
func Of(title string) string {
	clean := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimSpace(title))
	clean = strings.Trim(clean, ". -")
	if r := []rune(clean); len(r) > longName {
		clean = strings.TrimRight(wholeWords(string(r[:longName+1])), "., -")
	}
	if clean == "" {
		return "case"
	}
	return clean
}

// wholeWords drops a text's last letter, and the word that it is of where there is another.
func wholeWords(text string) string {
	if at := strings.LastIndex(text, " "); at > 0 {
		return text[:at]
	}
	return string([]rune(text)[:longName])
}
