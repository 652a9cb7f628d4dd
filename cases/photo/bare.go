package photo

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
)

// Bare is the picture without what the camera noted of place, time and device:
// the parts that the pixels and their colours need are left, as they are. It
// tells how many parts went. One that breaks off among its pixels is left so: it mustn't hold up the case that it is
// in. Of the pictures that can be read only JPEG and PNG can be looked into so; any other is an ErrNoPicture.
func Bare(data []byte) (clean []byte, ending string, notes int, err error) {
	clean, ending, notes, _, err = bare(data)
	return clean, ending, notes, err
}

// bare is Bare, and tells whether the picture was there to its end.
func bare(data []byte) (clean []byte, ending string, notes int, whole bool, err error) {
	switch {
	case bytes.HasPrefix(data, []byte{0xFF, 0xD8, 0xFF}):
		clean, notes, whole, err = bareJPEG(data)
		return clean, ".jpg", notes, whole, err
	case bytes.HasPrefix(data, []byte(pngSign)):
		clean, notes, whole, err = barePNG(data)
		return clean, ".png", notes, whole, err
	}
	return nil, "", 0, false, ErrNoPicture
}

// The markers of a JPEG file (ITU-T T.81, table B.1).
const (
	markSOI  = 0xD8
	markEOI  = 0xD9
	markSOS  = 0xDA
	markRST0 = 0xD0
	markRST7 = 0xD7
	markAPP0 = 0xE0
	markAPP1 = 0xE1 // EXIF, among others
	markAPP2 = 0xE2 // a colour profile, among others
	markAPPE = 0xEE
	markAPPF = 0xEF
	markCOM  = 0xFE
)

// bareJPEG keeps tables, frames and scans, and of the applications' parts only those
// that tell what the colours are (APP2 with a profile, APP14). The turn that a camera notes is
// kept in a part of its own, or pictures would lie on their side. What stands
// after the end goes too.
func bareJPEG(data []byte) (out []byte, notes int, whole bool, err error) {
	start := []byte{0xFF, markSOI}
	at, turn, pixels := 2, Upright, false
	for {
		for at < len(data) && data[at] == 0xFF {
			at++ // fill bytes are allowed before a marker
		}
		mark, ended := byte(markEOI), at >= len(data)
		if ended && !pixels {
			return nil, 0, false, ErrNoPicture
		}
		if !ended {
			mark = data[at]
			at++
		}
		switch {
		case mark == markEOI:
			if at < len(data) {
				notes++
			}
			if turn != Upright {
				start = append(start, orientationOnly(turn)...)
			}
			return append(append(start, out...), 0xFF, markEOI), notes, !ended, nil
		case pixels && at+2 > len(data):
			at = len(data)
			continue
		case mark < 0xC0 || mark == markSOI || mark >= markRST0 && mark <= markRST7 || at+2 > len(data):
			return nil, 0, false, ErrNoPicture
		}
		size := int(binary.BigEndian.Uint16(data[at:]))
		if pixels && at+size > len(data) {
			at = len(data)
			continue
		}
		if size < 2 || at+size > len(data) {
			return nil, 0, false, ErrNoPicture
		}
		part := data[at : at+size]
		at += size
		switch {
		case mark == markAPPE && bytes.HasPrefix(part[2:], []byte("Adobe")), mark == markAPP2 && bytes.HasPrefix(part[2:], []byte("ICC_PROFILE\x00")):
			out = append(append(out, 0xFF, mark), part...)
		case mark == markCOM || mark >= markAPP0 && mark <= markAPPF:
			notes++
			if body, ok := bytes.CutPrefix(part[2:], exifHeader); mark == markAPP1 && ok {
				turn = orientationIn(body)
			}
		default:
			out = append(append(out, 0xFF, mark), part...)
		}
		if mark == markSOS {
			end := scanEnd(data, at)
			out = append(out, data[at:end]...)
			at, pixels = end, true
		}
		if at < len(data) && data[at] != 0xFF {
			return nil, 0, false, ErrNoPicture
		}
	}
}

// scanEnd is where the coded pixels end: at the first marker that is neither a
// stuffed byte nor a restart.
func scanEnd(data []byte, at int) int {
	for ; at+1 < len(data); at++ {
		next := data[at+1]
		if data[at] == 0xFF && next != 0 && next != 0xFF && !(next >= markRST0 && next <= markRST7) {
			return at
		}
	}
	return len(data)
}

const pngSign = "\x89PNG\r\n\x1a\n"

// barePNG keeps the parts that the pixels and their colours need (W3C PNG, third
// edition, 11.2 and 11.3) and drops texts, times and Exif, and what stands after the
// end.
func barePNG(data []byte) (out []byte, notes int, whole bool, err error) {
	needed := map[string]bool{"IHDR": true, "PLTE": true, "IDAT": true, "IEND": true, "tRNS": true, "gAMA": true, "cHRM": true, "sRGB": true, "sBIT": true, "bKGD": true}
	out = []byte(pngSign)
	for at := len(pngSign); at+12 <= len(data); {
		size := int64(binary.BigEndian.Uint32(data[at:]))
		end := int64(at) + 12 + size
		if end > int64(len(data)) {
			break
		}
		part, kind := data[at:end], string(data[at+4:at+8])
		if crc32.ChecksumIEEE(part[4:8+size]) != binary.BigEndian.Uint32(part[8+size:]) {
			return nil, 0, false, ErrNoPicture
		}
		if needed[kind] {
			out = append(out, part...)
		} else {
			notes++
		}
		at = int(end)
		if kind == "IEND" {
			if at < len(data) {
				notes++
			}
			return out, notes, true, nil
		}
	}
	if len(out) == len(pngSign) {
		return nil, 0, false, ErrNoPicture
	}
	return out, notes, false, nil
}

// ToGive is Bare, and for a picture of another kind that can be read a small
// JPEG of it.
func ToGive(data []byte) (clean []byte, ending string, err error) {
	if clean, ending, _, err = Bare(data); err == nil {
		return clean, ending, nil
	}
	clean, err = SmallJPEG(data, LongSide)
	return clean, ".jpg", err
}
