package window

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

// newPhoto is a picture that is to be kept.
type newPhoto struct {
	name string
	data []byte
}

// addPhotos reads files and takes them into the open case, all or none.
func (w *window) addPhotos(paths []string) {
	w.takePhotos(len(paths), func(i int) (newPhoto, error) {
		data, err := readBounded(paths[i])
		return newPhoto{filepath.Base(paths[i]), data}, err
	})
}

func readBounded(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err == nil && info.Size() > photo.MaxBytes {
		err = fmt.Errorf("%s: %w", filepath.Base(path), photo.ErrTooLarge)
	}
	if err != nil {
		return nil, err
	}
	return os.ReadFile(path)
}

// fewPhotos are taken in before anybody would read how far that is.
const fewPhotos = 3

// takePhotos takes pictures into the open case, apart from the window: a camera's are
// large.
func (w *window) takePhotos(n int, read func(i int) (newPhoto, error)) {
	d := w.at.Desk
	if !d.Open {
		w.at.Ask.Tell(errors.New(kit.L("window.photos.no-case")))
		return
	}
	w.leave()
	id, store := d.Case.ID, d.Store
	ctx, done, tell := w.at.Ctx, func() bool { return false }, func(string) {}
	if n > fewPhotos {
		busy := w.at.Ask.Busy(ctx, kit.L("window.photos.looking", 1, n))
		ctx, done = busy.Ctx, busy.Done
		tell = func(text string) { fyne.Do(func() { busy.Say(text) }) }
	}
	w.at.Start(func() {
		files, err := takeIn(ctx, store, id, n, read, tell)
		fyne.Do(func() {
			stopped := done()
			if err != nil {
				w.at.Ask.Tell(fmt.Errorf("%w\nThe case is as it was", err))
				return
			}
			w.tookPhotos(store, id, files, n, stopped)
		})
	})
}

// takeIn reads pictures, and keeps them once all of them have been found to be some; it
// answers their names in the case. Whoever stops it has those that were kept by then.
func takeIn(ctx context.Context, store *sqlite.Store, id string, n int, read func(i int) (newPhoto, error), tell func(string)) ([]string, error) {
	var all []newPhoto
	for i := 0; i < n; i++ {
		if ctx.Err() != nil {
			return nil, nil
		}
		tell(kit.L("window.photos.looking", i+1, n))
		p, err := read(i)
		if err != nil {
			return nil, err
		}
		if err := photo.Check(p.data); err != nil {
			return nil, fmt.Errorf("%s: %w", p.name, err)
		}
		all = append(all, p)
	}
	return attachPhotos(ctx, store, id, all, func(i int) { tell(kit.L("window.photos.keeping", i+1, n)) })
}

// attachPhotos keeps the pictures as they came, once for the same content, until ctx
// ends, and gives their names in the case.
func attachPhotos(ctx context.Context, store *sqlite.Store, id string, all []newPhoto, kept func(n int)) ([]string, error) {
	whole := context.WithoutCancel(ctx) // each is kept whole or not at all
	hashes, err := library.HashesOf(whole, store, id)
	if err != nil {
		return nil, err
	}
	var files []string
	for i, p := range all {
		if ctx.Err() != nil {
			break
		}
		kept(i)
		hash, err := store.PutAttachment(whole, p.data)
		if err != nil {
			return nil, err
		}
		file := photoName(p.name, hash, hashes)
		if err := store.Attach(whole, id, file, p.data); err != nil {
			return nil, err
		}
		hashes[file] = hash
		if !slices.Contains(files, file) {
			files = append(files, file)
		}
	}
	return files, nil
}

// tookPhotos puts pictures that are kept into their case, and shows them, unless another
// one is open by now.
func (w *window) tookPhotos(store *sqlite.Store, id string, files []string, n int, stopped bool) {
	d := w.at.Desk
	if d.Store != store || d.Case.ID != id {
		c, err := store.Get(w.at.Ctx, id)
		if err == nil {
			files = hang(&c, files)
			_, err = store.Put(w.at.Ctx, c, kit.L("window.photos.added", len(files)))
		}
		if err != nil {
			w.at.Ask.Tell(err)
		}
		return
	}
	w.leave()
	next := cases.Case{Photos: slices.Clone(d.Case.Photos)}
	files = hang(&next, files)
	w.showPhotos() // so that what is said belongs to this case
	added := kit.L("window.photos.added", len(files))
	w.pictures.says = added
	switch {
	case stopped:
		w.pictures.says = kit.L("window.photos.stopped", len(files), n)
	case len(files) == 0:
		w.pictures.says = kit.L("window.photos.here-already")
	}
	if len(files) > 0 {
		d.Edit(added, func(c *cases.Case) { hang(c, files) })
	}
	w.tabs.SelectIndex(photosTab)
	w.showPhotos()
}

// hang puts those pictures into the case that it hasn't yet, and answers them.
func hang(c *cases.Case, files []string) []string {
	var others []string
	for _, file := range files {
		if !slices.ContainsFunc(c.Photos, func(p cases.Photo) bool { return p.File == file }) {
			c.Photos = append(c.Photos, cases.Photo{File: file})
			others = append(others, file)
		}
	}
	return others
}
