package papers

import (
	"bytes"
	"context"
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/papers"
	"loopbook/app/window/asking"
	"loopbook/report"
)

// window makes the papers of the case that was open when it was asked for.
type window struct {
	of     *Papers
	about  subject
	window fyne.Window
	ask    *asking.Asker // over this window
	view   *view.View
	choice view.Choice
	pdf    []byte // the paper as chosen; nil: being made
	wanted func() // what waits for it; nil: nothing
	cancel context.CancelFunc
}

func newWindow(of *Papers, about subject) *window {
	p := &window{of: of, about: about, view: view.New(), choice: of.kept.choice(), cancel: func() {}}
	p.window = of.app.NewWindow(kit.L("window.papers.title", about.c.Title))
	p.ask = asking.Over(p.window)
	p.window.SetContent(p.view.Content())
	p.window.Resize(fyne.NewSize(1040, 760))
	p.window.SetOnClosed(func() {
		p.view.Leave() // the toolkit tells a field that it is left, but not that its window is closed
		p.cancel()
		of.closed(p)
	})
	p.keys()
	p.view.OnChange = func(c view.Choice) {
		p.choice = c
		p.of.kept.keep(c)
		p.make()
	}
	p.view.OnSave, p.view.OnOpen, p.view.OnLogo = func() { p.once(p.save) }, func() { p.once(p.open) }, p.logo
	p.view.Put(p.choice)
	return p
}

// keys lets Escape and Ctrl W close the papers, and Ctrl Q end the program from
// here too: the window has no menu that would.
func (p *window) keys() {
	on := p.window.Canvas()
	on.SetOnTypedKey(func(e *fyne.KeyEvent) {
		if !kit.Page(on, e) && e.Name == fyne.KeyEscape {
			p.window.Close()
		}
	})
	for key, do := range map[fyne.KeyName]func(){fyne.KeyW: p.window.Close, fyne.KeyQ: func() {
		p.view.Leave()
		p.of.quit()
	}} {
		on.AddShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}, func(fyne.Shortcut) { do() })
	}
}

// make writes the paper and shows its pages, apart from the window. A newer
// choice drops what is under way.
func (p *window) make() {
	p.cancel()
	ctx, cancel := context.WithCancel(p.of.at.Ctx)
	p.cancel, p.pdf, p.wanted = cancel, nil, nil
	p.view.Say(kit.L("window.papers.making"))
	units, choice, logo := p.of.at.Desk.Units, p.choice, p.of.kept.logo()
	p.of.at.Start(func() {
		var out bytes.Buffer
		m, err := p.of.material(ctx, p.about, choice)
		m.Shop = report.Shop{Name: choice.Name, Address: choice.Address, Logo: logo}
		if err == nil {
			err = report.Write(&out, choice.Kind, m, report.Options{Units: units, Page: choice.Page, Lang: choice.Lang, WithoutAnswer: !choice.Answer})
		}
		var pages []image.Image
		said := ""
		if err == nil {
			pages, said = pagesOf(ctx, out.Bytes())
		}
		fyne.Do(func() {
			switch {
			case ctx.Err() != nil:
				return
			case err != nil:
				p.view.Say(kit.Capital(err.Error()))
				return
			}
			p.pdf = out.Bytes()
			p.say(said)
			p.view.ShowPages(pages)
			if do := p.wanted; do != nil {
				p.wanted = nil
				do()
			}
		})
	})
}

// say tells of a paper that is made, and what it lacks: it goes to the customer without that.
func (p *window) say(text string) {
	if lacks := p.about.lacks; len(lacks) > 0 {
		text += "\n" + kit.L("window.papers.lacks", strings.Join(lacks, "\n"))
	}
	p.view.Say(text)
}
