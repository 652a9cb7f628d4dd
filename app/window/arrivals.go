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
	at      bench.Bench
	warmup  *warmup.Screen
	photos  *photos.Photos
	intake  *intake.Intake
	results func(paths []string) // takes in what trainees handed in
}

// choose asks for a file to be taken in.
func (a *arrivals) choose() {
	a.at.Ask.OpenFile(append(library.CaseEndings(), library.ResultsEnding), func(file fyne.URI) { a.take([]fyne.URI{file}) })
}

// take takes what was dropped or chosen: logs and photos into the open case, and cases and results into the notebook. What
// lies beside cases is left, since nothing says whose it is.
func (a *arrivals) take(files []fyne.URI) {
	var holding, results, logs, pictures []string
	for _, file := range files {
		switch path := file.Path(); {
		case library.HoldsResults(path):
			results = append(results, path)
		case warmup.IsLog(path):
			logs = append(logs, path)
		case photos.IsPhoto(path):
			pictures = append(pictures, path)
		default:
			holding = append(holding, path)
		}
	}
	if len(results) > 0 {
		a.results(results)
	}
	switch {
	case len(results) == len(files):
	case len(holding) > 0: // another case may be open then
		a.intake.Take(holding, len(logs)+len(pictures))
	case len(logs) == 0:
		a.photos.Add(pictures)
	case len(pictures) == 0 || !a.at.Desk.Open: // without a case one of them says so
		a.warmup.Read(logs...)
	default:
		a.photos.Add(pictures)
		a.warmup.Read(logs...)
	}
}
