package sqlite

import (
	"encoding/binary"
	"errors"
	"math"
	"time"

	"loopbook/cases"
)

// A digest lies in its chunk as its key, its length and its fields in a fixed
// order: whole numbers as varints, texts with their length before them.

// chunkRows is how many keys a chunk spans. A larger one is read quicker and
// written slower.
const chunkRows = 64

var errDigest = errors.New("a digest is cut short")

// packed writes a digest without its key.
func packed(d cases.Digest) []byte {
	var b []byte
	for _, t := range []time.Time{d.Opened, d.Changed} {
		b = binary.AppendVarint(b, unixOr0(t))
	}
	for _, s := range []string{d.Layout, string(d.Motive), d.Make, d.Model, d.Engine, string(d.Cause), string(d.Guess.First)} {
		b = appendText(b, s)
	}
	b = binary.AppendVarint(b, int64(d.Year))
	for _, f := range []float64{d.OdometerKm, d.Minutes, d.Guess.FirstP, d.Guess.TruthP} {
		b = binary.LittleEndian.AppendUint32(b, math.Float32bits(float32(f)))
	}
	b = binary.LittleEndian.AppendUint64(b, d.Car)
	b = append(b, flag(d.Before)|flag(d.After)<<1|flag(d.Confirmed)<<2)
	b = appendTexts(b, d.Symptoms)
	b = appendTexts(b, d.Codes)
	b = appendTexts(b, d.Tags)
	b = binary.AppendUvarint(b, uint64(len(d.Deltas)))
	for _, x := range d.Deltas {
		b = appendText(b, x.Name)
		b = binary.LittleEndian.AppendUint32(b, math.Float32bits(float32(x.Z)))
	}
	return b
}

func unixOr0(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return micro(t)
}

func flag(on bool) byte {
	if on {
		return 1
	}
	return 0
}

func appendText(b []byte, s string) []byte {
	return append(binary.AppendUvarint(b, uint64(len(s))), s...)
}

func appendTexts[T ~string](b []byte, list []T) []byte {
	b = binary.AppendUvarint(b, uint64(len(list)))
	for _, s := range list {
		b = appendText(b, string(s))
	}
	return b
}

// unpacker reads what packed wrote. Texts that many cases share are held once.
type unpacker struct {
	b     []byte
	bad   bool
	known map[string]string
}

func (u *unpacker) digest() (d cases.Digest) {
	d.Opened, d.Changed = u.time(), u.time()
	d.Layout, d.Motive = u.text(), cases.Motive(u.text())
	d.Make, d.Model, d.Engine = u.text(), u.text(), u.text()
	d.Cause, d.Guess.First = cases.Cause(u.text()), cases.Cause(u.text())
	d.Year = int(u.whole())
	d.OdometerKm, d.Minutes, d.Guess.FirstP, d.Guess.TruthP = u.number(), u.number(), u.number(), u.number()
	if w := u.take(8); w != nil {
		d.Car = binary.LittleEndian.Uint64(w)
	}
	if w := u.take(1); w != nil {
		d.Before, d.After, d.Confirmed = w[0]&1 != 0, w[0]&2 != 0, w[0]&4 != 0
	}
	d.Symptoms = texts[cases.Symptom](u)
	d.Codes, d.Tags = texts[string](u), texts[string](u)
	if n := u.count(); n > 0 {
		d.Deltas = make([]cases.Deviation, n)
		for i := range d.Deltas {
			d.Deltas[i] = cases.Deviation{Name: u.text(), Z: u.number()}
		}
	}
	return d
}

func (u *unpacker) take(n int) []byte {
	if n > len(u.b) {
		u.b, u.bad = nil, true
		return nil
	}
	out := u.b[:n]
	u.b = u.b[n:]
	return out
}

func (u *unpacker) whole() int64 {
	v, n := binary.Varint(u.b)
	u.take(max(n, 0))
	u.bad = u.bad || n <= 0
	return v
}

// count of items: each takes a byte at least.
func (u *unpacker) count() int {
	v, n := binary.Uvarint(u.b)
	u.take(max(n, 0))
	if n <= 0 || v > uint64(len(u.b)) {
		u.bad = true
		return 0
	}
	return int(v)
}

func (u *unpacker) time() time.Time {
	us := u.whole()
	if us == 0 {
		return time.Time{}
	}
	return fromMicro(us)
}

func (u *unpacker) number() float64 {
	w := u.take(4)
	if w == nil {
		return math.NaN()
	}
	return float64(math.Float32frombits(binary.LittleEndian.Uint32(w)))
}

func (u *unpacker) text() string {
	b := u.take(u.count())
	if s, ok := u.known[string(b)]; ok {
		return s
	}
	s := string(b)
	u.known[s] = s
	return s
}

func texts[T ~string](u *unpacker) []T {
	n := u.count()
	if n == 0 {
		return nil
	}
	out := make([]T, n)
	for i := range out {
		out[i] = T(u.text())
	}
	return out
}

// entry is a digest's place in a chunk, its head included.
type entry struct {
	key      int64
	from, to int
	body     []byte
}

// entries walks a chunk.
func entries(chunk []byte, do func(entry) error) error {
	for at := 0; at < len(chunk); {
		key, n := binary.Uvarint(chunk[at:])
		size, m := binary.Uvarint(chunk[at+max(n, 0):])
		if n <= 0 || m <= 0 || size > uint64(len(chunk)) || at+n+m+int(size) > len(chunk) {
			return errDigest
		}
		from := at + n + m
		to := from + int(size)
		if err := do(entry{int64(key), at, to, chunk[from:to]}); err != nil {
			return err
		}
		at = to
	}
	return nil
}

// replaced is the chunk with the key's digest put in its place, or taken out where
// body is nil. Keys stay in order.
func replaced(chunk []byte, key int64, body []byte) ([]byte, error) {
	from, to := len(chunk), len(chunk)
	err := entries(chunk, func(e entry) error {
		if e.key == key {
			from, to = e.from, e.to
		} else if e.key > key && from == len(chunk) {
			from, to = e.from, e.from
		}
		return nil
	})
	out := append([]byte{}, chunk[:from]...)
	if body != nil {
		out = binary.AppendUvarint(out, uint64(key))
		out = append(binary.AppendUvarint(out, uint64(len(body))), body...)
	}
	return append(out, chunk[to:]...), err
}
