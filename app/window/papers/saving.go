package papers

import (
	"net/url"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/filename"
	"loopbook/report"
)

// once does what needs the paper, as soon as that is made.
func (p *window) once(do func()) {
	if p.pdf == nil {
		p.wanted = do
		return
	}
	do()
}

// save asks where the paper is kept.
func (p *window) save() {
	p.ask.SaveFile(p.fileName(), nil, func(path string) {
		if err := library.WriteFile(path, p.write); err != nil {
			p.view.Say(kit.Capital(err.Error()))
			return
		}
		p.say(kit.L("window.papers.saved", path))
	})
}

// open hands the paper to the system's program, which prints too.
func (p *window) open() {
	path, err := filename.InDocuments(p.fileName())
	if err == nil {
		err = library.WriteFile(path, p.write)
	}
	if err != nil {
		p.view.Say(kit.Capital(err.Error()))
		return
	}
	p.say(kit.L("window.papers.saved", path))
	if err := p.of.app.OpenURL(asURL(storage.NewFileURI(path))); err != nil {
		p.say(kit.L("window.papers.not-opened", path, err.Error()))
	}
}

func (p *window) write(f *os.File) error {
	_, err := f.Write(p.pdf)
	return err
}

// fileName is the paper's, saved or opened: each kind of each case has its own in each language. The trainer's
// sheet keeps the answer for its last page, and a title often tells it.
func (p *window) fileName() string {
	title := p.about.c.Title
	if p.choice.Kind == report.Trainer {
		title = ""
	}
	return filename.OfCase(title, p.about.c.ID, string(p.choice.Kind)+" "+string(p.choice.Lang), ".pdf")
}

func asURL(u fyne.URI) *url.URL { return &url.URL{Scheme: u.Scheme(), Path: u.Path()} }
