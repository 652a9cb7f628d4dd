package main

import (
	"context"
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

// known are those that the notebook has already.
func (t takings) known() int { return t.count(cases.MeetsSame) + t.count(cases.MeetsOlder) }

// What is kept in one go: few enough that a stop takes effect at once, and that memory
// and the file's other writers hardly notice.
const (
	mostAtOnce      = 64
	mostBytesAtOnce = 8 << 20
)

// importer takes cases in; *sqlite.Store is one.
type importer interface {
	Import(ctx context.Context, b cases.Bundle, what string) (cases.Met, error)
	ImportAll(ctx context.Context, bundles []cases.Bundle, what string) ([]cases.Met, error)
}

// takeFiles takes every case of the files into the notebook: each bundle whole or
// not at all, whatever becomes of the others. It calls progress with how many files
// are through and how many cases are taken, and stops where ctx is done; what was
// taken until then stays, and is all that is told.
func takeFiles(ctx context.Context, store importer, files []string, in io.Reader, progress func(files, taken int)) (takings, error) {
	k := &taker{store: store, progress: progress, t: takings{of: len(files)}}
	take := func(b cases.Bundle, err error) error { return k.take(ctx, b, err) }
	for _, file := range files {
		var err error
		if file == "-" {
			err = exchange.EachOf(ctx, "standard input", in, take)
		} else {
			err = exchange.Each(ctx, file, take)
		}
		switch {
		case ctx.Err() != nil:
			return k.t, ctx.Err()
		case err != nil:
			k.t.refused = append(k.t.refused, err)
		}
		k.read++
	}
	return k.t, k.keep(ctx)
}

// taker gathers cases and keeps them some at once.
type taker struct {
	store    importer
	progress func(files, taken int)
	t        takings
	read     int // files to their end
	waiting  []cases.Bundle
	bytes    int // of their files
}

func (k *taker) take(ctx context.Context, b cases.Bundle, err error) error {
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		k.t.refused = append(k.t.refused, err)
		return nil
	}
	if len(k.waiting) == mostAtOnce || k.bytes > mostBytesAtOnce {
		if err := k.keep(ctx); err != nil {
			return err
		}
	}
	k.waiting = append(k.waiting, b)
	for _, data := range b.Files {
		k.bytes += len(data)
	}
	return nil
}

// keep takes in what waits; where one of them is at fault, each alone.
func (k *taker) keep(ctx context.Context) error {
	all, err := k.store.ImportAll(ctx, k.waiting, "imported")
	if err != nil {
		if err := k.keepEach(ctx); err != nil {
			return err
		}
	}
	for i, met := range all {
		k.t.add(met, k.waiting[i].Case.Title)
	}
	k.waiting, k.bytes, k.t.files = nil, 0, k.read
	k.progress(k.t.files, len(k.t.met))
	return nil
}

func (k *taker) keepEach(ctx context.Context) error {
	for _, b := range k.waiting {
		met, err := k.store.Import(ctx, b, "imported")
		switch {
		case err == nil:
			k.t.add(met, b.Case.Title)
		case ctx.Err() != nil:
			return ctx.Err()
		default:
			k.t.refused = append(k.t.refused, err)
		}
	}
	return nil
}

func (t *takings) add(met cases.Met, title string) {
	t.met, t.titles = append(t.met, met), append(t.titles, title)
	if met.Meeting == cases.MeetsOther {
		t.conflicts = append(t.conflicts, met)
	}
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

// settle ends every conflict by one choice; on a fault those that are left stay.
func (t *takings) settle(ctx context.Context, store *sqlite.Store, choice cases.Choice) error {
	for ; len(t.conflicts) > 0; t.conflicts = t.conflicts[1:] {
		if _, err := store.Resolve(ctx, t.conflicts[0].Theirs, choice, "imported"); err != nil {
			return err
		}
	}
	return nil
}
