// Package photo reads the pictures of a case: which way up they are, a smaller
// upright copy to look at and to print, and a copy without what the camera
// noted of place, time and device.
//
// A picture of a stranger takes bounded memory: its size is read before it is
// opened, and MaxPixels is the limit.
package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/gif" // register the kinds of pictures
	"image/jpeg"
	_ "image/png"

	_ "golang.org/x/image/bmp"
	"golang.org/x/image/draw"
	_ "golang.org/x/image/tiff"
	_ "golang.org/x/image/webp"
)

// Bounds of a picture.
const (
	MaxBytes  = 64 << 20
	MaxPixels = 120e6 // a large camera's; 480 MB once it is opened
)

// LongSide is of the smaller copy, in pixels.
const LongSide = 1600

// Errors of pictures that are refused.
var (
	ErrNoPicture = errors.New("is no picture that can be read: save it as JPEG or PNG")
	ErrCut       = errors.New("breaks off, or is damaged: copy it from the camera again")
	ErrTooLarge  = errors.New("is larger than a picture of a case may be: save it smaller")
)

// Check refuses what Small couldn't open, without opening it.
func Check(data []byte) error {
	if err := bounded(data); err != nil {
		return err
	}
	if _, _, _, whole, err := bare(data); err == nil && !whole {
		return ErrCut
	}
	return nil
}

// bounded refuses what is no picture or too large, by its beginning.
func bounded(data []byte) error {
	if len(data) > MaxBytes {
		return fmt.Errorf("the file has %d MB: %w", len(data)>>20, ErrTooLarge)
	}
	c, _, err := image.DecodeConfig(bytes.NewReader(data))
	switch {
	case err != nil:
		return ErrNoPicture // the decoder's own words tell nobody what to do
	case c.Width <= 0 || c.Height <= 0:
		return ErrNoPicture
	case float64(c.Width)*float64(c.Height) > MaxPixels:
		return fmt.Errorf("%d × %d pixels: %w", c.Width, c.Height, ErrTooLarge)
	}
	return nil
}

// Small is an upright copy with a long side of at most so many pixels.
func Small(data []byte, longSide int) (*image.RGBA, error) {
	if err := bounded(data); err != nil { // that it breaks off shows as it is opened
		return nil, err
	}
	full, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, ErrCut // its beginning could be read
	}
	return upright(shrunk(full, longSide), OrientationOf(data)), nil
}

const jpegQuality = 82

// SmallJPEG is Small for a file or a paper: a JPEG without any metadata. The
// same picture gives the same bytes.
func SmallJPEG(data []byte, longSide int) ([]byte, error) {
	img, err := Small(data, longSide)
	if err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: jpegQuality}); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// shrunk is the picture on white paper, no longer than the long side.
func shrunk(img image.Image, longSide int) *image.RGBA {
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	long := max(w, h)
	if long > longSide {
		w, h = max(1, w*longSide/long), max(1, h*longSide/long)
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(out, out.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
	switch {
	case long <= longSide:
		draw.Draw(out, out.Bounds(), img, img.Bounds().Min, draw.Over)
	case 2*long <= 3*longSide: // every pixel counts: slow, and only worth it near the size itself
		draw.BiLinear.Scale(out, out.Bounds(), img, img.Bounds(), draw.Over, nil)
	default:
		draw.ApproxBiLinear.Scale(out, out.Bounds(), img, img.Bounds(), draw.Over, nil)
	}
	return out
}

// upright turns the picture as its orientation asks for.
func upright(img *image.RGBA, o Orientation) *image.RGBA {
	if o == Upright {
		return img
	}
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	if o >= 5 {
		out = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := 0; y < h; y++ {
		for x := 0; x < w; x++ {
			from, to := img.PixOffset(x, y), out.PixOffset(o.place(x, y, w, h))
			copy(out.Pix[to:to+4], img.Pix[from:from+4])
		}
	}
	return out
}

// place is where a stored pixel stands in the upright picture. CIPA DC-008 says
// for each value which side of the scene the stored row 0 and column 0 are.
func (o Orientation) place(x, y, w, h int) (int, int) {
	switch o {
	case 2: // row 0 top, column 0 right
		return w - 1 - x, y
	case 3: // bottom, right
		return w - 1 - x, h - 1 - y
	case 4: // bottom, left
		return x, h - 1 - y
	case 5: // left, top
		return y, x
	case 6: // right, top
		return h - 1 - y, x
	case 7: // right, bottom
		return h - 1 - y, w - 1 - x
	case 8: // left, bottom
		return y, w - 1 - x
	}
	return x, y
}
