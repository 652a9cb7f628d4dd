package logfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"unicode/utf16"
	"unicode/utf8"
)

const (
	headBytes  = 4 << 20  // what is looked at before the columns are chosen
	chunkBytes = 64 << 10 // what is read at once
)

// text is a file's content as UTF-8, without byte-order mark and zero bytes.
type text struct {
	r        io.Reader
	encoding string
	convert  converter
	raw, out []byte
	carried  int   // bytes of raw that wait for the rest of their letter
	pos      int   // what of out has been handed on
	zeros    int   // zero bytes that were left out
	err      error // of r, told once out is empty
}

// converter appends src to dst as UTF-8 and says how much of src it used.
type converter func(dst, src []byte) ([]byte, int)

// openText finds the encoding from the first bytes, and refuses what is no text.
func openText(r io.Reader) (*text, error) {
	t := &text{raw: make([]byte, chunkBytes)}
	n, err := io.ReadFull(r, t.raw)
	if err != nil && !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, err
	}
	first := t.raw[:n]
	mark := 0
	t.encoding, t.convert, mark = encodingOf(first)
	if err := refuseBinary(t.encoding, first); err != nil {
		return nil, err
	}
	t.r = io.MultiReader(bytes.NewReader(bytes.Clone(first[mark:])), r)
	return t, nil
}

func encodingOf(first []byte) (name string, c converter, markBytes int) {
	little, big := zerosAt(first)
	switch {
	case bytes.HasPrefix(first, []byte("\xEF\xBB\xBF")):
		return "UTF-8", asIs, 3
	case bytes.HasPrefix(first, []byte("\xFF\xFE")):
		return "UTF-16", fromUTF16(1, 0), 2
	case bytes.HasPrefix(first, []byte("\xFE\xFF")):
		return "UTF-16", fromUTF16(0, 1), 2
	case little:
		return "UTF-16", fromUTF16(1, 0), 0
	case big:
		return "UTF-16", fromUTF16(0, 1), 0
	case validUTF8(first):
		return "UTF-8", asIs, 0
	}
	return "Windows-1252", from1252, 0
}

// zerosAt tells unmarked UTF-16: in Latin text nearly every other byte is zero.
func zerosAt(first []byte) (little, big bool) {
	first = first[:min(len(first), 512)]
	var at [2]int
	for i, b := range first {
		if b == 0 {
			at[i%2]++
		}
	}
	most := len(first) / 3
	return at[1] > most && at[0] == 0, at[0] > most && at[1] == 0
}

// validUTF8 allows that the last letter is cut.
func validUTF8(b []byte) bool {
	for cut := 0; cut < utf8.UTFMax && cut <= len(b); cut++ {
		if utf8.Valid(b[:len(b)-cut]) {
			return true
		}
	}
	return false
}

func refuseBinary(encoding string, first []byte) error {
	switch {
	case len(bytes.TrimSpace(first)) == 0:
		return errors.New("line 1: the file is empty")
	case bytes.HasPrefix(first, []byte("PK\x03\x04")), bytes.HasPrefix(first, []byte("\xD0\xCF\x11\xE0")):
		return errors.New("line 1: this is a packed file or a spreadsheet's own: unpack it, or save the sheet as CSV")
	case bytes.HasPrefix(first, []byte("\x1F\x8B")):
		return errors.New("line 1: this file is compressed: unpack it first")
	case encoding == "UTF-16":
		return nil
	}
	line := 1
	for _, b := range first[:min(len(first), 4096)] {
		if b == '\n' {
			line++
		}
		if b < ' ' && b != 0 && b != '\t' && b != '\n' && b != '\r' && b != '\f' && b != 0x1A {
			return fmt.Errorf("line %d: holds byte %#02x, which no text has: export the log as CSV", line, b)
		}
	}
	return nil
}

func (t *text) Read(p []byte) (int, error) {
	for t.pos == len(t.out) {
		if t.err != nil {
			return 0, t.err
		}
		t.fill()
	}
	n := copy(p, t.out[t.pos:])
	t.pos += n
	return n, nil
}

func (t *text) fill() {
	n, err := t.r.Read(t.raw[t.carried:])
	t.err = err
	have := t.raw[:t.carried+n]
	out, used := t.convert(t.out[:0], have)
	t.carried = copy(t.raw, have[used:])
	if bytes.IndexByte(out, 0) >= 0 {
		before := len(out)
		out = bytes.ReplaceAll(out, []byte{0}, nil)
		t.zeros += before - len(out)
	}
	t.out, t.pos = out, 0
}

// source is a file's table from its beginning, and what is known of it at its end.
type source struct {
	io.Reader
	text      *text
	unstacked *unstacked // nil: it has a column for each signal
}

// peek reads the beginning, which stays to be read.
func (s *source) peek() ([]byte, error) {
	head, err := io.ReadAll(io.LimitReader(s.Reader, headBytes))
	s.Reader = io.MultiReader(bytes.NewReader(head), s.Reader)
	return head, err
}

func asIs(dst, src []byte) ([]byte, int) { return append(dst, src...), len(src) }

func from1252(dst, src []byte) ([]byte, int) {
	const high = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ" // 0x80 to 0x9F
	table := []rune(high)
	for _, b := range src {
		switch {
		case b < 0x80:
			dst = append(dst, b)
		case b < 0xA0:
			dst = utf8.AppendRune(dst, table[b-0x80])
		default:
			dst = utf8.AppendRune(dst, rune(b))
		}
	}
	return dst, len(src)
}

// fromUTF16 takes the places of a unit's high and low byte.
func fromUTF16(high, low int) converter {
	return func(dst, src []byte) ([]byte, int) {
		at := 0
		for at+2 <= len(src) {
			r := rune(src[at+high])<<8 | rune(src[at+low])
			if utf16.IsSurrogate(r) {
				if at+4 > len(src) {
					break // its other half is still to come
				}
				r = utf16.DecodeRune(r, rune(src[at+2+high])<<8|rune(src[at+2+low]))
				at += 2
			}
			dst = utf8.AppendRune(dst, r)
			at += 2
		}
		return dst, at
	}
}
