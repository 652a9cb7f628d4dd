package window

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/photos"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// photos are the open case's pictures as far as they were read.
type photos struct {
	smaller *library.Smaller
	of      string                // the case that they belong to
	small   map[string]view.Photo // by the file's name and hash
	says    string
	reading context.Context // ends when another case's are shown
	drop    func()          // ends it
}

func (w *window) makePhotos() {
	w.photos = view.New(w.at.Desk.Edit)
	w.photos.PointName = func(p diagram.Point) string { return w.at.Desk.By().Say(say.PointName(p)) }
	w.photos.OnAdd, w.photos.OnPaste, w.photos.OnOpen = w.choosePhoto, w.pastePhoto, w.openPhoto
}

// cardPixels is the long side of a picture on its card, on a fine screen too.
const cardPixels = 640

// showPhotos paints the pictures; those that aren't read yet are read apart from
// the window.
func (w *window) showPhotos() {
	d, had := w.at.Desk, w.pictures
	if had.of != d.Case.ID {
		had.drop()
		had.of, had.small, had.says = d.Case.ID, map[string]view.Photo{}, ""
		had.reading, had.drop = context.WithCancel(w.at.Ctx)
	}
	hashes, err := library.HashesOf(w.at.Ctx, d.Store, d.Case.ID)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	data := view.Data{Case: d.Case, Says: had.says, Points: pointsOf(&d.Case)}
	for _, p := range d.Case.Photos {
		hash, here := hashes[p.File]
		shown, read := had.small[p.File+hash]
		switch {
		case !here:
			shown.Problem = kit.L("window.photos.missing")
		case !read:
			had.small[p.File+hash] = view.Photo{Problem: kit.L("window.photos.reading")}
			shown = had.small[p.File+hash]
			w.readPhoto(p.File+hash, hash)
		}
		data.Photos = append(data.Photos, shown)
	}
	w.photos.Show(data)
}

func pointsOf(c *cases.Case) []diagram.Point {
	l, err := diagram.LoopByID(c.Loop.Layout)
	if err != nil {
		return diagram.Points()
	}
	out := make([]diagram.Point, len(l.Points))
	for i, p := range l.Points {
		out[i] = p.Point
	}
	return out
}

func (w *window) readPhoto(key, hash string) {
	ctx, store := w.pictures.reading, w.at.Desk.Store
	w.at.Start(func() {
		shown := view.Photo{}
		img, err := w.pictures.smaller.Image(ctx, store, hash, cardPixels)
		if err != nil {
			shown.Problem = err.Error()
		} else {
			shown.Image = img
		}
		fyne.Do(func() {
			if ctx.Err() != nil {
				return // another case is open
			}
			w.pictures.small[key] = shown
			if w.tabs.SelectedIndex() == photosTab {
				w.showPhotos()
			}
		})
	})
}

// readAhead makes the smaller copies of the open case's pictures, one after the other and
// apart from the window, before anybody looks at them or prints them.
func (w *window) readAhead() {
	ctx, store, list := w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.Photos
	hashes, err := library.HashesOf(ctx, store, w.at.Desk.Case.ID)
	if err != nil || len(list) == 0 {
		return // a fault is told where they are shown
	}
	w.at.Start(func() {
		for _, p := range list {
			if hash, here := hashes[p.File]; here {
				_, _ = w.pictures.smaller.Of(ctx, store, hash) // a fault is told where it is shown
			}
		}
	})
}

// photoEndings are of files that are taken for pictures; what they really are
// is told by their content.
func photoEndings() []string {
	return []string{".jpg", ".jpeg", ".png", ".gif", ".bmp", ".tif", ".tiff", ".webp", ".heic", ".heif"}
}

func isPhoto(path string) bool {
	return slices.Contains(photoEndings(), strings.ToLower(filepath.Ext(path)))
}

func (w *window) choosePhoto() {
	w.at.Ask.OpenFile(photoEndings(), func(file fyne.URI) { w.addPhotos([]string{file.Path()}) })
}

// photoName is a name that no other picture of the case has.
func photoName(name, hash string, taken map[string]string) string {
	for file, had := range taken {
		if had == hash && strings.HasPrefix(file, "photos/") {
			return file
		}
	}
	ending := strings.ToLower(filepath.Ext(name))
	base := "photos/" + filename.Of(strings.TrimSuffix(name, filepath.Ext(name)))
	file := base + ending
	for n := 2; taken[file] != ""; n++ {
		file = fmt.Sprintf("%s-%d%s", base, n, ending)
	}
	return file
}

// openPhoto shows a picture as large as the window lets it be.
func (w *window) openPhoto(i int) {
	d := w.at.Desk
	p := d.Case.Photos[i]
	hashes, err := library.HashesOf(w.at.Ctx, d.Store, d.Case.ID)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	img, err := w.pictures.smaller.Image(w.at.Ctx, d.Store, hashes[p.File], photo.LongSide)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	picture := canvas.NewImageFromImage(img)
	picture.FillMode = canvas.ImageFillContain
	size := w.window.Canvas().Size()
	picture.SetMinSize(fyne.NewSize(size.Width*0.8, size.Height*0.75))
	title := p.Caption
	if title == "" {
		title = p.File
	}
	w.at.Ask.Show(w.at.Ask.Look(title, kit.L("window.photos.close"), picture))
}

// photosAmong are the paths of those files that are taken for pictures.
func photosAmong(files []fyne.URI) []string {
	var out []string
	for _, file := range files {
		if isPhoto(file.Path()) {
			out = append(out, file.Path())
		}
	}
	return out
}
