package exchange_test

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"io"
	"runtime"
	"strings"
	"testing"
	"time"

	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// TestReadIsBounded feeds files that want more than they may have: each is
// refused within the bytes of memory and the time that are stated.
func TestReadIsBounded(t *testing.T) {
	text := string(caseBytes(t, casetest.Invented(1)))
	doc := entry{"case.json", text, 0}
	z := packZeros(t)
	lying := z.zipped(t, text, "logs/1")                      // claims to hold 10 bytes
	size := bytes.LastIndex(lying, []byte("PK\x01\x02")) + 24 // APPNOTE.TXT 4.3.12, from memory
	binary.LittleEndian.PutUint32(lying[size:], 10)
	var many []entry
	for i := range 5 * exchange.MaxEntries {
		many = append(many, entry{fmt.Sprintf("logs/%d", i), "", 0})
	}
	oneTooMany := append([]entry{doc}, many[:exchange.MaxEntries]...)
	for _, tt := range []struct {
		name   string
		in     io.Reader
		mostMB uint64
		want   string
	}{
		{"200 MB of zeros", io.LimitReader(forever(0), 200<<20), 1, "neither"},
		{"endless blanks", forever(' '), 400, "larger than 32 MB"},
		{"endless zip", io.MultiReader(strings.NewReader("PK"), forever(0)), 1, "larger than 272 MB"},
		{"bomb", bytes.NewReader(z.zipped(t, text, "logs/1", "logs/2", "logs/3", "logs/4")), 1, "larger than 288 MB"},
		{"files too large", bytes.NewReader(z.zipped(t, text, "logs/1", "logs/2", "logs/3")), 300, "larger than 76 MB"},
		{"lying bomb", bytes.NewReader(lying), 1, `entry "logs/1"`},
		{"case as a bomb", bytes.NewReader(z.zipped(t, "", "case.json")), 1, "larger than 32 MB"},
		{"one too many", bytes.NewReader(zipOf(t, oneTooMany...)), 30, "more than 10000 entries"},
		{"far too many", bytes.NewReader(zipOf(t, many...)), 60, "more than 10000 entries"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if tt.mostMB > 100 && (underRace || testing.Short()) {
				t.Skip("hundreds of megabytes, on one goroutine")
			}
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			start := time.Now()
			_, err := exchange.Read("NAME", tt.in)
			took := time.Since(start)
			runtime.ReadMemStats(&after)
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Read = %v, want %q", err, tt.want)
			}
			mb := (after.TotalAlloc - before.TotalAlloc) >> 20
			t.Logf("%d MB handed out in all, %v", mb, took)
			if mb > tt.mostMB {
				t.Errorf("took %d MB in all, may take %d", mb, tt.mostMB)
			}
		})
	}
}

// packed is 90 MB of zeros as a zip holds them.
type packed struct {
	data []byte
	crc  uint32
}

const packedSize = 90 << 20

// packZeros packs one megabyte and repeats it: after Flush a deflate stream can
// go on with any other.
func packZeros(t *testing.T) packed {
	t.Helper()
	megabyte := make([]byte, 1<<20)
	var buf bytes.Buffer
	w, err := flate.NewWriter(&buf, flate.BestSpeed)
	if err == nil {
		_, err = w.Write(megabyte)
	}
	if err != nil || w.Flush() != nil {
		t.Fatal("packing zeros", err)
	}
	part := bytes.Clone(buf.Bytes())
	buf.Reset()
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	p := packed{data: append(bytes.Repeat(part, packedSize/len(megabyte)), buf.Bytes()...)}
	for range packedSize / len(megabyte) {
		p.crc = crc32.Update(p.crc, crc32.IEEETable, megabyte)
	}
	return p
}

// zipped is a zip with the zeros under each name, and with the case's text.
func (p packed) zipped(t *testing.T, text string, names ...string) []byte {
	t.Helper()
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	if text != "" {
		w, err := z.Create("case.json")
		if err == nil {
			_, err = io.WriteString(w, text)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range names {
		w, err := z.CreateRaw(&zip.FileHeader{
			Name: name, Method: zip.Deflate, CRC32: p.crc,
			CompressedSize64: uint64(len(p.data)), UncompressedSize64: packedSize,
		})
		if err == nil {
			_, err = w.Write(p.data)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// forever is an endless run of one byte.
type forever byte

func (b forever) Read(p []byte) (int, error) {
	if len(p) == 0 {
		return 0, nil
	}
	p[0] = byte(b)
	for n := 1; n < len(p); n *= 2 {
		copy(p[n:], p[:n])
	}
	return len(p), nil
}
