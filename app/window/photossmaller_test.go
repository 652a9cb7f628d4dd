package window

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
	"loopbook/report"
)

func hashOfPhoto(t *testing.T, w *window, i int) string {
	t.Helper()
	hashes, err := library.HashesOf(w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.ID)
	if err != nil || hashes[w.at.Desk.Case.Photos[i].File] == "" {
		t.Fatalf("files %v, %v", hashes, err)
	}
	return hashes[w.at.Desk.Case.Photos[i].File]
}

// A picture is made smaller when it is added, stays as it came, and its copy goes
// with its case.
func TestASmallerCopyIsMadeAndGoes(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.addPhotos([]string{pictureFile(t, "hose.jpg", color.Black)})
	hash := hashOfPhoto(t, w, 0)
	kept, err := w.at.Desk.Store.Smaller(w.at.Ctx, hash)
	if err != nil {
		t.Fatalf("once it was shown: %v", err)
	}
	full, err := w.at.Desk.Store.Attachment(w.at.Ctx, hash)
	if err != nil {
		t.Fatal(err)
	}
	if want, err := photo.SmallJPEG(full, photo.LongSide); err != nil || !bytes.Equal(kept, want) {
		t.Errorf("the copy has %d bytes, want %d, %v", len(kept), len(want), err)
	}
	w.at.Desk.Remove()
	if _, err := w.at.Desk.Store.Smaller(w.at.Ctx, hash); !errors.Is(err, cases.ErrNoFile) {
		t.Errorf("of a deleted case: %v", err)
	}
	w.at.Desk.Restore()
	w.showPhotos()
	if p := w.pictures.small[w.at.Desk.Case.Photos[0].File+hash]; p.Image == nil || p.Problem != "" {
		t.Errorf("brought back it shows %+v", p)
	}
}

// What the notebook keeps is what the screen shows: it isn't made anew. The
// copy here is of another size than any that would be made.
func TestAKeptCopyIsShown(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	path := pictureFile(t, "hose.jpg", color.Black)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := attachPhotos(w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.ID, []newPhoto{{"hose.jpg", data}}, func(int) {}); err != nil {
		t.Fatal(err)
	}
	hash, err := w.at.Desk.Store.PutAttachment(w.at.Ctx, data)
	if err != nil {
		t.Fatal(err)
	}
	var other bytes.Buffer
	if err := jpeg.Encode(&other, image.NewRGBA(image.Rect(0, 0, 33, 11)), nil); err != nil {
		t.Fatal(err)
	}
	if err := w.at.Desk.Store.KeepSmaller(w.at.Ctx, hash, other.Bytes()); err != nil {
		t.Fatal(err)
	}
	w.at.Desk.Edit("photo", func(c *cases.Case) { c.Photos = []cases.Photo{{File: "photos/hose.jpg"}} })
	w.tabs.SelectIndex(photosTab)
	if p := w.pictures.small["photos/hose.jpg"+hash]; p.Image == nil || p.Image.Bounds().Dx() != 33 {
		t.Errorf("the screen shows %+v", p)
	}
}

// A picture that breaks off is told on its card, and has no copy.
func TestABrokenPictureIsTold(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	path := pictureFile(t, "cut.jpg", color.Black)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data[:len(data)-20], 0o644); err != nil {
		t.Fatal(err)
	}
	w.addPhotos([]string{path})
	hash := hashOfPhoto(t, w, 0)
	_, want := photo.Small(data[:len(data)-20], cardPixels)
	if p := w.pictures.small["photos/cut.jpg"+hash]; want == nil || p.Problem != want.Error() || p.Image != nil {
		t.Errorf("the screen shows %+v, want %v", p, want)
	}
	if _, err := w.at.Desk.Store.Smaller(w.at.Ctx, hash); !errors.Is(err, cases.ErrNoFile) {
		t.Errorf("its copy: %v", err)
	}
}

// The pictures of a case that came in have their copies before anybody looks at them.
func TestAnImportedPictureIsMadeSmaller(t *testing.T) {
	w, _ := shown(t)
	data, err := os.ReadFile(pictureFile(t, "hose.jpg", color.White))
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
	if _, err := w.at.Desk.Store.Smaller(w.at.Ctx, hashOfPhoto(t, w, 0)); err != nil || w.tabs.SelectedIndex() == photosTab {
		t.Errorf("%v; tab %d is in sight", err, w.tabs.SelectedIndex())
	}
}

// counted tells how often a picture itself was read.
type counted struct {
	*sqlite.Store
	read atomic.Int32
}

func (c *counted) Attachment(ctx context.Context, hash string) ([]byte, error) {
	c.read.Add(1)
	return c.Store.Attachment(ctx, hash)
}

// Many who ask for a copy at once have it made once, and who asks later not again.
func TestACopyIsMadeOnce(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.addPhotos([]string{pictureFile(t, "hose.jpg", color.White)})
	hash, store := hashOfPhoto(t, w, 0), &counted{Store: w.at.Desk.Store}
	w.at.Desk.Remove()
	w.at.Desk.Restore() // without its copy
	for _, s := range []*library.Smaller{library.NewSmaller(), library.NewSmaller()} {
		var work sync.WaitGroup
		for range 8 {
			work.Add(1)
			go func() {
				defer work.Done()
				if _, err := s.Of(context.Background(), store, hash); err != nil {
					t.Error(err)
				}
			}()
		}
		work.Wait()
		if n := store.read.Load(); n != 1 {
			t.Errorf("the picture was read %d times", n)
		}
	}
}

// fortyPhotos is a notebook with a case of 40 pictures of 12 megapixels, each with
// another content, and detail all over.
func fortyPhotos(b *testing.B) (w *window, id string) {
	b.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 4000, 3000))
	for y := range 3000 {
		for x := range 4000 {
			img.SetRGBA(x, y, color.RGBA{uint8((x*x + 21*y + x*y) >> 6), uint8(x * 255 / 4000), uint8(y * 255 / 3000), 255})
		}
	}
	var data bytes.Buffer
	if err := jpeg.Encode(&data, img, nil); err != nil {
		b.Fatal(err)
	}
	store, err := sqlite.Open(context.Background(), b.TempDir()+"/n.db", time.Now)
	if err != nil {
		b.Fatal(err)
	}
	bundle := cases.Bundle{Case: cases.Case{Title: "Forty photos", Loop: cases.Loop{Layout: "outlet-thermostat"}}, Files: map[string][]byte{}}
	for i := range 40 {
		note := fmt.Sprint("picture ", i) // a comment: ITU-T T.81, B.2.4.5
		name := fmt.Sprintf("photos/%d.jpg", i)
		bundle.Files[name] = slices.Concat(data.Bytes()[:2], []byte{0xff, 0xfe, 0, byte(len(note) + 2)}, []byte(note), data.Bytes()[2:])
		bundle.Case.Photos = append(bundle.Case.Photos, cases.Photo{File: name, Caption: "caption"})
	}
	ids, err := store.PutAll(context.Background(), []cases.Bundle{bundle}, "import")
	if err != nil {
		b.Fatal(err)
	}
	w, err = newWindow(context.Background(), test.NewTempApp(b), store, func(read func()) { read() })
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { w.at.Desk.Store.Close() })
	w.at.Desk.Mind.Crowds.Draws = 2
	return w, ids[0]
}

// Wanted: the record of a case with 40 photos of a camera in 3 s, and the screen of
// them, from the notebook.
func BenchmarkFortyPhotosOfTheNotebook(b *testing.B) {
	w, id := fortyPhotos(b)
	ctx, store := w.at.Ctx, w.at.Desk.Store
	forget := func() { // a deleted case's copies go
		if err := store.Delete(ctx, id); err != nil {
			b.Fatal(err)
		}
		if _, err := store.Restore(ctx, id); err != nil {
			b.Fatal(err)
		}
	}
	c, err := store.Get(ctx, id)
	if err != nil {
		b.Fatal(err)
	}
	hashes, err := library.HashesOf(ctx, store, id)
	if err != nil {
		b.Fatal(err)
	}
	m, err := w.at.Desk.Mind.Material(ctx, cases.Bundle{Case: c})
	if err != nil {
		b.Fatal(err)
	}
	paper := func(b *testing.B) {
		m.Photo = w.pictures.smaller.Opener(ctx, store, c.Photos, hashes)
		if err := report.Write(io.Discard, report.Record, m, report.Options{}); err != nil {
			b.Fatal(err)
		}
	}
	screen := func(b *testing.B) {
		w.pictures.of = ""
		w.at.Desk.Load(id)
		w.tabs.SelectIndex(photosTab)
		w.showPhotos()
	}
	for _, of := range []struct {
		name string
		do   func(*testing.B)
	}{{"paper", paper}, {"screen", screen}} {
		b.Run(of.name+" first", func(b *testing.B) {
			for range b.N {
				b.StopTimer()
				forget()
				b.StartTimer()
				of.do(b)
			}
		})
		b.Run(of.name+" again", func(b *testing.B) {
			for range b.N {
				of.do(b)
			}
		})
	}
}
