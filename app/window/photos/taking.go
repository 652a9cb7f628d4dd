package photos

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

// Add reads files and takes those that are pictures into the open case.
func (p *Photos) Add(paths []string) {
	p.take(len(paths), func(i int) (newPhoto, error) {
		data, err := photo.ReadFile(paths[i])
		return newPhoto{filepath.Base(paths[i]), data}, err
	})
}

// fewPhotos are taken in before anybody would read how far that is.
const fewPhotos = 3

// take takes pictures into the open case, apart from the window: a camera's are
// large.
func (p *Photos) take(n int, read func(i int) (newPhoto, error)) {
	d := p.at.Desk
	if !d.Open {
		p.at.Ask.Tell(errors.New(kit.L("window.photos.no-case")))
		return
	}
	p.at.Leave()
	id, store := d.Case.ID, d.Store
	ctx, done, tell := p.at.Ctx, func() bool { return false }, func(string) {}
	if n > fewPhotos {
		busy := p.at.Ask.Busy(ctx, kit.L("window.photos.looking", 1, n))
		ctx, done = busy.Ctx, busy.Done
		tell = func(text string) { fyne.Do(func() { busy.Say(text) }) }
	}
	p.at.Start(func() {
		files, refused, err := takeIn(ctx, store, id, n, read, tell)
		fyne.Do(func() {
			stopped := done()
			err := errors.Join(refused, err)
			if len(files) > 0 || err == nil {
				p.took(store, id, files, n, stopped)
			}
			switch {
			case err == nil:
			case len(files) > 0:
				p.at.Ask.Tell(fmt.Errorf("%w\n%s", err, kit.L("window.photos.others", len(files))))
			default:
				p.at.Ask.Tell(fmt.Errorf("%w\nThe case is as it was", err))
			}
		})
	})
}

// took puts pictures that are kept into their case, and shows them, unless another
// one is open by now.
func (p *Photos) took(store *sqlite.Store, id string, files []string, n int, stopped bool) {
	d := p.at.Desk
	if d.Store != store || d.Case.ID != id {
		c, err := store.Get(p.at.Ctx, id)
		if err == nil {
			files = hang(&c, files)
			_, err = store.Put(p.at.Ctx, c, kit.L("window.photos.added", len(files)))
		}
		if err != nil {
			p.at.Ask.Tell(err)
		}
		return
	}
	p.at.Leave()
	next := cases.Case{Photos: slices.Clone(d.Case.Photos)}
	files = hang(&next, files)
	p.Show() // so that what is said belongs to this case
	added := kit.L("window.photos.added", len(files))
	p.album.says = added
	switch {
	case stopped:
		p.album.says = kit.L("window.photos.stopped", len(files), n)
	case len(files) == 0:
		p.album.says = kit.L("window.photos.here-already")
	}
	if len(files) > 0 {
		d.Edit(added, func(c *cases.Case) { hang(c, files) })
	}
	p.tab.Open()
	p.Show()
	if len(files) > 0 { // what it shows is known now
		kit.Focus(p.view.Caption(len(d.Case.Photos) - len(files)))
	}
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
