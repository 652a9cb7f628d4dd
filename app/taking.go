package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// takings is what became of many files.
type takings struct {
	files     int // that were read to their end
	of        int // that were to be read; more than files: it was stopped
	met       []cases.Met
	titles    []string // of met
	refused   []error  // each with its file and its reason
	conflicts []cases.Met
}

func (t takings) count(m cases.Meeting) (n int) {
	for _, x := range t.met {
		if x.Meeting == m {
			n++
		}
	}
	return n
}

// takeFiles takes every case of the files into the notebook: each bundle whole or
// not at all, whatever becomes of the others. It calls progress with how many files
// are through, and stops between two bundles where ctx is done; what was taken until
// then stays.
func takeFiles(ctx context.Context, store *sqlite.Store, files []string, in io.Reader, progress func(files, taken int)) (takings, error) {
	t := takings{of: len(files)}
	take := func(b cases.Bundle, err error) error {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err != nil {
			t.refused = append(t.refused, err)
			return nil
		}
		met, err := store.Import(ctx, b, "imported")
		switch {
		case err != nil && ctx.Err() != nil:
			return ctx.Err()
		case err != nil:
			t.refused = append(t.refused, err)
			return nil
		case met.Meeting == cases.MeetsOther:
			t.conflicts = append(t.conflicts, met)
		}
		t.met, t.titles = append(t.met, met), append(t.titles, b.Case.Title)
		return nil
	}
	for i, file := range files {
		var err error
		if file == "-" {
			err = exchange.EachOf(ctx, "standard input", in, take)
		} else {
			err = exchange.Each(ctx, file, take)
		}
		switch {
		case ctx.Err() != nil:
			return t, ctx.Err()
		case err != nil:
			t.refused = append(t.refused, err)
		}
		t.files = i + 1
		progress(t.files, len(t.met))
	}
	return t, nil
}

// importable lists the files under the names given: a folder stands for the cases
// and bundles in it.
func importable(names []string) ([]string, error) {
	var out []string
	for _, name := range names {
		info, err := os.Stat(name)
		if name == "-" || err != nil || !info.IsDir() { // what isn't there is told when it is read
			out = append(out, name)
			continue
		}
		entries, err := os.ReadDir(name)
		if err != nil {
			return nil, err
		}
		for _, e := range entries {
			if ending := strings.ToLower(filepath.Ext(e.Name())); e.Type().IsRegular() && slices.Contains(caseEndings(), ending) {
				out = append(out, filepath.Join(name, e.Name()))
			}
		}
	}
	return out, nil
}

func caseEndings() []string { return []string{".json", ".zip", ".loopbook"} }

// printTakings tells what became of each, and an error where any was refused or
// waits for a choice.
func printTakings(c console, t takings) error {
	for i, m := range t.met {
		fmt.Fprintf(c.out, "%s\t%s\t%s\n", m.ID, m.Meeting, t.titles[i])
	}
	errs := t.refused
	for _, m := range t.conflicts {
		errs = append(errs, fmt.Errorf("case %s (%q): the notebook's case of that id says something else; choose with --conflicts mine, theirs or both", m.ID, m.Theirs.Case.Title))
	}
	return errors.Join(errs...)
}

// settle ends every conflict by one choice; on a fault those that are left stay.
func (t *takings) settle(ctx context.Context, store *sqlite.Store, choice cases.Choice) error {
	for ; len(t.conflicts) > 0; t.conflicts = t.conflicts[1:] {
		if _, err := store.Resolve(ctx, t.conflicts[0].Theirs, choice, "imported"); err != nil {
			return err
		}
	}
	return nil
}
