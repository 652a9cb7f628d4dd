package papers

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"testing"

	"loopbook/cases"
	"loopbook/report"
)

// pictureOf is a JPEG of one colour.
func pictureOf(t *testing.T, width, height int) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range width * height {
		img.Set(i%width, i/width, color.Black)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, nil); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// withPicture are the papers of a new case with one picture, and the picture's hash.
func withPicture(t *testing.T, file string, data []byte) (*Papers, string) {
	t.Helper()
	b := begun(t)
	d := b.at.Desk
	if err := d.Store.Attach(b.at.Ctx, d.Case.ID, file, data); err != nil {
		t.Fatal(err)
	}
	hash, err := d.Store.PutAttachment(b.at.Ctx, data)
	if err != nil {
		t.Fatal(err)
	}
	d.Edit("photo", func(c *cases.Case) { c.Photos = []cases.Photo{{File: file}} })
	return b, hash
}

// What the notebook keeps is what papers show, as the screen does: it isn't made anew. The
// copy here is of another size than any that would be made.
func TestAKeptCopyIsOnThePaper(t *testing.T) {
	b, hash := withPicture(t, "photos/hose.jpg", pictureOf(t, 40, 30))
	other := pictureOf(t, 33, 11)
	if err := b.at.Desk.Store.KeepSmaller(b.at.Ctx, hash, other); err != nil {
		t.Fatal(err)
	}
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	if got, err := p.about.photo("photos/hose.jpg"); err != nil || !bytes.Equal(got, other) {
		t.Errorf("the paper is given %d bytes, %v", len(got), err)
	}
	c := p.choice
	c.Kind = report.Record
	p.view.OnChange(c)
	if n := bytes.Count(p.pdf, []byte("/Subtype /Image")); n != 1 || !bytes.Contains(p.pdf, []byte("/Width 33")) {
		t.Errorf("%d pictures on the paper", n)
	}
}

func TestABrokenPictureIsNotOnThePaper(t *testing.T) {
	data := pictureOf(t, 40, 30)
	b, _ := withPicture(t, "photos/cut.jpg", data[:len(data)-20])
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := p.about.photo("photos/cut.jpg"); err == nil {
		t.Error("the paper is given a picture that can't be opened")
	}
}

// Papers that stay open while another notebook is turned to keep their photos: their file was closed under them.
func TestPapersKeepTheirNotebookOpen(t *testing.T) {
	b, _ := withPicture(t, "photos/hose.jpg", pictureOf(t, 40, 30))
	first, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	second, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	b.Close(first.about.store)
	second.window.Close()
	c := first.choice
	c.Kind = report.Record
	first.view.OnChange(c)
	if n := bytes.Count(first.pdf, []byte("/Subtype /Image")); n != 1 {
		t.Errorf("%d pictures are on the paper", n)
	}
	first.window.Close()
	if _, err := first.about.store.Get(b.at.Ctx, first.about.c.ID); err == nil {
		t.Error("the notebook stays open when no papers of it are")
	}
}
