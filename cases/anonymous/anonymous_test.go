package anonymous_test

import (
	"archive/zip"
	"bytes"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
	"loopbook/cases/photo"
)

// fullest is the demo's largest case as a bundle, with the customer's name hidden
// where people put it.
func fullest(t testing.TB) cases.Bundle {
	t.Helper()
	files, err := filepath.Glob("../../assets/demo/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	var largest []byte
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if len(text) > len(largest) {
			largest = text
		}
	}
	c, err := cases.Decode(largest)
	if err != nil {
		t.Fatal(err)
	}
	c.Customer = cases.Customer{Name: "Zoë Müller-Pöckwell", Contact: "zoe.mueller@pockwell.example, +49 170 5550123"}
	c.Vehicle.VIN = "1G4AH59H45G118341" // 49 CFR 565.15, table V
	c.Vehicle.OdometerKm = casetest.P(154_321.0)
	c.Photos = []cases.Photo{
		{File: "photos/Poeckwell front.jpg", Caption: "Frau MULLER's lower hose"},
		{File: "photos/2.png", Caption: "the plate is RT-PK 4711"},
	}
	c.Verdict.Note = "Told Zoe on the phone (0170/5550123), she came on 12.11.2026."
	c.Tags = append(c.Tags, "müller", "winter")
	c.Lesson = "Ms Po\u0308ckwell's car, again: number 5G118341 on the order."
	c.Repair.Parts = append(c.Repair.Parts, cases.Part{Name: "thermostat (PÖCKWELL)"})
	c.Logs = append(c.Logs, cases.Log{Name: "zoe-mueller-2026-11-12", TimeS: []float64{0, 1}, EctC: []float64{20, 21}})
	c.Extra = cases.Extra{"owner": json.RawMessage(`{"who": "Zo\u00eb M\u00fcller"}`)}
	c.Repair.Extra = cases.Extra{"paid_by": json.RawMessage(`"Poeckwell"`)}
	return cases.Bundle{Case: c, Files: map[string][]byte{
		"photos/Poeckwell front.jpg": camera(t, "Zoë Müller-Pöckwell, RT-PK 4711"),
		"photos/2.png":               noted(t, "Mueller"),
		"logs/Mueller.csv":           []byte("# driver: Zo\xeb M\xfcller\nlat;lon;ect\n48.1;9.2;20\n"),
		"other.heic":                 []byte("Poeckwell"),
	}}
}

func picture() image.Image {
	m := image.NewRGBA(image.Rect(0, 0, 40, 24))
	for x := range 40 {
		for y := range 24 {
			m.Set(x, y, color.RGBA{uint8(6 * x), uint8(10 * y), 90, 255})
		}
	}
	return m
}

// camera is a JPEG as a camera writes it: turned (6), with Exif that names its
// owner (tag 315 of TIFF 6.0), a comment, and something behind its end.
func camera(t testing.TB, owner string) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := jpeg.Encode(&buf, picture(), nil); err != nil {
		t.Fatal(err)
	}
	tiff := []byte("Exif\x00\x00II\x2A\x00\x08\x00\x00\x00\x02\x00")
	tiff = append(tiff, 0x12, 1, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0)
	tiff = append(tiff, 0x3B, 1, 2, 0, byte(len(owner)), 0, 0, 0, 38, 0, 0, 0)
	tiff = append(append(tiff, 0, 0, 0, 0), owner...)
	part := func(mark byte, body []byte) []byte {
		return append([]byte{0xFF, mark, byte((len(body) + 2) >> 8), byte(len(body) + 2)}, body...)
	}
	out := []byte{0xFF, 0xD8}
	out = append(out, part(0xE1, tiff)...)
	out = append(out, part(0xFE, []byte("by "+owner))...)
	return append(append(out, buf.Bytes()[2:]...), owner...)
}

// noted is a PNG with a text (W3C PNG, 11.3.3.2) and something behind its end.
func noted(t testing.TB, text string) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := png.Encode(&buf, picture()); err != nil {
		t.Fatal(err)
	}
	body := append([]byte("tEXtAuthor\x00"), text...)
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(body)-4))
	chunk = append(chunk, body...)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(body))
	const head = 8 + 25 // signature and IHDR
	out := append(bytes.Clone(buf.Bytes()[:head]), chunk...)
	return append(append(out, buf.Bytes()[head:]...), text...)
}

// TestTheNameIsNowhere holds every byte of the unpacked bundle, in several
// encodings and without regard to case and marks, against the customer's names.
func TestTheNameIsNowhere(t *testing.T) {
	made, _, err := anonymous.Make(fullest(t), []string{"RT-PK 4711"}, photo.Bare)
	if err != nil {
		t.Fatal(err)
	}
	var zipped bytes.Buffer
	if err := exchange.WriteBundle(&zipped, made); err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(zipped.Bytes()), int64(zipped.Len()))
	if err != nil {
		t.Fatal(err)
	}
	secret := []string{"muller", "mueller", "pockwell", "poeckwell", "zoe", "5550123", "4711", "118341", "2026-11-1", "12.11", "154321"}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		for name, text := range readings(f.Name, data) {
			for _, s := range secret {
				if strings.Contains(text, s) {
					t.Errorf("%s read as %s: holds %q", f.Name, name, s)
				}
			}
		}
	}
}

// readings are ways to read bytes: as UTF-8, Latin-1 and UTF-16, and with JSON's
// escapes undone; folded.
func readings(name string, data []byte) map[string]string {
	latin := make([]rune, len(data))
	for i, b := range data {
		latin[i] = rune(b)
	}
	wide := func(order binary.ByteOrder) string {
		var out []rune
		for i := 0; i+1 < len(data); i += 2 {
			out = append(out, rune(order.Uint16(data[i:])))
		}
		return string(out)
	}
	var any any
	escaped := ""
	if json.Unmarshal(data, &any) == nil {
		escaped = fmt.Sprint(any)
	}
	out := map[string]string{"name": name, "UTF-8": string(data), "Latin-1": string(latin),
		"UTF-16LE": wide(binary.LittleEndian), "UTF-16BE": wide(binary.BigEndian), "JSON": escaped}
	for k, text := range out {
		out[k] = plain(text)
	}
	return out
}

func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsMark(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, norm.NFD.String(s))
}

func TestPicturesStayPictures(t *testing.T) {
	b := fullest(t)
	made, told, err := anonymous.Make(b, nil, photo.Bare)
	if err != nil {
		t.Fatal(err)
	}
	if len(made.Files) != 2 || len(made.Case.Photos) != 2 {
		t.Fatalf("files %d, photos %+v; want the two pictures", len(made.Files), made.Case.Photos)
	}
	for i, was := range []string{"photos/Poeckwell front.jpg", "photos/2.png"} {
		before, _, errB := image.Decode(bytes.NewReader(b.Files[was]))
		after, kind, errA := image.Decode(bytes.NewReader(made.Files[made.Case.Photos[i].File]))
		if errA != nil || errB != nil {
			t.Fatalf("%s: %v, %v", was, errB, errA)
		}
		for x := range 40 {
			for y := range 24 {
				if before.At(x, y) != after.At(x, y) {
					t.Fatalf("%s (%s): pixel %d,%d changed", was, kind, x, y)
				}
			}
		}
	}
	turned := made.Files[made.Case.Photos[0].File]
	if !bytes.Contains(turned[:40], []byte{0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6}) { // TIFF 6.0, tag 274
		t.Errorf("the turn is lost: % x", turned[:40])
	}
	kinds := map[anonymous.Kind]int{}
	for _, l := range told.Goes {
		kinds[l.Kind]++
	}
	for kind, n := range map[anonymous.Kind]int{anonymous.Customer: 2, anonymous.Number: 1, anonymous.Notes: 2, anonymous.LogFile: 1, anonymous.OtherFile: 1, anonymous.Unknown: 2, anonymous.Odometer: 1} {
		if kinds[kind] != n {
			t.Errorf("%s goes %d times, want %d", kind, kinds[kind], n)
		}
	}
}

func TestWhatStays(t *testing.T) {
	b := fullest(t)
	before, err := cases.Encode(b.Case)
	if err != nil {
		t.Fatal(err)
	}
	made, told, err := anonymous.Make(b, nil, photo.Bare)
	if err != nil {
		t.Fatal(err)
	}
	again, _, _ := anonymous.Make(b, nil, photo.Bare)
	c := made.Case
	if after, _ := cases.Encode(b.Case); !bytes.Equal(before, after) {
		t.Error("the case that was given changed")
	}
	if c.ID != again.Case.ID || c.ID == b.Case.ID {
		t.Errorf("id %q, again %q: want the same, and another than before", c.ID, again.Case.ID)
	}
	if c.Vehicle.VIN != "1G4AH59H" || *c.Vehicle.OdometerKm != 154_000 || c.Vehicle.Make != b.Case.Vehicle.Make {
		t.Errorf("vehicle %+v", c.Vehicle)
	}
	if len(c.Rounds) != len(b.Case.Rounds) || len(c.Tests) != len(b.Case.Tests) || len(c.Logs) != len(b.Case.Logs) {
		t.Error("measurements are lost")
	}
	if c.Opened.Day() != 1 || c.Opened.Month() != b.Case.Opened.Month() || c.Opened.Location() != time.UTC {
		t.Errorf("opened %v", c.Opened)
	}
	was, now := b.Case.Rounds[1].Taken.Sub(b.Case.Rounds[0].Taken), c.Rounds[1].Taken.Sub(c.Rounds[0].Taken)
	if now != was.Truncate(time.Minute) {
		t.Errorf("the second round is %v after the first, was %v", now, was)
	}
	stays := 0
	for _, l := range told.Stays {
		if l.Kind == anonymous.FreeText && l.Where == "complaint.text" && l.Was == b.Case.Complaint.Text {
			stays++
		}
	}
	if stays != 1 {
		t.Error("the complaint's words aren't told among what stays")
	}
}

// Spellings are of the common practice of each language; no source.
func TestSpellings(t *testing.T) {
	for _, tt := range []struct{ name, text, want string }{
		{"Müller", "Mueller, MULLER, mu\u0308ller, Müllers Wagen", "[…], […], […], […]s Wagen"},
		{"Mueller", "Müller", "[…]"},
		{"Straßer", "STRASSER und strasser", "[…] und […]"},
		{"Ærø Łukasz", "aero, Lukasz", "[…], […]"},
		{"Ng", "Ng said long, ng.", "[…] said long, […]."},
		{"Núñez de la Torre", "nunez, de la mañana, TORRE", "[…], de la mañana, […]"},
		{"Παπαδόπουλος", "ΠΑΠΑΔΟΠΟΥΛΟΣ, Παπαδόπουλος", "[…], […]"},
		{"Ødegård", "ODEGAARD, Ødegaard, Oedegaard, odegard", "[…], […], […], […]"},
		{"山田 太郎", "山田さんの車, 太郎", "[…]さんの車, […]"},
		{"O'Neill", "oneill? O'Neill!", "o[…]? […]!"},
		{"Peckwell", "front_peckwell2.jpg", "front_[…]2.jpg"},
		{"", "write to a.b@c.example or +44 20 5550 0123 from 3/11/2026", "write to […] or […] from […]"},
		{"", "12.5 kPa at 20 °C, 1000 to 2500 rpm, 2026", "12.5 kPa at 20 °C, 1000 to 2500 rpm, 2026"},
	} {
		c := casetest.Invented(1)
		c.Customer = cases.Customer{Name: tt.name}
		c.Lesson = tt.text
		made, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, photo.Bare)
		if err != nil || made.Case.Lesson != tt.want {
			t.Errorf("%s in %q gives %q, %v; want %q", tt.name, tt.text, made.Case.Lesson, err, tt.want)
		}
	}
}

// A picture that is cut or made up is left out, and never a panic.
func FuzzPictures(f *testing.F) {
	f.Add(camera(f, "somebody"))
	f.Add(noted(f, "somebody"))
	f.Add([]byte{0xFF, 0xD8, 0xFF, 0xE1, 0, 2})
	f.Fuzz(func(t *testing.T, data []byte) {
		b := cases.Bundle{Case: casetest.Invented(1), Files: map[string][]byte{"photos/x": data}}
		made, _, err := anonymous.Make(b, nil, photo.Bare)
		if err != nil {
			t.Fatal(err)
		}
		for name, once := range made.Files {
			again, _, err := anonymous.Make(cases.Bundle{Case: made.Case, Files: map[string][]byte{name: once}}, nil, photo.Bare)
			if err != nil || !bytes.Equal(again.Files[name], once) {
				t.Fatalf("made anonymous twice it differs: %v", err)
			}
		}
	})
}

// What is said about the contact in plain words is no secret elsewhere.
// A picture that can't be looked into is left out; what was written under it stays, and nothing is left of one without.
func TestACaptionOutlivesItsPicture(t *testing.T) {
	c := cases.Case{Photos: []cases.Photo{{File: "photos/1.heic", Caption: "the lower hose, sucked flat"}, {File: "photos/2.heic"}}}
	b := cases.Bundle{Case: c, Files: map[string][]byte{"photos/1.heic": []byte("?"), "photos/2.heic": []byte("?")}}
	out, _, err := anonymous.Make(b, nil, photo.Bare)
	if err != nil {
		t.Fatal(err)
	}
	if got := out.Case.Photos; len(got) != 1 || got[0].File != "" || got[0].Caption != "the lower hose, sucked flat" || len(out.Files) != 0 {
		t.Errorf("left are %+v and %d files", got, len(out.Files))
	}
}

// Four figures of a telephone number are hidden by themselves too; two are a temperature.
func TestPartsOfANumber(t *testing.T) {
	c := cases.Case{Customer: cases.Customer{Name: "Ada Thorn", Contact: "555 0182 44"}, Lesson: "Extension 0182 said it stood at 44 °C."}
	out, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := out.Case.Lesson; strings.Contains(got, "0182") || !strings.HasSuffix(got, "44 °C.") {
		t.Errorf("the lesson reads %q", got)
	}
}

func TestPlainWordsOfTheContactStay(t *testing.T) {
	c := cases.Case{Customer: cases.Customer{Name: "Ada Thorn", Contact: "ada@thorn.example; rings back after four, ask for Bertil"},
		Lesson: "Look again after the thermostat opens, said Bertil."}
	out, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := out.Case.Lesson; !strings.Contains(got, "again after the thermostat") || strings.Contains(got, "Bertil") {
		t.Errorf("the lesson reads %q", got)
	}
}

// What leads to a person is typed in many ways, and logs are named by the day and by the vehicle's number: in a name with
// underscores, where no word ends, the day stayed; so did a number that the case doesn't note, a telephone as North America writes
// it (the NANP's 555-01XX are nobody's), and a plate without its dash. The vehicle's number is 49 CFR 565.15's, table V; what is
// measured stays.
func TestNumbersAndDaysInAnySpelling(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"log_2026-11-25_0930", "log_[…]_0930"},
		{"20261125093000.csv, warmup_20261125", "[…].csv, warmup_[…]"},
		{"on 2026/11/25, 25-11-2026 and cold_25.11.2026_b", "on […], […] and cold_[…]_b"},
		{"at 2026-11-25T09:30:00+01:00", "at […]"},
		{"scan_1g4ah59h45g118341.csv", "scan_[…].csv"},
		{"(212) 555-0123, 212-555-0123 or 212.555.0123", "[…], […] or […]"},
		{"612 345 678, 612345678, 612 34 56 78 or 91 123 45 67", "[…], […], […] or […]"},
		{"rtpk4711, RT PK 4711", "[…], […]"},
		{"order 11 53 7 549 476, 82-88-92 °C, 1500-2000-2500 rpm, 0.25-0.30 mm, 120261125", "order 11 53 7 549 476, 82-88-92 °C, 1500-2000-2500 rpm, 0.25-0.30 mm, 120261125"},
	} {
		c := casetest.Invented(1)
		c.Customer, c.Vehicle.VIN = cases.Customer{}, ""
		c.Logs = []cases.Log{{Name: tt.text}}
		made, _, err := anonymous.Make(cases.Bundle{Case: c}, []string{"RT-PK 4711"}, photo.Bare)
		if err != nil || made.Case.Logs[0].Name != tt.want {
			t.Errorf("%q gives %q, %v; want %q", tt.text, made.Case.Logs[0].Name, err, tt.want)
		}
	}
	c := casetest.Invented(1)
	c.Customer, c.Vehicle.VIN = cases.Customer{Contact: "Elm 3, 170 555 0123 after six"}, "1G4AH59H45G118341"
	c.Lesson = "1G4 AH59 H45 G11 8341, 1705550123"
	made, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, photo.Bare)
	if err != nil || made.Case.Lesson != "[…], […]" {
		t.Errorf("the vehicle's and the customer's number are left as %q, %v", made.Case.Lesson, err)
	}
}

// A day may have its month in a word: it stayed, and with it the day that the times hide. Ways to write one are of common practice
// in each language, no source.
func TestDaysInWords(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"came on 12 March 2026, March 12th, 2026-3-5 and the 3rd of May", "came on […], […], […] and the […]"},
		{"log_12Mar2026_a, 12-Mar-2026, Mar. 12, May 7, Sept 3", "log_[…]_a, […], […], […], […]"},
		{"am 12. März 2026, 3. Mai und 24.dez.2025", "am […], […] und […]"},
		{"el 12 de marzo de 2026, 1º de mayo, 14 de dic. y 3 ENERO", "el […], […], […]. y […]"},
		{"12 may open late, 85 may be too little, 3 marks, 95 oct, 12 separate hoses, in March 2026, 112 march", "12 may open late, 85 may be too little, 3 marks, 95 oct, 12 separate hoses, in March 2026, 112 march"},
	} {
		c := casetest.Invented(1)
		c.Customer, c.Lesson = cases.Customer{}, tt.text
		made, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, photo.Bare)
		if err != nil || made.Case.Lesson != tt.want {
			t.Errorf("%q gives %q, %v; want %q", tt.text, made.Case.Lesson, err, tt.want)
		}
	}
}

// A day without its year goes where it can't be a measured value, which stays. Ways to write one are of common practice in each
// language, no source.
func TestDaysWithoutTheirYear(t *testing.T) {
	for _, tt := range []struct{ text, want string }{
		{"Abholung 12.03. um 9 Uhr, am 3.4. wieder da, vom 1.2. bis 5.2., log_05.03._a", "Abholung […] um 9 Uhr, am […] wieder da, vom […] bis […], log_[…]_a"},
		{"Am 12.3. Kühler erneuert. Freitag, 12.3, und am 4.11 abgeholt", "Am […] Kühler erneuert. Freitag, […], und am […] abgeholt"},
		{"came on 12/03, Monday 3/25, on 03-12 and Tue. 7/12", "came on […], Monday […], on […] and Tue. […]"},
		{"vino el 12/03 y el martes 14/3, la del 05-03", "vino el […] y el martes […], la del […]"},
		{"12.3 V, 1/2, fan on 12.3, off 11.8; it read 12.3. The fan ran. -12.3. 14 min later 12/03 teeth, 03-12", "12.3 V, 1/2, fan on 12.3, off 11.8; it read 12.3. The fan ran. -12.3. 14 min later 12/03 teeth, 03-12"},
		{"on 1/2 throttle, on 3/4, on 11/16, on 10-12 psi, on 12/24 V, on 5/8", "on 1/2 throttle, on 3/4, on 11/16, on 10-12 psi, on 12/24 V, on 5/8"},
		{"am 1.2 bar, vom 1.6 Turbo, el 12.3 %, am 85.5 °C, am 12.3 V, 1.2.3, on 192.168", "am 1.2 bar, vom 1.6 Turbo, el 12.3 %, am 85.5 °C, am 12.3 V, 1.2.3, on 192.168"},
		{"88.5. 92.12. 8.5. 92, 0.5. 12.60. 12.3. 1500 rpm, so 12.3 bar, diamond 12/03", "88.5. 92.12. 8.5. 92, 0.5. 12.60. 12.3. 1500 rpm, so 12.3 bar, diamond 12/03"},
	} {
		c := casetest.Invented(1)
		c.Customer, c.Lesson = cases.Customer{}, tt.text
		made, _, err := anonymous.Make(cases.Bundle{Case: c}, nil, photo.Bare)
		if err != nil || made.Case.Lesson != tt.want {
			t.Errorf("%q\n gives %q, %v;\n want  %q", tt.text, made.Case.Lesson, err, tt.want)
		}
	}
}
