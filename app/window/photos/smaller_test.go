package photos

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"sync"
	"sync/atomic"
	"testing"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/cases/sqlite"
)

func hashOfPhoto(t *testing.T, p *Photos, i int) string {
	t.Helper()
	hashes, err := library.HashesOf(p.at.Ctx, p.at.Desk.Store, p.at.Desk.Case.ID)
	if err != nil || hashes[p.at.Desk.Case.Photos[i].File] == "" {
		t.Fatalf("files %v, %v", hashes, err)
	}
	return hashes[p.at.Desk.Case.Photos[i].File]
}

// A picture is made smaller when it is added, stays as it came, and its copy goes
// with its case.
func TestASmallerCopyIsMadeAndGoes(t *testing.T) {
	p, _ := begun(t)
	p.Add([]string{benchtest.PictureFile(t, "hose.jpg", color.Black)})
	hash := hashOfPhoto(t, p, 0)
	kept, err := p.at.Desk.Store.Smaller(p.at.Ctx, hash)
	if err != nil {
		t.Fatalf("once it was shown: %v", err)
	}
	full, err := p.at.Desk.Store.Attachment(p.at.Ctx, hash)
	if err != nil {
		t.Fatal(err)
	}
	if want, err := photo.SmallJPEG(full, photo.LongSide); err != nil || !bytes.Equal(kept, want) {
		t.Errorf("the copy has %d bytes, want %d, %v", len(kept), len(want), err)
	}
	p.at.Desk.Remove()
	if _, err := p.at.Desk.Store.Smaller(p.at.Ctx, hash); !errors.Is(err, cases.ErrNoFile) {
		t.Errorf("of a deleted case: %v", err)
	}
	p.at.Desk.Restore()
	p.Show()
	if p := p.album.small[p.at.Desk.Case.Photos[0].File+hash]; p.Image == nil || p.Problem != "" {
		t.Errorf("brought back it shows %+v", p)
	}
}

// What the notebook keeps is what the screen shows: it isn't made anew. The
// copy here is of another size than any that would be made.
func TestAKeptCopyIsShown(t *testing.T) {
	p, _ := begun(t)
	path := benchtest.PictureFile(t, "hose.jpg", color.Black)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := attachPhotos(p.at.Ctx, p.at.Desk.Store, p.at.Desk.Case.ID, []newPhoto{{"hose.jpg", data}}, func(int) {}); err != nil {
		t.Fatal(err)
	}
	hash, err := p.at.Desk.Store.PutAttachment(p.at.Ctx, data)
	if err != nil {
		t.Fatal(err)
	}
	var other bytes.Buffer
	if err := jpeg.Encode(&other, image.NewRGBA(image.Rect(0, 0, 33, 11)), nil); err != nil {
		t.Fatal(err)
	}
	if err := p.at.Desk.Store.KeepSmaller(p.at.Ctx, hash, other.Bytes()); err != nil {
		t.Fatal(err)
	}
	p.at.Desk.Edit("photo", func(c *cases.Case) { c.Photos = []cases.Photo{{File: "photos/hose.jpg"}} })
	p.Show()
	if one := p.album.small["photos/hose.jpg"+hash]; one.Image == nil || one.Image.Bounds().Dx() != 33 {
		t.Errorf("the screen shows %+v", one)
	}
}

// A picture that breaks off is not taken in, since the camera still has it; one that came in with a case is told on its
// card, and has no copy.
func TestABrokenPictureIsTold(t *testing.T) {
	p, _ := begun(t)
	path := benchtest.PictureFile(t, "cut.jpg", color.Black)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data[:len(data)-20], 0o644); err != nil {
		t.Fatal(err)
	}
	p.Add([]string{path})
	if n := len(p.at.Desk.Case.Photos); n != 0 {
		t.Errorf("%d broken pictures were taken in", n)
	}
	if err := p.at.Desk.Store.Attach(p.at.Ctx, p.at.Desk.Case.ID, "photos/cut.jpg", data[:len(data)-20]); err != nil {
		t.Fatal(err)
	}
	p.at.Desk.Edit("photo", func(c *cases.Case) { c.Photos = []cases.Photo{{File: "photos/cut.jpg"}} })
	p.Show()
	hash := hashOfPhoto(t, p, 0)
	_, want := photo.Small(data[:len(data)-20], cardPixels)
	if p := p.album.small["photos/cut.jpg"+hash]; want == nil || p.Problem != kit.L("window.photos.unreadable", want.Error()) || p.Image != nil {
		t.Errorf("the screen shows %+v, want %v", p, want)
	}
	if _, err := p.at.Desk.Store.Smaller(p.at.Ctx, hash); !errors.Is(err, cases.ErrNoFile) {
		t.Errorf("its copy: %v", err)
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
	p, _ := begun(t)
	p.Add([]string{benchtest.PictureFile(t, "hose.jpg", color.White)})
	hash, store := hashOfPhoto(t, p, 0), &counted{Store: p.at.Desk.Store}
	p.at.Desk.Remove()
	p.at.Desk.Restore() // without its copy
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
