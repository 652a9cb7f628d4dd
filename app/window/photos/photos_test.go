package photos

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/window/bench"
	"loopbook/app/window/bench/benchtest"
)

// begun is the screen of a new case's pictures, which is looked at.
func begun(t testing.TB) (*Photos, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	p := New(m.Bench, bench.Tab{Open: func() {}, InSight: func() bool { return true }}, library.NewSmaller(), func() string { return "" })
	m.Desk.Changed = func() {
		if m.Desk.Open {
			p.Show()
		}
	}
	m.Desk.Begin()
	return p, m
}

func TestWhatIsNoPhotoChangesNothing(t *testing.T) {
	p, _ := begun(t)
	path := filepath.Join(t.TempDir(), "page.png")
	if err := os.WriteFile(path, []byte("<html>"), 0o644); err != nil {
		t.Fatal(err)
	}
	p.Add([]string{path})
	if len(p.at.Desk.Case.Photos) != 0 {
		t.Errorf("photos %+v", p.at.Desk.Case.Photos)
	}
}

// One broken picture among several takes no other one with it, and each of the broken ones is told.
func TestAPictureIsTakenBesideOneThatIsNone(t *testing.T) {
	p, m := begun(t)
	broken := func(name string) string {
		path := filepath.Join(t.TempDir(), name)
		if err := os.WriteFile(path, []byte("<html>"), 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	p.Add([]string{broken("one.png"), benchtest.PictureFile(t, "fine.jpg", color.Black), broken("two.jpg")})
	if list := p.at.Desk.Case.Photos; len(list) != 1 || list[0].File != "photos/fine.jpg" {
		t.Errorf("photos %+v", list)
	}
	said := ""
	for _, o := range test.LaidOutObjects(m.Window.Canvas().Overlays().Top()) {
		if l, ok := o.(*widget.Label); ok {
			said += l.Text + " "
		}
	}
	for _, want := range []string{"one.png", "two.jpg", "1 other photo is in the case"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q isn't told: %s", want, said)
		}
	}
}

// What file managers put into the clipboard: paths, or file addresses (RFC 8089)
// Where the disk is full after the first of several pictures, that one is in the case, and the fault is told.
func TestAFaultKeepsThePicturesBeforeIt(t *testing.T) {
	_, m := begun(t)
	var raw bytes.Buffer
	if err := png.Encode(&raw, image.NewGray(image.Rect(0, 0, 4, 4))); err != nil {
		t.Fatal(err)
	}
	two := []newPhoto{{"one.png", raw.Bytes()}, {"two.png", append(raw.Bytes(), 0)}}
	files, err := attachPhotos(m.Ctx, m.Desk.Store, m.Desk.Case.ID, two, func(n int) {
		if n == 1 {
			m.Desk.Store.Close()
		}
	})
	if err == nil || len(files) != 1 || files[0] != "photos/one.png" {
		t.Errorf("kept are %v, %v", files, err)
	}
}

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
	p, _ := begun(t)
	path := benchtest.PictureFile(t, "hose.jpeg", color.Black)
	plain, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	secret := "51.5 N 0.1 W"
	noted := slices.Concat(plain[:2], []byte{0xff, 0xfe, 0, byte(len(secret) + 2)}, []byte(secret), plain[2:]) // a comment: ITU-T T.81, B.2.4.5
	if err := os.WriteFile(path, noted, 0o644); err != nil {
		t.Fatal(err)
	}
	p.Add([]string{path})
	for _, tt := range []struct {
		g    library.Giving
		says bool
	}{{library.Giving{}, false}, {library.Giving{Notes: true}, true}, {library.Giving{Anonymous: true}, false}} {
		b, _, err := tt.g.Bundle(context.Background(), p.at.Desk.Store, p.at.Desk.Case.ID)
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
	p, m := begun(t)
	var q benchtest.Queue
	m.Run = q.Start
	pictures := func() (paths []string) {
		for i := range 6 {
			paths = append(paths, benchtest.PictureFile(t, fmt.Sprintf("h%d.jpg", i), color.Gray{Y: uint8(30*i + len(p.at.Desk.Case.Photos))}))
		}
		return paths
	}
	p.Add(pictures())
	if len(q) != 1 || len(p.at.Desk.Case.Photos) != 0 {
		t.Fatalf("%d things are under way and %d photos are there; want one and none", len(q), len(p.at.Desk.Case.Photos))
	}
	q.Next()
	if len(p.at.Desk.Case.Photos) != 6 {
		t.Fatalf("the case has %d photos, want 6", len(p.at.Desk.Case.Photos))
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
	files, err := attachPhotos(ctx, p.at.Desk.Store, p.at.Desk.Case.ID, all, func(i int) {
		if i == 1 {
			stop()
		}
	})
	if err != nil || len(files) != 2 {
		t.Fatalf("stopped at the second, %v are kept, %v", files, err)
	}
	p.took(p.at.Desk.Store, p.at.Desk.Case.ID, files, len(all), true)
	if n := len(p.at.Desk.Case.Photos); n != 8 || !strings.Contains(p.album.says, "2 of 6") {
		t.Errorf("the case has %d photos and says %q", n, p.album.says)
	}
}
