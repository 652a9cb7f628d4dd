package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// notebookFlag adds --notebook to a command.
func notebookFlag(set *flag.FlagSet) *string {
	return set.String("notebook", "", "the notebook's file")
}

// openNotebook opens the notebook at path, or the user's own.
func openNotebook(ctx context.Context, path string) (*sqlite.Store, error) {
	if path == "" {
		own, err := ownNotebook()
		if err != nil {
			return nil, err
		}
		path = own
	}
	more, err := newEnricher()
	if err != nil {
		return nil, err
	}
	store, err := sqlite.Open(ctx, path, time.Now)
	if err == nil {
		store.Enrich(more.add)
	}
	return store, err
}

// openExisting opens a notebook to read from: one that is named must be there,
// or a slip of the pen would make an empty one.
func openExisting(ctx context.Context, path string) (*sqlite.Store, error) {
	if path != "" {
		if _, err := os.Stat(path); err != nil {
			return nil, fmt.Errorf("notebook %s: %w", path, errors.Unwrap(err))
		}
	}
	return openNotebook(ctx, path)
}

func importFiles(ctx context.Context, c console, args []string) (err error) {
	set := flag.NewFlagSet("import", flag.ContinueOnError)
	notebook := notebookFlag(set)
	files, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return usagef("no file named")
	}
	bundles := make([]cases.Bundle, 0, len(files))
	for _, file := range files {
		b, err := readBundle(c, file)
		if err != nil {
			return fmt.Errorf("%w\nnothing was imported", err)
		}
		bundles = append(bundles, b)
	}
	store, err := openNotebook(ctx, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	ids, err := store.PutAll(ctx, bundles, "imported")
	if err != nil {
		return err
	}
	for i, id := range ids {
		fmt.Fprintf(c.out, "%s\t%s\n", id, bundles[i].Case.Title)
	}
	return nil
}

func exportCase(ctx context.Context, c console, args []string) error {
	set := flag.NewFlagSet("export", flag.ContinueOnError)
	notebook, out := notebookFlag(set), set.String("o", "", "the file to write")
	ids, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(ids) != 1 || *out == "" {
		return usagef("needs one ID and -o FILE")
	}
	store, err := openExisting(ctx, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	return exportTo(ctx, store, ids[0], *out)
}

// exportTo writes a case to a file: alone as JSON, or as a bundle.
func exportTo(ctx context.Context, store *sqlite.Store, id, path string) error {
	b := cases.Bundle{Files: map[string][]byte{}}
	var err error
	if b.Case, err = store.Get(ctx, id); err != nil {
		return err
	}
	if strings.EqualFold(filepath.Ext(path), ".json") {
		return writeFile(path, func(f *os.File) error { return exchange.WriteCase(f, b.Case) })
	}
	files, err := store.Attachments(ctx, id)
	if err != nil {
		return err
	}
	for _, file := range files {
		if b.Files[file.Name], err = store.Attachment(ctx, file.Hash); err != nil {
			return err
		}
	}
	return writeFile(path, func(f *os.File) error { return exchange.WriteBundle(f, b) })
}

func searchCases(ctx context.Context, c console, args []string) error {
	set := flag.NewFlagSet("search", flag.ContinueOnError)
	notebook := notebookFlag(set)
	words, err := parse(set, args)
	if err != nil {
		return err
	}
	store, err := openExisting(ctx, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	page, err := store.Search(ctx, cases.Query{Text: strings.Join(words, " "), Limit: 1000})
	if err != nil {
		return err
	}
	for _, s := range page.Items {
		cause := "open"
		if s.Cause != "" {
			cause = s.Cause.Name()
		}
		fmt.Fprintf(c.out, "%s\t%s\t%s\t%s\n", s.ID, s.Title, s.Vehicle, cause)
	}
	if more := page.Total - len(page.Items); more > 0 {
		fmt.Fprintf(c.err, "and %d more\n", more)
	}
	return nil
}

// writeFile writes a whole file or none: first beside it, then in its place.
func writeFile(path string, write func(*os.File) error) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".loopbook-*")
	if err != nil {
		var why *fs.PathError
		if errors.As(err, &why) {
			err = why.Err // its path is that of a temporary file
		}
		return fmt.Errorf("%s can't be written: %w", path, err)
	}
	defer func() {
		if err != nil {
			os.Remove(f.Name())
		}
	}()
	if err := write(f); err != nil {
		f.Close()
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	if err := os.Chmod(f.Name(), 0o644); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
