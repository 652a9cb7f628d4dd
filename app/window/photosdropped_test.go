package window

import (
	"bytes"
	"context"
	"image/color"
	"os"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
)

// A dropped picture is kept as it came, once, under a name that no other has.
func TestDroppedPhotosAreKept(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	first, second := benchtest.PictureFile(t, "hose.JPG", color.Black), benchtest.PictureFile(t, "hose.JPG", color.White)
	for _, path := range []string{first, second, first} {
		w.importURIs([]fyne.URI{storage.NewFileURI(path)})
	}
	var files []string
	for _, p := range w.at.Desk.Case.Photos {
		files = append(files, p.File)
	}
	if !slices.Equal(files, []string{"photos/hose.jpg", "photos/hose-2.jpg"}) {
		t.Fatalf("the case has %v", files)
	}
	b, err := w.at.Desk.Store.Bundle(context.Background(), w.at.Desk.Case.ID)
	want, errRead := os.ReadFile(second)
	if err != nil || errRead != nil || !bytes.Equal(b.Files["photos/hose-2.jpg"], want) {
		t.Errorf("kept %d bytes of %d: %v, %v", len(b.Files["photos/hose-2.jpg"]), len(want), err, errRead)
	}
	if says := kittest.Texts(w.photos.Content()); w.tabs.SelectedIndex() != photosTab || !strings.Contains(says, kit.L("window.photos.here-already")) {
		t.Error("the photos aren't shown")
	}
}
