package papers

import (
	"io"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/ui/kit"
	"loopbook/cases/photo"
)

// longLogo keeps a logo small enough for the preferences.
const longLogo = 600

// logo asks for a picture for the head, or takes it off.
func (p *window) logo() {
	if p.choice.HasLogo {
		p.of.kept.setLogo(nil)
		p.choice.HasLogo = false
		p.view.Put(p.choice)
		p.make()
		return
	}
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil {
			p.ask.Tell(err)
			return
		}
		if f == nil {
			return // none was chosen
		}
		defer f.Close()
		raw, err := io.ReadAll(io.LimitReader(f, photo.MaxBytes+1))
		if err == nil {
			err = p.takeLogo(raw)
		}
		if err != nil {
			p.view.Say(kit.L("window.papers.logo-refused", f.URI().Name(), err.Error()))
		}
	}, p.window)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".png", ".jpg", ".jpeg"}))
	p.ask.Show(d)
}

// takeLogo keeps a smaller copy of the picture for all papers to come.
func (p *window) takeLogo(raw []byte) error {
	small, err := photo.SmallJPEG(raw, longLogo)
	if err != nil {
		return err
	}
	p.of.kept.setLogo(small)
	p.choice.HasLogo = true
	p.view.Put(p.choice)
	p.make()
	return nil
}
