package photo_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"

	"loopbook/cases/photo"
)

// The corners of a scene: red above on the left, green above on the right, blue
// below on the left, white below on the right.
var (
	red   = color.RGBA{0xff, 0, 0, 0xff}
	green = color.RGBA{0, 0xff, 0, 0xff}
	blue  = color.RGBA{0, 0, 0xff, 0xff}
	white = color.RGBA{0xff, 0xff, 0xff, 0xff}
)

// side is a side of the scene.
type side string

const (
	top    side = "top"
	bottom side = "bottom"
	left   side = "left"
	right  side = "right"
)

// CIPA DC-008 (EXIF 2.32), 4.6.4 A, tag Orientation: which side of the scene the
// stored 0th row and 0th column are.
var orientations = []struct {
	value       int
	row, column side
}{
	{1, top, left}, {2, top, right}, {3, bottom, right}, {4, bottom, left},
	{5, left, top}, {6, right, top}, {7, right, bottom}, {8, left, bottom},
}

// stored is the scene as a camera that was held so would store it.
func stored(row, column side) *image.RGBA {
	const long, short = 48, 32
	w, h := long, short
	if row == left || row == right {
		w, h = short, long
	}
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := 0; y < h; y++ {
		for x := 0; x < w; x++ {
			onTop, onLeft := true, true
			for _, s := range []struct {
				at    side
				first bool // nearer to the side than to the one across
			}{{row, y < h/2}, {column, x < w/2}} {
				switch s.at {
				case top:
					onTop = s.first
				case bottom:
					onTop = !s.first
				case left:
					onLeft = s.first
				case right:
					onLeft = !s.first
				}
			}
			img.SetRGBA(x, y, corner(onTop, onLeft))
		}
	}
	return img
}

func corner(onTop, onLeft bool) color.RGBA {
	switch {
	case onTop && onLeft:
		return red
	case onTop:
		return green
	case onLeft:
		return blue
	}
	return white
}

// exif is a segment with an orientation among other tags, in either order of
// bytes.
func exif(value int, order binary.ByteOrder) []byte {
	tiff := []byte("II*\x00")
	if order == binary.BigEndian {
		tiff = []byte("MM\x00*")
	}
	put16 := func(v int) { tiff = append16(tiff, order, v) }
	put32 := func(v int) {
		b := make([]byte, 4)
		order.PutUint32(b, uint32(v))
		tiff = append(tiff, b...)
	}
	put32(8)
	put16(2)
	put16(271) // Make
	put16(2)
	put32(3)
	tiff = append(tiff, 'A', 'B', 0, 0)
	put16(274)
	put16(3)
	put32(1)
	put16(value)
	put16(0)
	put32(0)
	body := append([]byte("Exif\x00\x00"), tiff...)
	return append([]byte{0xff, 0xe1, byte((len(body) + 2) >> 8), byte(len(body) + 2)}, body...)
}

func append16(to []byte, order binary.ByteOrder, v int) []byte {
	b := make([]byte, 2)
	order.PutUint16(b, uint16(v))
	return append(to, b...)
}

// withSegment puts a segment behind a JPEG's beginning.
func withSegment(data, segment []byte) []byte {
	return append(append(append([]byte{}, data[:2]...), segment...), data[2:]...)
}

func asJPEG(t *testing.T, img image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestEveryOrientationStandsUpright(t *testing.T) {
	for _, tt := range orientations {
		for _, order := range []binary.ByteOrder{binary.LittleEndian, binary.BigEndian} {
			data := withSegment(asJPEG(t, stored(tt.row, tt.column)), exif(tt.value, order))
			if got := photo.OrientationOf(data); int(got) != tt.value {
				t.Fatalf("orientation %d is read as %d", tt.value, got)
			}
			img, err := photo.Small(data, photo.LongSide)
			if err != nil {
				t.Fatal(err)
			}
			checkUpright(t, tt.value, img)
		}
	}
}

func checkUpright(t *testing.T, value int, img *image.RGBA) {
	t.Helper()
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	if w != 48 || h != 32 {
		t.Errorf("orientation %d: %d × %d pixels", value, w, h)
	}
	for _, at := range []struct {
		x, y int
		want color.RGBA
	}{{4, 4, red}, {w - 5, 4, green}, {4, h - 5, blue}, {w - 5, h - 5, white}} {
		if got := img.RGBAAt(at.x, at.y); far(got.R, at.want.R) || far(got.G, at.want.G) || far(got.B, at.want.B) {
			t.Errorf("orientation %d: at %d, %d is %v, want %v", value, at.x, at.y, got, at.want)
		}
	}
}

func far(a, b uint8) bool { return int(a)-int(b) > 40 || int(b)-int(a) > 40 }

func TestALargePictureGetsASmallCopy(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 4000, 1000))
	small, err := photo.SmallJPEG(asJPEG(t, img), photo.LongSide)
	if err != nil {
		t.Fatal(err)
	}
	c, err := jpeg.DecodeConfig(bytes.NewReader(small))
	if err != nil || c.Width != 1600 || c.Height != 400 {
		t.Errorf("%d × %d, %v", c.Width, c.Height, err)
	}
	again, err := photo.SmallJPEG(asJPEG(t, img), photo.LongSide)
	if err != nil || !bytes.Equal(small, again) {
		t.Error("the same picture gives other bytes")
	}
}

// However far a picture is made smaller, all of it is there: its corners stay where they
// are, as on a picture that is small enough.
func TestAllOfAPictureIsSeenAtAnySize(t *testing.T) {
	for _, tt := range []struct{ longSide, w, h int }{{48, 48, 32}, {60, 48, 32}, {40, 40, 26}, {30, 30, 20}, {24, 24, 16}, {16, 16, 10}} {
		img, err := photo.Small(asJPEG(t, stored(top, left)), tt.longSide)
		if err != nil {
			t.Fatal(err)
		}
		if w, h := img.Bounds().Dx(), img.Bounds().Dy(); w != tt.w || h != tt.h {
			t.Errorf("at most %d long it is %d × %d, want %d × %d", tt.longSide, w, h, tt.w, tt.h)
		}
		for _, at := range []struct {
			x, y int
			want color.RGBA
		}{{1, 1, red}, {tt.w - 2, 1, green}, {1, tt.h - 2, blue}, {tt.w - 2, tt.h - 2, white}} {
			if got := img.RGBAAt(at.x, at.y); far(got.R, at.want.R) || far(got.G, at.want.G) || far(got.B, at.want.B) {
				t.Errorf("at most %d long: at %d, %d is %v, want %v", tt.longSide, at.x, at.y, got, at.want)
			}
		}
	}
	thin, err := photo.Small(asJPEG(t, image.NewRGBA(image.Rect(0, 0, 1, 900))), 300)
	if err != nil || thin.Bounds().Dx() != 1 || thin.Bounds().Dy() != 300 {
		t.Errorf("a thin one is %v, %v", thin.Bounds(), err)
	}
}

func TestWhatIsNoPictureIsRefused(t *testing.T) {
	fine := asJPEG(t, image.NewRGBA(image.Rect(0, 0, 9, 9)))
	for name, data := range map[string][]byte{
		"nothing": nil, "text": []byte("a warm-up log"), "a PDF": []byte("%PDF-1.4 ..."), "cut short": fine[:20],
	} {
		if _, err := photo.Small(data, 100); err != photo.ErrNoPicture { // in no words but its own: who drops a file knows no decoder's
			t.Errorf("%s: %v", name, err)
		}
	}
	whole := asJPEG(t, image.NewRGBA(image.Rect(0, 0, 900, 900))) // what a camera that was unplugged leaves begins well
	if _, err := photo.Small(whole[:len(whole)/2], 100); err != photo.ErrCut || !errors.Is(photo.Check(whole[:len(whole)/2]), photo.ErrCut) {
		t.Errorf("half of a picture: %v", err)
	}
	if clean, _, err := photo.ToGive(whole[:len(whole)/2]); err != nil || len(clean) == 0 {
		t.Errorf("half of a picture holds up its case: %v", err)
	}
	if _, err := photo.Small(bomb(t, 60000, 60000), 100); !errors.Is(err, photo.ErrTooLarge) {
		t.Errorf("60000 × 60000 pixels: %v", err)
	}
	if err := photo.Check(make([]byte, photo.MaxBytes+1)); !errors.Is(err, photo.ErrTooLarge) {
		t.Errorf("a file too large: %v", err)
	}
}

// bomb is a small PNG that says it is of that size.
func bomb(t *testing.T, w, h uint32) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 1, 1))); err != nil {
		t.Fatal(err)
	}
	data := out.Bytes()
	binary.BigEndian.PutUint32(data[16:], w) // IHDR: PNG, third edition, 11.2.1
	binary.BigEndian.PutUint32(data[20:], h)
	binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
	return data
}

// A bare copy holds neither place nor device, shows the same pixels, and stands
// as it did.
func TestABareCopyTellsNothing(t *testing.T) {
	secret := []byte("51.5074N 0.1278W")
	note := append([]byte{0xff, 0xfe, 0, byte(len(secret) + 2)}, secret...)
	data := withSegment(withSegment(asJPEG(t, stored(right, top)), note), exif(6, binary.LittleEndian))
	data = append(data, secret...) // behind the picture's end, as some cameras do
	bare, ending, notes, err := photo.Bare(data)
	if err != nil || ending != ".jpg" || notes != 3 || bytes.Contains(bare, secret) || bytes.Contains(bare, []byte("AB\x00")) {
		t.Fatalf("%v, %q", err, bare[:60])
	}
	if photo.OrientationOf(bare) != 6 {
		t.Errorf("orientation %d", photo.OrientationOf(bare))
	}
	full, err := photo.Small(data, 100)
	if err != nil {
		t.Fatal(err)
	}
	got, err := photo.Small(bare, 100)
	if err != nil || !bytes.Equal(got.Pix, full.Pix) {
		t.Errorf("other pixels, %v", err)
	}
}

func TestABarePNG(t *testing.T) {
	var out bytes.Buffer
	if err := png.Encode(&out, stored(top, left)); err != nil {
		t.Fatal(err)
	}
	text := []byte("tEXtComment\x00in front of the house")
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(text)-4))
	chunk = binary.BigEndian.AppendUint32(append(chunk, text...), crc32.ChecksumIEEE(text))
	data := append(append(append([]byte{}, out.Bytes()[:33]...), chunk...), out.Bytes()[33:]...)
	bare, ending, notes, err := photo.Bare(data)
	if err != nil || ending != ".png" || notes != 1 || !bytes.Equal(bare, out.Bytes()) {
		t.Errorf("%d bytes of %d, %v", len(bare), out.Len(), err)
	}
}

// What is noted on a picture goes, what it is stays: seeds of both kinds and of
// neither.
func FuzzBare(f *testing.F) {
	f.Add(withSegment([]byte{0xff, 0xd8, 0xff, 0xda, 0, 2, 1, 2, 0xff, 0xd9}, exif(6, binary.LittleEndian)))
	f.Add([]byte("\x89PNG\r\n\x1a\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		once, _, _, err := photo.Bare(data)
		if err != nil {
			return // refused
		}
		twice, _, _, err := photo.Bare(once)
		if err != nil || !bytes.Equal(once, twice) {
			t.Errorf("a bare picture changes again: %v", err)
		}
	})
}

func FuzzOrientation(f *testing.F) {
	f.Add(withSegment([]byte{0xff, 0xd8, 0xff, 0xda, 0, 2}, exif(6, binary.LittleEndian)))
	f.Add(withSegment([]byte{0xff, 0xd8, 0xff, 0xda, 0, 2}, exif(9, binary.BigEndian)))
	f.Fuzz(func(t *testing.T, data []byte) {
		if o := photo.OrientationOf(data); o < 1 || o > 8 {
			t.Errorf("orientation %d", o)
		}
	})
}

// A camera's picture of 12 megapixels.
func BenchmarkSmallJPEG(b *testing.B) {
	img := image.NewRGBA(image.Rect(0, 0, 4000, 3000))
	for i := range img.Pix {
		img.Pix[i] = byte(i * 7 >> 3)
	}
	var data bytes.Buffer
	if err := jpeg.Encode(&data, img, nil); err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		if _, err := photo.SmallJPEG(data.Bytes(), photo.LongSide); err != nil {
			b.Fatal(err)
		}
	}
}
