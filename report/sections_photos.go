package report

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	"runtime"
	"sync"

	"github.com/jung-kurt/gofpdf"

	"loopbook/cases"
	"loopbook/cases/photo"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// A photo on paper: two beside each other, sharp at 300 points an inch.
const (
	photoLongSide = 1000
	photoHeight   = 190
	photoGap      = 12
)

// photos are the pictures with their captions, two in a row, without what the
// camera noted.
func (s *sheet) photos() {
	if len(s.c.Photos) == 0 {
		return
	}
	const captioned = 4 // lines, at most
	row := photoHeight + (captioned+1)*smallStyle.lead()
	s.heading(s.by.Of("record.photos"), row)
	small := shrunk(s.c.Photos, s.m.Photo)
	for i := 0; i < len(small); i += 2 {
		s.need(row)
		foot := s.picture(i, small[i], margin, captioned)
		if i+1 < len(small) {
			foot = max(foot, s.picture(i+1, small[i+1], margin+(s.inner()+photoGap)/2, captioned))
		}
		s.y = foot + 8
	}
}

// shrunk are the smaller copies, made on all cores; nil where a picture isn't
// there or can't be read.
func shrunk(list []cases.Photo, open func(file string) ([]byte, error)) [][]byte {
	out := make([][]byte, len(list))
	if open == nil {
		return out
	}
	var work sync.WaitGroup
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for i, p := range list {
		raw, err := open(p.File)
		if err != nil {
			continue
		}
		work.Add(1)
		turn <- struct{}{}
		go func() {
			defer func() { <-turn; work.Done() }()
			if img, err := photo.SmallJPEG(raw, photoLongSide); err == nil {
				out[i] = img
			}
		}()
	}
	work.Wait()
	return out
}

// picture places one photo with its caption and tells where it ends.
func (s *sheet) picture(i int, jpeg []byte, x float64, captioned int) (foot float64) {
	p, width := s.c.Photos[i], (s.inner()-photoGap)/2
	y := s.y
	if conf, _, err := image.DecodeConfig(bytes.NewReader(jpeg)); err == nil {
		scale := min(width/float64(conf.Width), photoHeight/float64(conf.Height))
		// What two names stand for once is kept once: gofpdf would enter it twice under one key.
		name, o := fmt.Sprintf("photo %x", sha256.Sum256(jpeg)), gofpdf.ImageOptions{ImageType: "JPG"}
		s.pdf.RegisterImageOptionsReader(name, o, bytes.NewReader(jpeg))
		s.pdf.ImageOptions(name, x, y, float64(conf.Width)*scale, 0, false, o, 0, "")
		y += float64(conf.Height)*scale + 3
	} else {
		s.stroke(drawing.In(drawing.Rule), 0.5)
		s.pdf.Rect(x, y, width, 40, "D")
		s.put(x+6, y+12, s.cutLine(s.by.Of("record.photo-missing", p.File), width-12, softStyle), softStyle)
		y += 43
	}
	caption := join(" · ", s.by.Say(say.PointName(p.Point)), p.Caption)
	for _, line := range s.cut(caption, width, smallStyle, captioned) {
		s.put(x, y, line, smallStyle)
		y += smallStyle.lead()
	}
	return y
}
