package window

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"loopbook/app/library"
)

// pictureFile writes a JPEG of one colour.
func pictureFile(t *testing.T, name string, of color.Color) string {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 40, 30))
	for i := 0; i < 40*30; i++ {
		img.Set(i%40, i/40, of)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, nil); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, out.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// A dropped picture is kept as it came, once, under a name that no other has.
func TestDroppedPhotosAreKept(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	first, second := pictureFile(t, "hose.JPG", color.Black), pictureFile(t, "hose.JPG", color.White)
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
	if w.tabs.SelectedIndex() != photosTab || w.pictures.says == "" {
		t.Error("the photos aren't shown")
	}
}

func TestWhatIsNoPhotoChangesNothing(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	path := filepath.Join(t.TempDir(), "page.png")
	if err := os.WriteFile(path, []byte("<html>"), 0o644); err != nil {
		t.Fatal(err)
	}
	w.addPhotos([]string{pictureFile(t, "fine.jpg", color.Black), path})
	if len(w.at.Desk.Case.Photos) != 0 {
		t.Errorf("photos %+v", w.at.Desk.Case.Photos)
	}
}

// What file managers put into the clipboard: paths, or file addresses (RFC 8089)
// by CR LF (RFC 2483, text/uri-list).
func TestCopiedFilesAreFound(t *testing.T) {
	dir := t.TempDir()
	path := filepath.ToSlash(filepath.Join(dir, "a b.jpg"))
	address := storage.NewFileURI(path).String()
	for _, text := range []string{path, "file://" + strings.ReplaceAll(path, " ", "%20") + "\r\n", address + "\n" + filepath.Join(dir, "notes.txt")} {
		if got := copiedPhotos(text); len(got) != 1 || filepath.ToSlash(got[0]) != path {
			t.Errorf("%q names %q, want %q", text, got, path)
		}
	}
	if got := copiedPhotos("a word.jpg\nhttps://example.org/x.jpg"); len(got) != 0 {
		t.Errorf("found %q", got)
	}
}

// A photo leaves the notebook without what the camera noted, unless it is asked
// for.
func TestPhotosLeaveWithoutTheirNotes(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	path := pictureFile(t, "hose.jpeg", color.Black)
	plain, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	secret := "51.5 N 0.1 W"
	noted := slices.Concat(plain[:2], []byte{0xff, 0xfe, 0, byte(len(secret) + 2)}, []byte(secret), plain[2:]) // a comment: ITU-T T.81, B.2.4.5
	if err := os.WriteFile(path, noted, 0o644); err != nil {
		t.Fatal(err)
	}
	w.addPhotos([]string{path})
	for _, tt := range []struct {
		g    library.Giving
		says bool
	}{{library.Giving{}, false}, {library.Giving{Notes: true}, true}, {library.Giving{Anonymous: true}, false}} {
		b, _, err := tt.g.Bundle(context.Background(), w.at.Desk.Store, w.at.Desk.Case.ID)
		if err != nil || len(b.Case.Photos) != 1 {
			t.Fatalf("%+v: %v, %+v", tt.g, err, b.Case.Photos)
		}
		data := b.Files[b.Case.Photos[0].File]
		if len(data) == 0 || bytes.Contains(data, []byte(secret)) != tt.says {
			t.Errorf("%+v gives %d bytes with the note: %v", tt.g, len(data), !tt.says)
		}
	}
}

// Many pictures are taken in apart from the window, and stopping it loses nothing of what
// was kept by then: the rest is not in the case.
func TestManyPhotosAreTakenInApartFromTheWindow(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	var q queue
	w.at.Start = q.start
	pictures := func() (paths []string) {
		for i := range 6 {
			paths = append(paths, pictureFile(t, fmt.Sprintf("h%d.jpg", i), color.Gray{Y: uint8(30*i + len(w.at.Desk.Case.Photos))}))
		}
		return paths
	}
	w.addPhotos(pictures())
	if len(q) != 1 || len(w.at.Desk.Case.Photos) != 0 {
		t.Fatalf("%d things are under way and %d photos are there; want one and none", len(q), len(w.at.Desk.Case.Photos))
	}
	q.next()
	if len(w.at.Desk.Case.Photos) != 6 {
		t.Fatalf("the case has %d photos, want 6", len(w.at.Desk.Case.Photos))
	}
	ctx, stop := context.WithCancel(context.Background())
	var all []newPhoto
	for _, path := range pictures() {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, newPhoto{"again.jpg", data})
	}
	files, err := attachPhotos(ctx, w.at.Desk.Store, w.at.Desk.Case.ID, all, func(i int) {
		if i == 1 {
			stop()
		}
	})
	if err != nil || len(files) != 2 {
		t.Fatalf("stopped at the second, %v are kept, %v", files, err)
	}
	w.tookPhotos(w.at.Desk.Store, w.at.Desk.Case.ID, files, len(all), true)
	if n := len(w.at.Desk.Case.Photos); n != 8 || !strings.Contains(w.pictures.says, "2 of 6") {
		t.Errorf("the case has %d photos and says %q", n, w.pictures.says)
	}
}
