package photo

import (
	"bytes"
	"encoding/binary"
	"slices"
)

// Bare is the picture without what was noted of place, time and device; its
// pixels stay as they are. Only JPEG and PNG carry such notes apart from the
// pixels; any other picture becomes a small JPEG.
func Bare(data []byte) ([]byte, error) {
	if err := Check(data); err != nil {
		return nil, err
	}
	if out, ok := bareJPEG(data); ok {
		return out, nil
	}
	if out, ok := barePNG(data); ok {
		return out, nil
	}
	return SmallJPEG(data, LongSide)
}

// bareJPEG drops every segment that isn't needed to show the picture, and keeps
// the orientation. What follows the picture's end goes too.
func bareJPEG(data []byte) ([]byte, bool) {
	head, scan, ok := segments(data)
	if !ok {
		return nil, false
	}
	out := []byte{0xff, markerStart}
	if o := OrientationOf(data); o != Upright {
		out = append(out, orientationOnly(o)...)
	}
	for _, s := range head {
		if !s.note() {
			out = append(out, s.whole...)
		}
	}
	if end := bytes.LastIndex(scan, []byte{0xff, 0xd9}); end >= 0 {
		scan = scan[:end+2]
	}
	return append(out, scan...), true
}

var colourProfile = []byte("ICC_PROFILE\x00")

// note reports whether a segment isn't needed to show the picture.
func (s segment) note() bool {
	switch s.marker {
	case markerApp0, markerApp14:
		return false
	case markerApp2:
		return !bytes.HasPrefix(s.body, colourProfile)
	case markerNote:
		return true
	}
	return s.marker > markerApp0 && s.marker <= markerApp15
}

var pngStart = []byte("\x89PNG\r\n\x1a\n")

// barePNG keeps the chunks that make up the picture (PNG, third edition,
// chapter 11) and drops text, time and EXIF.
func barePNG(data []byte) ([]byte, bool) {
	rest, ok := bytes.CutPrefix(data, pngStart)
	if !ok {
		return nil, false
	}
	keep := []string{"IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT"}
	out := slices.Clone(pngStart)
	for len(rest) >= 12 {
		size := int64(binary.BigEndian.Uint32(rest)) + 12
		if size > int64(len(rest)) {
			return nil, false
		}
		kind := string(rest[4:8])
		if slices.Contains(keep, kind) {
			out = append(out, rest[:size]...)
		}
		rest = rest[size:]
		if kind == "IEND" {
			return out, true
		}
	}
	return nil, false
}
