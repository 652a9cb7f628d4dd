package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/window/bench"
	"loopbook/app/window/intake"
	"loopbook/app/window/photos"
	"loopbook/app/window/warmup"
)

// arrivals are files that were dropped or chosen; each goes where its kind belongs.
type arrivals struct {
	at     bench.Bench
	warmup *warmup.Screen
	photos *photos.Photos
	intake *intake.Intake
}

// choose asks for a file to be taken in.
func (a *arrivals) choose() {
	a.at.Ask.OpenFile(library.CaseEndings(), func(file fyne.URI) { a.take([]fyne.URI{file}) })
}

// take takes what was dropped or chosen: a log and photos into the open case, all
// else into the notebook.
func (a *arrivals) take(files []fyne.URI) {
	if len(files) == 1 && warmup.IsLog(files[0].Path()) {
		a.warmup.Read(files[0].Path())
		return
	}
	if pictures := photos.Among(files); len(pictures) == len(files) {
		a.photos.Add(pictures)
		return
	}
	paths := make([]string, len(files))
	for i, file := range files {
		paths[i] = file.Path()
	}
	a.intake.Take(paths)
}
