// Package photos fills the screen of the open case's pictures, and takes pictures into the case.
package photos

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/photos"
	"loopbook/app/window/bench"
	"loopbook/cases/photo"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Photos shows the open case's pictures.
type Photos struct {
	at      bench.Bench
	tab     bench.Tab
	view    *view.View
	smaller *library.Smaller
	album   album
	copied  func() string // the text in the clipboard
}

// New shows no pictures yet.
func New(at bench.Bench, tab bench.Tab, smaller *library.Smaller, copied func() string) *Photos {
	p := &Photos{at: at, tab: tab, view: view.New(at.Desk.Edit), smaller: smaller, album: album{drop: func() {}}, copied: copied}
	p.view.PointName = func(at diagram.Point) string { return p.at.Desk.By().Say(say.PointName(at)) }
	p.view.OnAdd, p.view.OnPaste, p.view.OnOpen = p.choose, p.Paste, p.open
	return p
}

// Content is the screen.
func (p *Photos) Content() fyne.CanvasObject { return p.view.Content() }

// Leave keeps what is being typed.
func (p *Photos) Leave() { p.view.Leave() }

// cardPixels is the long side of a picture on its card, on a fine screen too.
const cardPixels = 640

// Show paints the pictures; those that aren't read yet are read apart from
// the window.
func (p *Photos) Show() {
	d, had := p.at.Desk, &p.album
	had.follow(p.at.Ctx, d.Case.ID)
	hashes, err := library.HashesOf(p.at.Ctx, d.Store, d.Case.ID)
	if err != nil {
		p.at.Ask.Tell(err)
		return
	}
	data := view.Data{Case: d.Case, Says: had.says, Points: d.Case.Loop.Points()}
	for _, one := range d.Case.Photos {
		hash, here := hashes[one.File]
		shown, read := had.small[one.File+hash]
		switch {
		case !here:
			shown.Problem = kit.L("window.photos.missing")
		case !read:
			had.small[one.File+hash] = view.Photo{Problem: kit.L("window.photos.reading")}
			shown = had.small[one.File+hash]
			p.read(one.File+hash, hash)
		}
		data.Photos = append(data.Photos, shown)
	}
	p.view.Show(data)
}

func (p *Photos) read(key, hash string) {
	ctx, store := p.album.reading, p.at.Desk.Store
	p.at.Start(func() {
		shown := view.Photo{}
		img, err := p.smaller.Image(ctx, store, hash, cardPixels)
		if err != nil {
			shown.Problem = kit.L("window.photos.unreadable", err.Error())
		} else {
			shown.Image = img
		}
		fyne.Do(func() {
			if ctx.Err() != nil {
				return // another case is open
			}
			p.album.small[key] = shown
			if p.tab.InSight() {
				p.Show()
			}
		})
	})
}

func (p *Photos) choose() {
	p.at.Ask.OpenFile(endings(), func(file fyne.URI) { p.Add([]string{file.Path()}) })
}

// open shows a picture as large as the window lets it be.
func (p *Photos) open(i int) {
	d := p.at.Desk
	one := d.Case.Photos[i]
	hashes, err := library.HashesOf(p.at.Ctx, d.Store, d.Case.ID)
	if err != nil {
		p.at.Ask.Tell(err)
		return
	}
	img, err := p.smaller.Image(p.at.Ctx, d.Store, hashes[one.File], photo.LongSide)
	if err != nil {
		p.at.Ask.Tell(err)
		return
	}
	picture := canvas.NewImageFromImage(img)
	picture.FillMode = canvas.ImageFillContain
	size := p.at.Ask.Size()
	picture.SetMinSize(fyne.NewSize(size.Width*0.8, size.Height*0.75))
	title := one.Caption
	if title == "" {
		title = one.File
	}
	p.at.Ask.Show(p.at.Ask.Look(title, kit.L("window.photos.close"), picture))
}

// ReadAhead makes the smaller copies of the open case's pictures, one after the other and
// apart from the window, before anybody looks at them or prints them.
func (p *Photos) ReadAhead() {
	ctx, store, list := p.at.Ctx, p.at.Desk.Store, p.at.Desk.Case.Photos
	hashes, err := library.HashesOf(ctx, store, p.at.Desk.Case.ID)
	if err != nil || len(list) == 0 {
		return // a fault is told where they are shown
	}
	p.at.Start(func() {
		for _, one := range list {
			if hash, here := hashes[one.File]; here {
				_, _ = p.smaller.Of(ctx, store, hash) // a fault is told where it is shown
			}
		}
	})
}
