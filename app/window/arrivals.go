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

// take takes what was dropped or chosen: logs and photos into the open case, and what has cases among it
// into the notebook.
func (a *arrivals) take(files []fyne.URI) {
	var paths, logs, pictures []string
	for _, file := range files {
		path := file.Path()
		paths = append(paths, path)
		switch {
		case warmup.IsLog(path):
			logs = append(logs, path)
		case photos.IsPhoto(path):
			pictures = append(pictures, path)
		}
	}
	switch {
	case len(logs)+len(pictures) < len(paths):
		a.intake.Take(paths)
	case len(logs) == 0:
		a.photos.Add(pictures)
	case len(pictures) == 0 || !a.at.Desk.Open: // without a case one of them says so
		a.warmup.Read(logs...)
	default:
		a.photos.Add(pictures)
		a.warmup.Read(logs...)
	}
}
