package library

import (
	"bytes"
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

// Takings is what became of many files.
type Takings struct {
	Files     int // that were read to their end
	Of        int // that were to be read; more than Files: it was stopped
	Met       []cases.Met
	Titles    []string // of Met
	Refused   []error  // each with its file and its reason, and what class set wasn't kept
	Conflicts []cases.Met
	Classes   []cases.Class // that they came as, under the names that they are kept by
	Sealed    int           // cases of them that stay shut until they were answered
}

// Count is how many met the notebook so.
func (t Takings) Count(m cases.Meeting) (n int) {
	for _, x := range t.Met {
		if x.Meeting == m {
			n++
		}
	}
	return n
}

// Known are those that the notebook has already.
func (t Takings) Known() int { return t.Count(cases.MeetsSame) + t.Count(cases.MeetsOlder) }

// MostAtOnce cases, or so many bytes of them, are kept in one go: few enough that a stop takes effect at once, and that memory
// and the file's other writers hardly notice.
const (
	MostAtOnce      = 64
	mostBytesAtOnce = 8 << 20
)

// importer takes cases in; *sqlite.Store is one.
type importer interface {
	Import(ctx context.Context, b cases.Bundle, what string) (cases.Met, error)
	ImportAll(ctx context.Context, bundles []cases.Bundle, what string) ([]cases.Met, error)
	Has(ctx context.Context, c cases.Case) (bool, error)
	Seal(ctx context.Context, caseID string, bundle []byte) error
	classes
}

// Take takes every case of the files into the notebook: each bundle whole or
// not at all, whatever becomes of the others, and the class sets that they come as. It calls progress with how many files
// are through and how many cases are taken, and stops where ctx is done, which is its only error; what was
// taken until then stays, and is all that is told.
func Take(ctx context.Context, store importer, files []string, in io.Reader, progress func(files, taken int)) (Takings, error) {
	k := &taker{store: store, progress: progress, t: Takings{Of: len(files)}}
	err := k.takeAll(ctx, files, in)
	var failed error // a stop is none: nothing but its set leads to a case that is shut
	if k.t.Classes, failed = keepClasses(context.WithoutCancel(ctx), store, k.t.Classes); failed != nil {
		k.t.Refused = append(k.t.Refused, failed)
	}
	return k.t, err
}

// taker gathers cases and keeps them some at once.
type taker struct {
	store    importer
	progress func(files, taken int)
	t        Takings
	read     int // files to their end
	waiting  []cases.Bundle
	bytes    int // of their files
}

func (k *taker) takeAll(ctx context.Context, files []string, in io.Reader) error {
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
			return ctx.Err()
		case err != nil:
			k.t.Refused = append(k.t.Refused, err)
		}
		k.read++
	}
	return k.keep(ctx)
}

func (k *taker) take(ctx context.Context, b cases.Bundle, err error) error {
	switch {
	case ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		k.t.Refused = append(k.t.Refused, err)
		return nil
	}
	if b.Sealed {
		if sealed, err := k.seal(ctx, b); sealed || err != nil {
			return err
		}
	}
	if len(k.waiting) == MostAtOnce || k.bytes > mostBytesAtOnce {
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

// seal keeps a case of a sealed set shut, unless the notebook has it: then nothing is left to hide.
func (k *taker) seal(ctx context.Context, b cases.Bundle) (sealed bool, err error) {
	if b.Case.ID == "" {
		return false, nil // by which it would be found
	}
	if has, err := k.store.Has(ctx, b.Case); has || err != nil {
		return false, err
	}
	if err := k.keep(ctx); err != nil { // the set's order
		return false, err
	}
	var file bytes.Buffer
	if err := exchange.WriteBundle(&file, b); err != nil {
		k.t.Refused = append(k.t.Refused, err)
		return true, nil
	}
	if err := k.store.Seal(ctx, b.Case.ID, file.Bytes()); err != nil {
		return false, err
	}
	k.t.Sealed++
	k.t.join(b.Class, b.Case.ID)
	return true, nil
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
		k.t.add(met, k.waiting[i])
	}
	k.waiting, k.bytes, k.t.Files = nil, 0, k.read
	k.progress(k.t.Files, len(k.t.Met))
	return nil
}

func (k *taker) keepEach(ctx context.Context) error {
	for _, b := range k.waiting {
		met, err := k.store.Import(ctx, b, "imported")
		switch {
		case err == nil:
			k.t.add(met, b)
		case ctx.Err() != nil:
			return ctx.Err()
		default:
			k.t.Refused = append(k.t.Refused, err)
		}
	}
	return nil
}

func (t *Takings) add(met cases.Met, b cases.Bundle) {
	t.Met, t.Titles = append(t.Met, met), append(t.Titles, b.Case.Title)
	if met.Meeting == cases.MeetsOther {
		t.Conflicts = append(t.Conflicts, met)
	}
	t.join(b.Class, met.ID)
}

// join notes that a case came with a class set.
func (t *Takings) join(class, id string) {
	if class == "" {
		return
	}
	at := slices.IndexFunc(t.Classes, func(c cases.Class) bool { return c.Name == class })
	if at < 0 {
		at, t.Classes = len(t.Classes), append(t.Classes, cases.Class{Name: class})
	}
	t.Classes[at].Cases = append(t.Classes[at].Cases, id)
}

// Importable lists the files under the names given: a folder stands for the cases
// and bundles in it.
func Importable(names []string) ([]string, error) {
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
			if ending := strings.ToLower(filepath.Ext(e.Name())); e.Type().IsRegular() && slices.Contains(CaseEndings(), ending) {
				out = append(out, filepath.Join(name, e.Name()))
			}
		}
	}
	return out, nil
}

// CaseEndings are how the names of files end that hold cases.
func CaseEndings() []string { return []string{".json", ".zip", ".loopbook"} }

// Settle ends every conflict by one choice; on a fault those that are left stay.
func (t *Takings) Settle(ctx context.Context, store *sqlite.Store, choice cases.Choice) error {
	for ; len(t.Conflicts) > 0; t.Conflicts = t.Conflicts[1:] {
		if _, err := store.Resolve(ctx, t.Conflicts[0].Theirs, choice, "imported"); err != nil {
			return err
		}
	}
	return nil
}
