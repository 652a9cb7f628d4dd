package anonymous

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
)

var errPicture = errors.New("is no picture that this program can look into")

// picture is the file without its notes: what is left are the parts that the
// pixels need. It tells how many parts went.
func picture(data []byte) (clean []byte, ending string, notes int, err error) {
	switch {
	case bytes.HasPrefix(data, []byte{0xFF, 0xD8, 0xFF}):
		clean, notes, err = jpeg(data)
		return clean, ".jpg", notes, err
	case bytes.HasPrefix(data, []byte(pngSign)):
		clean, notes, err = png(data)
		return clean, ".png", notes, err
	}
	return nil, "", 0, errPicture
}

// The markers of a JPEG file (ITU-T T.81, table B.1).
const (
	markSOI  = 0xD8
	markEOI  = 0xD9
	markSOS  = 0xDA
	markRST0 = 0xD0
	markRST7 = 0xD7
	markAPP0 = 0xE0
	markAPPE = 0xEE
	markAPPF = 0xEF
	markCOM  = 0xFE
)

// jpeg keeps tables, frames and scans, and of the applications' parts only the
// one that tells how colours are coded (APP14). The turn that a camera notes is
// kept in a part of its own, or pictures would lie on their side. What stands
// after the end goes too.
func jpeg(data []byte) (out []byte, notes int, err error) {
	out = []byte{0xFF, markSOI}
	at, turn := 2, 0
	for {
		for at < len(data) && data[at] == 0xFF {
			at++ // fill bytes are allowed before a marker
		}
		if at >= len(data) {
			return nil, 0, errPicture
		}
		mark := data[at]
		at++
		switch {
		case mark == markEOI:
			if at < len(data) {
				notes++
			}
			return withTurn(append(out, 0xFF, markEOI), turn), notes, nil
		case mark < 0xC0 || mark == markSOI || mark >= markRST0 && mark <= markRST7 || at+2 > len(data):
			return nil, 0, errPicture
		}
		size := int(binary.BigEndian.Uint16(data[at:]))
		if size < 2 || at+size > len(data) {
			return nil, 0, errPicture
		}
		part := data[at : at+size]
		at += size
		switch {
		case mark == markAPPE && bytes.HasPrefix(part[2:], []byte("Adobe")):
			out = append(append(out, 0xFF, mark), part...)
		case mark == markCOM || mark >= markAPP0 && mark <= markAPPF:
			notes++
			if t := turned(part[2:]); mark == markAPP0+1 && t != 0 {
				turn = t
			}
		default:
			out = append(append(out, 0xFF, mark), part...)
		}
		if mark == markSOS {
			end := scanEnd(data, at)
			out = append(out, data[at:end]...)
			at = end
		}
		if at < len(data) && data[at] != 0xFF {
			return nil, 0, errPicture
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

// turned is the orientation in a part with Exif (TIFF 6.0: tag 274, 1 to 8), or 0.
func turned(part []byte) int {
	body, ok := bytes.CutPrefix(part, []byte("Exif\x00\x00"))
	if !ok || len(body) < 10 {
		return 0
	}
	var order binary.ByteOrder = binary.BigEndian
	if body[0] == 'I' {
		order = binary.LittleEndian
	}
	at := int64(order.Uint32(body[4:]))
	if at < 0 || at+2 > int64(len(body)) {
		return 0
	}
	n := int64(order.Uint16(body[at:]))
	for i := range n {
		e := at + 2 + 12*i
		if e+12 > int64(len(body)) {
			return 0
		}
		if order.Uint16(body[e:]) == 274 {
			if t := int(order.Uint16(body[e+8:])); t >= 2 && t <= 8 {
				return t
			}
			return 0
		}
	}
	return 0
}

// withTurn puts the orientation behind the file's beginning: one tag and no more.
func withTurn(out []byte, turn int) []byte {
	if turn == 0 {
		return out
	}
	body := []byte("Exif\x00\x00MM\x00\x2A\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00")
	body = append(body, byte(turn), 0, 0, 0, 0, 0, 0)
	head := []byte{0xFF, markSOI, 0xFF, markAPP0 + 1, 0, byte(len(body) + 2)}
	return append(append(head, body...), out[2:]...)
}

const pngSign = "\x89PNG\r\n\x1a\n"

// png keeps the parts that the pixels and their colours need (W3C PNG, third
// edition, 11.2 and 11.3) and drops texts, times and Exif, and what stands after the
// end.
func png(data []byte) (out []byte, notes int, err error) {
	needed := map[string]bool{"IHDR": true, "PLTE": true, "IDAT": true, "IEND": true, "tRNS": true, "gAMA": true, "cHRM": true, "sRGB": true, "sBIT": true, "bKGD": true}
	out = []byte(pngSign)
	for at := len(pngSign); at+12 <= len(data); {
		size := int64(binary.BigEndian.Uint32(data[at:]))
		end := int64(at) + 12 + size
		if end > int64(len(data)) {
			return nil, 0, errPicture
		}
		part, kind := data[at:end], string(data[at+4:at+8])
		if crc32.ChecksumIEEE(part[4:8+size]) != binary.BigEndian.Uint32(part[8+size:]) {
			return nil, 0, errPicture
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
			return out, notes, nil
		}
	}
	return nil, 0, errPicture
}
