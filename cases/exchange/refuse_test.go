package exchange_test

import (
	"bytes"
	"io"
	"io/fs"
	"strings"
	"testing"
	"testing/iotest"

	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

func TestReadRefuses(t *testing.T) {
	plain := string(caseBytes(t, casetest.Invented(1)))
	doc := entry{"case.json", plain, 0}
	bad := strings.Replace(plain, `"point": "rad_in"`, `"point": "somewhere"`, 1)
	photo := string(caseBytes(t, pictured().Case))
	whole := bundleBytes(t, pictured())
	encrypted := zipOf(t, doc, entry{"logs/x", "secret", 0})
	for _, signature := range []struct {
		text string
		flag int
	}{{"PK\x03\x04", 6}, {"PK\x01\x02", 8}} { // APPNOTE.TXT 4.3.7 and 4.3.12, from memory
		encrypted[bytes.LastIndex(encrypted, []byte(signature.text))+signature.flag] |= 1
	}
	flipped := bytes.Clone(whole)
	flipped[bytes.Index(flipped, pictured().Files["photos/1.jpg"])] ^= 1

	for _, tt := range []struct {
		name string
		in   []byte
		want string
	}{
		{"empty", nil, "the file is empty"},
		{"blank", []byte(" \n"), "the file is empty"},
		{"a letter", []byte("Dear all"), "neither a case (JSON) nor a bundle"},
		{"a list", []byte("[]"), "neither a case (JSON) nor a bundle"},
		{"cut JSON", []byte(plain[:len(plain)/2]), "the file ends too early"},
		{"bad point", []byte(bad), "rounds[0].readings[0].point"},
		{"bad point in a bundle", zipOf(t, entry{"case.json", bad, 0}), "case.json: rounds[0].readings[0].point"},
		{"cut zip", whole[:len(whole)-30], "cut short or damaged"},
		{"cut zip in the middle", whole[:len(whole)/2], "cut short or damaged"},
		{"start of a zip", []byte("PK"), "cut short or damaged"},
		{"flipped bit", flipped, `entry "photos/1.jpg": zip: checksum error`},
		{"empty zip", zipOf(t), "no case.json"},
		{"no case", zipOf(t, entry{"photos/1.jpg", "x", 0}), "no case.json"},
		{"case in a folder", zipOf(t, entry{"x/case.json", plain, 0}), "no case.json"},
		{"photo absent", zipOf(t, entry{"case.json", photo, 0}), `photos[0].file: "photos/1.jpg" is not in the bundle`},
		{"up", zipOf(t, doc, entry{"../up.jpg", "x", 0}), `"../up.jpg"`},
		{"up inside", zipOf(t, doc, entry{"photos/../../up.jpg", "x", 0}), "up.jpg"},
		{"folder up", zipOf(t, doc, entry{"../", "", 0}), `".."`},
		{"absolute", zipOf(t, doc, entry{"/etc/x", "x", 0}), `"/etc/x"`},
		{"drive", zipOf(t, doc, entry{"C:x", "x", 0}), `"C:x"`},
		{"backslash", zipOf(t, doc, entry{`..\x`, "x", 0}), `"..\\x"`},
		{"link", zipOf(t, doc, entry{"photos/1.jpg", "/etc/passwd", 0o777 | fs.ModeSymlink}), "no plain file"},
		{"case is a link", zipOf(t, entry{"case.json", "/etc/passwd", 0o777 | fs.ModeSymlink}), "case.json"},
		{"twice", zipOf(t, doc, entry{"logs/x", "1", 0}, entry{"logs/x", "2", 0}), `"logs/x": is there twice`},
		{"case twice", zipOf(t, doc, doc), `"case.json": is there twice`},
		{"encrypted", encrypted, `"logs/x": is encrypted`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			for kind, r := range map[string]io.Reader{"file": bytes.NewReader(tt.in), "stream": bytes.NewBuffer(tt.in)} {
				_, err := exchange.Read("NAME", r)
				if err == nil || !strings.HasPrefix(err.Error(), "NAME: ") || !strings.Contains(err.Error(), tt.want) {
					t.Errorf("Read from a %s = %v, want NAME: … %s", kind, err, tt.want)
				}
			}
		})
	}
}

func TestReadPassesFaultsOn(t *testing.T) {
	broken := io.MultiReader(strings.NewReader(`{"format":`), iotest.ErrReader(io.ErrClosedPipe))
	if _, err := exchange.Read("NAME", broken); err == nil || !strings.Contains(err.Error(), io.ErrClosedPipe.Error()) {
		t.Errorf("Read = %v, want the reader's own error", err)
	}
}
