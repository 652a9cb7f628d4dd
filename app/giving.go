package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/exchange"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

// giving is how cases leave the notebook.
type giving struct {
	anonymous bool
	hide      []string // further words that mustn't be read
	notes     bool     // photos with what the camera noted of place, time and device
}

// bundle is a case with its files, as it is to leave.
func (g giving) bundle(ctx context.Context, store *sqlite.Store, id string) (cases.Bundle, anonymous.Preview, error) {
	b, err := store.Bundle(ctx, id)
	switch {
	case err != nil, g.notes && !g.anonymous:
		return b, anonymous.Preview{}, err
	case !g.anonymous:
		return b, anonymous.Preview{}, barePhotos(&b)
	}
	return anonymous.Make(b, g.hide, photo.Bare)
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
			return fmt.Errorf("%s: %w; --photo-notes gives it as it is", p.File, err)
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

// errNeedsZip refuses to write several cases as one.
var errNeedsZip = errors.New("several cases need a name that ends in .zip")

// write writes the cases to a file: one as JSON where the name ends so, or as a
// bundle; several as a collection, or as several files of them where they are too
// many for one.
func (g giving) write(ctx context.Context, store *sqlite.Store, ids []string, path string) ([]string, error) {
	switch {
	case len(ids) == 1:
		b, _, err := g.bundle(ctx, store, ids[0])
		if err != nil {
			return nil, err
		}
		write := exchange.WriteBundle
		if isJSON(path) {
			write = func(w io.Writer, b cases.Bundle) error { return exchange.WriteCase(w, b.Case) }
		}
		return []string{path}, writeFile(path, func(f *os.File) error { return write(f, b) })
	case isJSON(path):
		return nil, fmt.Errorf("%s: %w", path, errNeedsZip)
	}
	var files []string
	for part := 0; len(ids) > 0; part++ {
		n := min(len(ids), exchange.MaxBundles)
		name := partName(path, part)
		if err := g.collection(ctx, store, ids[:n], name); err != nil {
			return files, err
		}
		files, ids = append(files, name), ids[n:]
	}
	return files, nil
}

func (g giving) collection(ctx context.Context, store *sqlite.Store, ids []string, path string) error {
	return writeFile(path, func(f *os.File) error {
		_, err := exchange.WriteCollection(f, func() (cases.Bundle, error) {
			if len(ids) == 0 {
				return cases.Bundle{}, io.EOF
			}
			b, _, err := g.bundle(ctx, store, ids[0])
			ids = ids[1:]
			return b, err
		})
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

// writeTable writes the lines of a query as CSV.
func writeTable(ctx context.Context, store *sqlite.Store, q cases.Query, path string) error {
	return writeFile(path, func(f *os.File) error {
		t, err := exchange.NewTable(f, [7]string{"id", "opened", "title", "vehicle", "layout", "cause", "changed"})
		if err != nil {
			return err
		}
		q.Limit = 1000
		for q.Offset = 0; ; q.Offset += q.Limit {
			page, err := store.Search(ctx, q)
			if err != nil {
				return err
			}
			if err := t.Add(page.Items); err != nil || len(page.Items) < q.Limit {
				return err
			}
		}
	})
}

// idsOf are all cases of a query.
func idsOf(ctx context.Context, store *sqlite.Store, q cases.Query) ([]string, error) {
	var ids []string
	q.Limit = 1000
	for q.Offset = 0; ; q.Offset += q.Limit {
		page, err := store.Search(ctx, q)
		if err != nil {
			return nil, err
		}
		for _, s := range page.Items {
			ids = append(ids, s.ID)
		}
		if len(page.Items) < q.Limit {
			return ids, nil
		}
	}
}

// listed are the words between commas.
func listed(text string) []string {
	var out []string
	for _, w := range strings.Split(text, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}
