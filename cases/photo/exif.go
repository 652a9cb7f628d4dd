package photo

import (
	"bytes"
	"encoding/binary"
)

// Orientation is how the camera was held: the value of EXIF's tag 274 (CIPA
// DC-008). Upright is 1; a value outside 1 to 8 counts as upright.
type Orientation int

// Upright is a picture whose first row is its top and first column its left.
const Upright Orientation = 1

var exifHeader = []byte("Exif\x00\x00")

// OrientationOf reads a JPEG's orientation; other pictures stand as they are.
func OrientationOf(data []byte) Orientation {
	at := 2
	for at+4 <= len(data) && data[0] == 0xFF && data[1] == markSOI && data[at] == 0xFF {
		if data[at+1] == 0xFF { // fill bytes are allowed before a marker
			at++
			continue
		}
		mark, size := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if mark == markSOS || size < 2 || at+2+size > len(data) {
			break
		}
		if body, ok := bytes.CutPrefix(data[at+4:at+2+size], exifHeader); mark == markAPP1 && ok {
			return orientationIn(body)
		}
		at += 2 + size
	}
	return Upright
}

// tagOrientation and typeShort are of TIFF 6.0, on which EXIF is built.
const (
	tagOrientation = 274
	typeShort      = 3
	entryBytes     = 12
)

// orientationIn looks through the first directory of a TIFF structure.
func orientationIn(tiff []byte) Orientation {
	if len(tiff) < 8 {
		return Upright
	}
	var order binary.ByteOrder = binary.LittleEndian
	if tiff[0] == 'M' {
		order = binary.BigEndian
	}
	at := int64(order.Uint32(tiff[4:]))
	if at+2 > int64(len(tiff)) {
		return Upright
	}
	n := int64(order.Uint16(tiff[at:]))
	for entry := at + 2; n > 0 && entry+entryBytes <= int64(len(tiff)); entry, n = entry+entryBytes, n-1 {
		e := tiff[entry : entry+entryBytes]
		if order.Uint16(e) == tagOrientation && order.Uint16(e[2:]) == typeShort {
			return valid(Orientation(order.Uint16(e[8:])))
		}
	}
	return Upright
}

func valid(o Orientation) Orientation {
	if o < 1 || o > 8 {
		return Upright
	}
	return o
}

// orientationOnly is an EXIF segment that says nothing else.
func orientationOnly(o Orientation) []byte {
	body := append([]byte{}, exifHeader...)
	body = append(body, 'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1)
	body = append(body, 1, 18, 0, typeShort, 0, 0, 0, 1, 0, byte(o), 0, 0, 0, 0, 0, 0) // tag 274, then no further directory
	return append([]byte{0xff, markAPP1, 0, byte(len(body) + 2)}, body...)
}
