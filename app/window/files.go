package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/photos"
	"loopbook/app/window/warmup"
)

func (w *window) openDemo() {
	path, err := library.DemoPath()
	if err == nil {
		err = w.turnTo(path, true)
	}
	if err != nil {
		w.at.Ask.Tell(err)
	}
}

func (w *window) openOwn() {
	path, err := library.OwnPath()
	if err == nil {
		err = w.turnTo(path, false)
	}
	if err != nil {
		w.at.Ask.Tell(err)
	}
}

func (w *window) turnTo(path string, demo bool) error {
	w.leave()
	store, err := library.Open(w.at.Ctx, path)
	if err != nil {
		return err
	}
	title, name := "Loopbook", "Loopbook"
	if demo {
		title, name = kit.L("window.frame.demo-title"), kit.L("window.frame.demo")
		if err := library.FillDemo(w.at.Ctx, store); err != nil {
			store.Close()
			return err
		}
	}
	w.window.SetTitle(title)
	w.notebook.SetName(name)
	w.at.Desk.Odds.Invented = demo
	w.use(store)
	return nil
}

func (w *window) chooseImport() {
	w.at.Ask.OpenFile(library.CaseEndings(), func(file fyne.URI) { w.importURIs([]fyne.URI{file}) })
}

// importURIs takes what was dropped or chosen: a log and photos into the open case, all
// else into the notebook.
func (w *window) importURIs(files []fyne.URI) {
	if len(files) == 1 && warmup.IsLog(files[0].Path()) {
		w.warmup.Read(files[0].Path())
		return
	}
	if pictures := photos.Among(files); len(pictures) == len(files) {
		w.photos.Add(pictures)
		return
	}
	paths := make([]string, len(files))
	for i, file := range files {
		paths[i] = file.Path()
	}
	w.takeAll(paths)
}
