package window

import (
	"image/color"
	"os"
	"path/filepath"
	"testing"

	"loopbook/app/library"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// The pictures of a case that came in have their copies before anybody looks at them.
func TestAnImportedPictureIsMadeSmaller(t *testing.T) {
	w, _ := shown(t)
	data, err := os.ReadFile(benchtest.PictureFile(t, "hose.jpg", color.White))
	if err != nil {
		t.Fatal(err)
	}
	b := cases.Bundle{Case: casetest.Invented(1), Files: map[string][]byte{"photos/1.jpg": data}}
	b.Case.Photos = []cases.Photo{{File: "photos/1.jpg"}}
	path := filepath.Join(t.TempDir(), "one.zip")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteBundle(f, b) }); err != nil {
		t.Fatal(err)
	}
	w.takeAll([]string{path})
	hashes, err := library.HashesOf(w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.ID)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.at.Desk.Store.Smaller(w.at.Ctx, hashes["photos/1.jpg"]); err != nil || w.tabs.SelectedIndex() == photosTab {
		t.Errorf("%v; tab %d is in sight", err, w.tabs.SelectedIndex())
	}
}
