package say

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"sync"

	"loopbook/assets"
)

// Lang is a language of the papers, by its code of ISO 639-1.
type Lang string

// The languages. Each has its folder under assets/words.
const (
	EN Lang = "en"
	DE Lang = "de"
	ES Lang = "es"
)

// Langs lists the languages.
func Langs() []Lang { return []Lang{EN, DE, ES} }

// Decimal writes a number's decimal sign as the language does.
func (l Lang) Decimal(number string) string {
	if l == EN {
		return number
	}
	return strings.Replace(number, ".", ",", 1)
}

// catalogues reads the shipped words once.
var catalogues = sync.OnceValues(func() (map[Lang]map[string]string, error) {
	out := map[Lang]map[string]string{}
	for _, l := range Langs() {
		words, err := readCatalogue(assets.Words, path.Join("words", string(l)))
		if err != nil {
			return nil, err
		}
		out[l] = words
	}
	return out, nil
})

// Catalogue is a language's templates by their names; it is shared and isn't to
// be changed. An error names the file that is at fault.
func Catalogue(l Lang) (map[string]string, error) {
	all, err := catalogues()
	if err != nil {
		return nil, err
	}
	words, ok := all[l]
	if !ok {
		return nil, fmt.Errorf("no words in the language %q: there are en, de and es", string(l))
	}
	return words, nil
}

// readCatalogue joins a folder's files. A name that two of them have is an
// error: one would hide the other.
func readCatalogue(files fs.FS, folder string) (map[string]string, error) {
	names, err := fs.Glob(files, path.Join(folder, "*.json"))
	if err != nil {
		return nil, err
	}
	out := map[string]string{}
	for _, name := range names {
		raw, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		var words map[string]string
		if err := json.Unmarshal(raw, &words); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		for key, text := range words {
			if _, twice := out[key]; twice {
				return nil, fmt.Errorf("%s: %q is in another file too", name, key)
			}
			out[key] = text
		}
	}
	return out, nil
}
