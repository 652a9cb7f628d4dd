package exchange_test

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// pictured is a bundle with a photo and a recording.
func pictured() exchange.Bundle {
	c := casetest.Invented(7)
	c.Photos = []cases.Photo{{File: "photos/1.jpg", Caption: "lower hose", Point: "rad_out"}}
	c.Extra = cases.Extra{"newer": []byte(`{"x": [1, null, "ü"]}`)}
	return exchange.Bundle{Case: c, Files: map[string][]byte{
		"photos/1.jpg":     {0xFF, 0xD8, 0xFF, 0},
		"logs/warm-up.csv": bytes.Repeat([]byte("time;ect\n"), 1000),
	}}
}

func bundleBytes(t testing.TB, b exchange.Bundle) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := exchange.WriteBundle(&buf, b); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

func caseBytes(t testing.TB, c cases.Case) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := exchange.WriteCase(&buf, c); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// entry is one thing in a zip made for a test.
type entry struct {
	name, data string
	mode       os.FileMode
}

func zipOf(t testing.TB, entries ...entry) []byte {
	t.Helper()
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, e := range entries {
		h := &zip.FileHeader{Name: e.name}
		if e.mode != 0 {
			h.SetMode(e.mode)
		}
		w, err := z.CreateHeader(h)
		if err == nil && e.data != "" {
			_, err = w.Write([]byte(e.data))
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

func TestBundleRoundTrip(t *testing.T) {
	want := pictured()
	first := bundleBytes(t, want)
	path := filepath.Join(t.TempDir(), "named.json") // the content tells, not the ending
	if err := os.WriteFile(path, first, 0o600); err != nil {
		t.Fatal(err)
	}
	fromFile, err := exchange.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	fromStream, err := exchange.Read("stream", bytes.NewBuffer(first))
	if err != nil {
		t.Fatal(err)
	}
	for _, got := range []exchange.Bundle{fromFile, fromStream} {
		if len(got.Files) != 2 || !bytes.Equal(got.Files["photos/1.jpg"], want.Files["photos/1.jpg"]) {
			t.Errorf("files = %d, want 2 with the same photo", len(got.Files))
		}
		if !bytes.Equal(caseBytes(t, got.Case), caseBytes(t, want.Case)) {
			t.Error("the case changed on its way")
		}
		if !bytes.Equal(bundleBytes(t, got), first) {
			t.Error("the second writing differs from the first")
		}
	}
}

func TestCaseRoundTrip(t *testing.T) {
	want := pictured().Case
	text := caseBytes(t, want)
	got, err := exchange.Read("x.zip", bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Files) != 0 || !bytes.Equal(caseBytes(t, got.Case), text) {
		t.Errorf("the case changed on its way, or has files: %d", len(got.Files))
	}
	withMark := append([]byte("\uFEFF \r\n"), text...)
	if _, err := exchange.Read("marked", bytes.NewReader(withMark)); err != nil {
		t.Errorf("with a byte order mark: %v", err)
	}
}

func TestFormatExample(t *testing.T) {
	b, err := exchange.ReadFile("../../testdata/cases/format-example.json")
	if err != nil || b.Case.ID != "01JDZK8QJ6M3T3J1W5Q2B6V9XA" {
		t.Errorf("ReadFile = %q, %v", b.Case.ID, err)
	}
}

func TestFoldersInABundleAreSkipped(t *testing.T) {
	text := string(caseBytes(t, pictured().Case))
	in := zipOf(t, entry{name: "photos/"}, entry{"photos/1.jpg", "x", 0}, entry{"case.json", text, 0o644})
	b, err := exchange.Read("repacked.zip", bytes.NewReader(in))
	if err != nil || len(b.Files) != 1 {
		t.Errorf("Read = %d files, %v; want the photo alone", len(b.Files), err)
	}
}

func TestWriteRefusesWhatReadWould(t *testing.T) {
	noPhoto, badName, badCase := pictured(), pictured(), pictured()
	delete(noPhoto.Files, "photos/1.jpg")
	badName.Files["../up"] = nil
	badCase.Case.Loop.Layout = "ring"
	many := pictured()
	for i := range exchange.MaxEntries {
		many.Files["logs/"+string(rune('a'+i%26))+string(rune(0x4E00+i))] = nil
	}
	large := pictured()
	large.Files["logs/x"] = make([]byte, cases.MaxBundleBytes)
	for name, b := range map[string]exchange.Bundle{
		"missing photo": noPhoto, "name": badName, "case": badCase, "many": many, "large": large,
	} {
		var buf bytes.Buffer
		if err := exchange.WriteBundle(&buf, b); err == nil || buf.Len() > 0 {
			t.Errorf("%s: WriteBundle = %v with %d bytes, want an error and none", name, err, buf.Len())
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(bundleBytes(f, pictured()))
	f.Add(caseBytes(f, pictured().Case))
	f.Add([]byte("PK\x05\x06"))
	f.Fuzz(func(t *testing.T, in []byte) {
		got, err := exchange.Read("fuzz", bytes.NewReader(in))
		if err != nil {
			return // refused
		}
		if len(got.Files) == 0 {
			text := caseBytes(t, got.Case)
			again, err := exchange.Read("our own", bytes.NewReader(text))
			if err != nil || !bytes.Equal(caseBytes(t, again.Case), text) {
				t.Fatalf("the second writing differs: %v", err)
			}
			return
		}
		zipped := bundleBytes(t, got)
		again, err := exchange.Read("our own", bytes.NewReader(zipped))
		if err != nil || !bytes.Equal(bundleBytes(t, again), zipped) {
			t.Fatalf("the second writing differs: %v", err)
		}
	})
}

// Wanted: under 5 ms for a case with its photos, so that a folder of a thousand
// is read in seconds.
func BenchmarkRead(b *testing.B) {
	whole := pictured()
	whole.Files["photos/1.jpg"] = make([]byte, 1<<20)
	in := bundleBytes(b, whole)
	b.SetBytes(int64(len(in)))
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		if _, err := exchange.Read("b.zip", bytes.NewReader(in)); err != nil {
			b.Fatal(err)
		}
	}
}
