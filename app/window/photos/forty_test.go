package photos

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"slices"
	"testing"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/report"
)

// fortyPhotos is a notebook with a case of 40 pictures of 12 megapixels, each with
// another content, and detail all over.
func fortyPhotos(b *testing.B) (p *Photos, id string) {
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
	bundle := cases.Bundle{Case: cases.Case{Title: "Forty photos", Loop: cases.Loop{Layout: "outlet-thermostat"}}, Files: map[string][]byte{}}
	for i := range 40 {
		note := fmt.Sprint("picture ", i) // a comment: ITU-T T.81, B.2.4.5
		name := fmt.Sprintf("photos/%d.jpg", i)
		bundle.Files[name] = slices.Concat(data.Bytes()[:2], []byte{0xff, 0xfe, 0, byte(len(note) + 2)}, []byte(note), data.Bytes()[2:])
		bundle.Case.Photos = append(bundle.Case.Photos, cases.Photo{File: name, Caption: "caption"})
	}
	p, m := begun(b)
	ids, err := m.Desk.Store.PutAll(m.Ctx, []cases.Bundle{bundle}, "import")
	if err != nil {
		b.Fatal(err)
	}
	return p, ids[0]
}

// Wanted: the record of a case with 40 photos of a camera in 3 s, and the screen of
// them, from the notebook.
func BenchmarkFortyPhotosOfTheNotebook(b *testing.B) {
	p, id := fortyPhotos(b)
	ctx, store := p.at.Ctx, p.at.Desk.Store
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
	m, err := p.at.Desk.Mind.Material(ctx, cases.Bundle{Case: c})
	if err != nil {
		b.Fatal(err)
	}
	paper := func(b *testing.B) {
		m.Photo = p.smaller.Opener(ctx, store, c.Photos, hashes)
		if err := report.Write(io.Discard, report.Record, m, report.Options{}); err != nil {
			b.Fatal(err)
		}
	}
	screen := func(b *testing.B) {
		p.album.of = ""
		p.at.Desk.Load(id)
		p.Show()
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
