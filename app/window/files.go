package window

import (
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
)

func (w *window) openDemo() {
	path, err := library.DemoPath()
	if err == nil {
		err = w.turnTo(path, true)
	}
	if err != nil {
		w.tell(err)
	}
}

func (w *window) openOwn() {
	path, err := library.OwnPath()
	if err == nil {
		err = w.turnTo(path, false)
	}
	if err != nil {
		w.tell(err)
	}
}

func (w *window) turnTo(path string, demo bool) error {
	w.leave()
	store, err := library.Open(w.ctx, path)
	if err != nil {
		return err
	}
	title, name := "Loopbook", "Loopbook"
	if demo {
		title, name = kit.L("window.frame.demo-title"), kit.L("window.frame.demo")
		if err := library.FillDemo(w.ctx, store); err != nil {
			store.Close()
			return err
		}
	}
	w.window.SetTitle(title)
	w.notebook.SetName(name)
	w.desk.Odds.Invented = demo
	w.use(store)
	return nil
}

func (w *window) chooseImport() {
	w.pickFile(library.CaseEndings(), func(file fyne.URI) { w.importURIs([]fyne.URI{file}) })
}

// pickFile asks for a file with one of the endings.
func (w *window) pickFile(endings []string, take func(fyne.URI)) {
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err != nil {
			w.tell(err)
			return
		}
		if r != nil {
			r.Close()
			take(r.URI())
		}
	}, w.window)
	d.SetFilter(storage.NewExtensionFileFilter(endings))
	d.Resize(fyne.NewSize(900, 600))
	w.ask(d)
}

// importURIs takes what was dropped or chosen: a log and photos into the open case, all
// else into the notebook.
func (w *window) importURIs(files []fyne.URI) {
	if len(files) == 1 && isLog(files[0].Path()) {
		w.readLog(files[0].Path())
		return
	}
	if photos := photosAmong(files); len(photos) == len(files) {
		w.addPhotos(photos)
		return
	}
	paths := make([]string, len(files))
	for i, file := range files {
		paths[i] = file.Path()
	}
	w.takeAll(paths)
}

// filePath is where a file lies in the documents' folder.
func filePath(name string) (string, error) {
	home, err := os.UserHomeDir()
	if err != nil {
		return "", err
	}
	dir := filepath.Join(home, "Documents", "Loopbook")
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", err
	}
	return filepath.Join(dir, name), nil
}

// caseFile names a file after a case's title and what of the case it holds: each thing has a name
// of its own, so that none is written over another.
func caseFile(title, what, ending string) string {
	return fileName(title) + " - " + fileName(what) + ending
}

// longName leaves room for what a file is of.
const longName = 60

// wholeWords drops a text's last letter, and the word that it is of where there is another.
func wholeWords(text string) string {
	if at := strings.LastIndex(text, " "); at > 0 {
		return text[:at]
	}
	return string([]rune(text)[:longName])
}

// fileName makes a name that any system can hold from a case's title.
func fileName(title string) string {
	clean := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, strings.TrimSpace(title))
	clean = strings.Trim(clean, ". -")
	if r := []rune(clean); len(r) > longName {
		clean = strings.TrimRight(wholeWords(string(r[:longName+1])), "., -")
	}
	if clean == "" {
		return "case"
	}
	return clean
}
