package window

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"sort"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/papers"
	"loopbook/app/window/asking"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/report"
)

// paperWindow makes the papers of the case that was open when it was asked for.
type paperWindow struct {
	w        *window
	window   fyne.Window
	ask      *asking.Asker
	view     *papers.View
	c        cases.Case        // as it was when its papers were asked for
	files    map[string]string // its files' hashes by their names
	photo    func(file string) ([]byte, error)
	revision int // that is shown
	choice   papers.Choice
	pdf      []byte // the paper as chosen; nil: being made
	cancel   context.CancelFunc
}

// print opens the papers of the open case.
func (w *window) print() {
	w.leave()
	if _, err := w.openPapers(); err != nil {
		w.at.Ask.Tell(err)
	}
}

func (w *window) openPapers() (*paperWindow, error) {
	d := w.at.Desk
	c, err := d.Store.Get(w.at.Ctx, d.Case.ID)
	if err != nil {
		return nil, err
	}
	files, err := library.HashesOf(w.at.Ctx, d.Store, c.ID)
	if err != nil {
		return nil, err
	}
	history, err := d.Store.History(w.at.Ctx, d.Case.ID)
	if err != nil {
		return nil, err
	}
	p := &paperWindow{w: w, view: papers.New(), c: c, files: files, revision: history.Revision, choice: w.prefs.paper(), cancel: func() {}}
	p.photo = w.pictures.smaller.Opener(w.at.Ctx, d.Store, c.Photos, files)
	p.window = w.app.NewWindow(kit.L("window.papers.title", c.Title))
	p.ask = asking.Over(p.window)
	p.window.SetContent(p.view.Content())
	p.window.Resize(fyne.NewSize(1040, 760))
	p.window.SetOnClosed(func() { p.cancel() })
	p.keys()
	p.view.OnChange = func(c papers.Choice) {
		p.choice = c
		w.prefs.setPaper(c)
		p.make()
	}
	p.view.OnSave, p.view.OnOpen, p.view.OnLogo = p.save, p.open, p.logo
	p.view.Put(p.choice)
	p.window.Show()
	p.make()
	return p, nil
}

// keys lets Escape and Ctrl W close the papers, and Ctrl Q end the program from
// here too: the window has no menu that would.
func (p *paperWindow) keys() {
	on := p.window.Canvas()
	on.SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			p.window.Close()
		}
	})
	for key, do := range map[fyne.KeyName]func(){fyne.KeyW: p.window.Close, fyne.KeyQ: p.w.quit} {
		on.AddShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}, func(fyne.Shortcut) { do() })
	}
}

// make writes the paper and shows its pages, apart from the window. A newer
// choice drops what is under way.
func (p *paperWindow) make() {
	p.cancel()
	ctx, cancel := context.WithCancel(p.w.at.Ctx)
	p.cancel, p.pdf = cancel, nil
	p.view.Say(kit.L("window.papers.making"))
	units, choice, logo := p.w.at.Desk.Units, p.choice, p.w.prefs.logo()
	p.w.at.Start(func() {
		var out bytes.Buffer
		m, err := p.material(ctx, choice)
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
				p.view.Say(err.Error())
				return
			}
			p.pdf = out.Bytes()
			p.view.Say(said)
			p.view.ShowPages(pages)
		})
	})
}

// material judges the case for the paper. One that is anonymous is made of the files
// as they came, any other shows the smaller copies of its pictures.
func (p *paperWindow) material(ctx context.Context, choice papers.Choice) (m report.Material, err error) {
	b, anonymous := cases.Bundle{Case: p.c}, choice.Kind == report.Trainer && !choice.Named
	if anonymous {
		b.Files, err = library.Contents(ctx, p.w.at.Desk.Store, p.files)
	}
	if err == nil {
		b, err = mind.PaperBundle(b, choice.Kind, choice.Named)
	}
	if err == nil {
		m, err = p.w.at.Desk.Mind.Material(ctx, b)
	}
	m.Revision = p.revision
	if !anonymous {
		m.Photo = p.photo
	}
	return m, err
}

// pagesOf turns a PDF into pictures of its pages, by the program that the system
// has for it, and says how many they are or why they can't be shown.
func pagesOf(ctx context.Context, pdf []byte) ([]image.Image, string) {
	pages, err := rasterised(ctx, pdf)
	switch {
	case errors.Is(err, exec.ErrNotFound):
		return nil, kit.L("window.papers.no-preview")
	case err != nil:
		return nil, kit.L("window.papers.preview-failed", err.Error())
	}
	return pages, kit.L("window.papers.made", len(pages))
}

// previewDPI makes an A4 page some 900 pixels wide.
const previewDPI = "110"

func rasterised(ctx context.Context, pdf []byte) ([]image.Image, error) {
	dir, err := os.MkdirTemp("", "loopbook-pages-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	cmd := exec.CommandContext(ctx, "pdftoppm", "-r", previewDPI, "-png", "-", filepath.Join(dir, "page"))
	cmd.Stdin = bytes.NewReader(pdf)
	if out, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w: %s", err, out)
	}
	files, err := filepath.Glob(filepath.Join(dir, "*.png"))
	if err != nil {
		return nil, err
	}
	sort.Strings(files)
	pages := make([]image.Image, 0, len(files))
	for _, name := range files {
		img, err := readPNG(name)
		if err != nil {
			return nil, err
		}
		pages = append(pages, img)
	}
	return pages, nil
}

func readPNG(name string) (image.Image, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return png.Decode(f)
}

// open hands the paper to the system's program, which prints too.
func (p *paperWindow) open() {
	if p.pdf == nil {
		return
	}
	path, err := filename.InDocuments(p.fileName())
	if err == nil {
		err = library.WriteFile(path, p.write)
	}
	if err != nil {
		p.view.Say(err.Error())
		return
	}
	p.view.Say(kit.L("window.papers.saved", path))
	if err := p.w.app.OpenURL(asURL(storage.NewFileURI(path))); err != nil {
		p.view.Say(kit.L("window.papers.not-opened", path, err.Error()))
	}
}

func (p *paperWindow) write(f *os.File) error {
	_, err := f.Write(p.pdf)
	return err
}

func (p *paperWindow) save() {
	if p.pdf == nil {
		return
	}
	p.ask.SaveFile(p.fileName(), nil, func(f fyne.URIWriteCloser, err error) {
		if err != nil || f == nil {
			return
		}
		f.Close()
		if err := library.WriteFile(f.URI().Path(), p.write); err != nil {
			p.view.Say(err.Error())
			return
		}
		p.view.Say(kit.L("window.papers.saved", f.URI().Path()))
	})
}

// fileName is the paper's, saved or opened: each kind has its own in each language.
func (p *paperWindow) fileName() string {
	return filename.OfCase(p.c.Title, string(p.choice.Kind)+" "+string(p.choice.Lang), ".pdf")
}

// longLogo keeps a logo small enough for the preferences.
const longLogo = 600

// logo asks for a picture for the head, or takes it off.
func (p *paperWindow) logo() {
	if p.choice.HasLogo {
		p.w.prefs.setLogo(nil)
		p.choice.HasLogo = false
		p.view.Put(p.choice)
		p.make()
		return
	}
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil || f == nil {
			return
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
func (p *paperWindow) takeLogo(raw []byte) error {
	small, err := photo.SmallJPEG(raw, longLogo)
	if err != nil {
		return err
	}
	p.w.prefs.setLogo(small)
	p.choice.HasLogo = true
	p.view.Put(p.choice)
	p.make()
	return nil
}

func asURL(u fyne.URI) *url.URL { return &url.URL{Scheme: u.Scheme(), Path: u.Path()} }
