package papers

import (
	"fyne.io/fyne/v2"

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
	p.ask.OpenFile([]string{".png", ".jpg", ".jpeg"}, func(file fyne.URI) {
		raw, err := photo.ReadFile(file.Path())
		if err == nil {
			err = p.takeLogo(raw)
		}
		if err != nil {
			p.view.Say(kit.L("window.papers.logo-refused", file.Name(), err.Error()))
		}
	})
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
