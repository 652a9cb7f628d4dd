package library

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/exchange"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

// Giving is how cases leave the notebook.
type Giving struct {
	Anonymous bool
	Hide      []string // further words that mustn't be read
	Notes     bool     // photos with what the camera noted of place, time and device
}

// Bundle is a case with its files, as it is to leave.
func (g Giving) Bundle(ctx context.Context, store *sqlite.Store, id string) (cases.Bundle, anonymous.Preview, error) {
	b, err := store.Bundle(ctx, id)
	switch {
	case err != nil, g.Notes && !g.Anonymous:
		return b, anonymous.Preview{}, err
	case !g.Anonymous:
		if err = barePhotos(&b); err != nil {
			err = fmt.Errorf("case %s (%q): %w", id, b.Case.Title, err)
		}
		return b, anonymous.Preview{}, err
	}
	return anonymous.Make(b, g.Hide, photo.Bare)
}

// barePhotos takes out of a bundle's photos what the camera noted. One that
// becomes another kind of file gets its name.
func barePhotos(b *cases.Bundle) error {
	now := map[string]string{} // the names there were
	for i, p := range b.Case.Photos {
		data, here := b.Files[p.File]
		if name := now[p.File]; name != "" || !here {
			b.Case.Photos[i].File = cmp.Or(name, p.File)
			continue
		}
		clean, ending, err := photo.ToGive(data)
		if err != nil {
			return fmt.Errorf("%s: %w", p.File, err)
		}
		name := p.File
		if had := strings.ToLower(filepath.Ext(name)); had != ending && (had != ".jpeg" || ending != ".jpg") {
			name += ending
		}
		delete(b.Files, p.File)
		b.Files[name], b.Case.Photos[i].File, now[p.File] = clean, name, name
	}
	return nil
}

// whole leaves out of a bundle's photos the names of those that the notebook hasn't, since a bundle must hold all that it
// names: a case that came alone, as JSON, left its pictures behind. Their captions stay.
func whole(b cases.Bundle) cases.Bundle {
	b.Case.Photos = slices.Clone(b.Case.Photos)
	for i, p := range b.Case.Photos {
		if _, here := b.Files[p.File]; !here {
			b.Case.Photos[i].File = ""
		}
	}
	return b
}

// ErrNeedsZip refuses to write several cases as one.
var ErrNeedsZip = errors.New("several cases need a name that ends in .zip")

// errNone is told rather than that all is written, with nothing there.
var errNone = errors.New("there is no such case: nothing was written")

// Write writes the cases to a file: one as JSON where the name ends so, or as a
// bundle; several as a collection, or as several files of them where they are too
// many for one.
func (g Giving) Write(ctx context.Context, store *sqlite.Store, ids []string, path string) ([]string, error) {
	switch {
	case len(ids) == 0:
		return nil, errNone
	case len(ids) == 1:
		return g.writeOne(ctx, store, ids[0], path)
	case isJSON(path):
		return nil, fmt.Errorf("%s: %w", path, ErrNeedsZip)
	}
	var files []string
	for part := 0; len(ids) > 0; part++ {
		n := min(len(ids), exchange.MaxBundles)
		name := partName(path, part)
		some := ids[:n]
		next := func() (cases.Bundle, error) {
			if len(some) == 0 {
				return cases.Bundle{}, io.EOF
			}
			b, _, err := g.Bundle(ctx, store, some[0])
			some = some[1:]
			return whole(b), err
		}
		if err := collection(store, name, cases.Class{}, next); err != nil {
			return files, err
		}
		files, ids = append(files, name), ids[n:]
	}
	return files, nil
}

func (g Giving) writeOne(ctx context.Context, store *sqlite.Store, id, path string) ([]string, error) {
	b, _, err := g.Bundle(ctx, store, id)
	if err != nil {
		return nil, err
	}
	write := func(f *os.File) error { return exchange.WriteBundle(f, whole(b)) }
	if isJSON(path) {
		write = func(f *os.File) error { return exchange.WriteCase(f, b.Case) }
	}
	return []string{path}, writeApart(store, path, write)
}

// collection writes bundles as they come to one file, as a class set where that has a name.
func collection(store *sqlite.Store, path string, class cases.Class, next func() (cases.Bundle, error)) error {
	return writeApart(store, path, func(f *os.File) error {
		_, err := exchange.WriteCollection(f, class, next)
		return err
	})
}

func isJSON(path string) bool { return strings.EqualFold(filepath.Ext(path), ".json") }

// partName is path itself, and then path-2, path-3 …
func partName(path string, part int) string {
	if part == 0 {
		return path
	}
	ending := filepath.Ext(path)
	return fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ending), part+1, ending)
}

// writeApart is WriteFile, but not over the notebook.
func writeApart(store *sqlite.Store, path string, write func(*os.File) error) error {
	whole, err := filepath.Abs(path)
	if err == nil {
		err = store.Apart(whole)
	}
	if err != nil {
		return fmt.Errorf("%s %w", path, err)
	}
	return WriteFile(path, write)
}

// Listed are the words between commas, as Hide has them.
func Listed(text string) []string {
	var out []string
	for _, w := range strings.Split(text, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}
