package report_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report"
)

// judged is the material with causes and a proof, by rules and tables alone.
func judged(t testing.TB, c *cases.Case) report.Material {
	t.Helper()
	j, err := diagnosis.NewJudge()
	if err != nil {
		t.Fatal(err)
	}
	m := report.Material{Case: c, Found: analysed(t, c), Shop: shop(), Revision: 12, Hash: strings.Repeat("0f", 32)}
	rank := func(stage cases.Stage) diagnosis.Ranking {
		plan, _ := diagnosis.PlanFor(c, stage)
		plan.Stage = stage
		r := j.Rank(c, m.Found, plan, nil, diagnosis.Prior{})
		return r
	}
	before := rank(cases.BeforeRepair)
	p := proof.Judge(c, m.Found, rank(cases.AfterRepair))
	m.Causes, m.Next, m.Beside, m.Proof = &before, j.Next(before), j.Beside(before), &p
	return m
}

// Every paper of the fullest, the longest, the worst and the emptiest case, in
// every language and on both sizes, is sound and keeps to its margins.
func TestPapersInEveryLanguage(t *testing.T) {
	for name, make := range builders() {
		m := judged(t, make())
		for i, l := range say.Langs() {
			for j, kind := range report.Kinds() {
				o := report.Options{Lang: l, Page: report.A4}
				if (i+j)%2 == 1 {
					o.Page, o.Units = report.Letter, units.US()
				}
				where := fmt.Sprintf("%s, %s, %s", kind, l, name)
				pdf := written(t, kind, m, o)
				sound(t, where, pdf)
				if !strings.Contains(string(pdf), fmt.Sprintf("/Lang (%s)", l)) {
					t.Errorf("%s: the document doesn't name its language", where)
				}
				if len(pdf) > 300_000 {
					t.Errorf("%s: %d bytes without any photo", where, len(pdf))
				}
			}
		}
	}
}

// No template's name stands on a paper where its words should.
func TestEveryWordIsSaid(t *testing.T) {
	m := judged(t, full())
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for _, kind := range report.Kinds() {
			text := pdfText(t, written(t, kind, m, report.Options{Lang: l}))
			for key := range words {
				if strings.Count(key, ".") > 0 && strings.Contains(text, key) {
					t.Errorf("%s, %s: %q stands on the paper", kind, l, key)
				}
			}
			if at := strings.Index(text, "{"); at >= 0 {
				t.Errorf("%s, %s: a place is empty: %q", kind, l, text[at:min(len(text), at+20)])
			}
		}
	}
}

func TestSamePaperHasTheSameBytes(t *testing.T) {
	m := judged(t, full())
	m.Photo = func(string) ([]byte, error) { return snapshot(t, 300, 200, 1), nil }
	for _, kind := range report.Kinds() {
		if a, b := written(t, kind, m, report.Options{}), written(t, kind, m, report.Options{}); !bytes.Equal(a, b) {
			t.Errorf("%s: two writings differ", kind)
		}
	}
}

func TestPhotosStandWithTheirCaptions(t *testing.T) {
	c := full()
	c.Photos = append(c.Photos, cases.Photo{File: "photos/gone.jpg", Caption: "never came"}, cases.Photo{File: "photos/text.jpg"})
	m := judged(t, c)
	m.Photo = func(file string) ([]byte, error) {
		switch file {
		case "photos/1.jpg":
			return snapshot(t, 640, 480, 1), nil
		case "photos/text.jpg":
			return []byte("no picture"), nil
		}
		return nil, io.ErrUnexpectedEOF
	}
	pdf := written(t, report.Record, m, report.Options{})
	text := flat(pdfText(t, pdf))
	for _, want := range []string{"fins full of fluff", "The picture photos/gone.jpg isn't here.", "never came", "The picture photos/text.jpg isn't here."} {
		if !strings.Contains(text, want) {
			t.Errorf("the record lacks %q", want)
		}
	}
	if n := strings.Count(tool(t, pdf, "pdfimages", "-list", "FILE"), " jpeg "); n != 1 {
		t.Errorf("%d pictures in the record, want 1", n)
	}
}

// A round's name stands in a plot's legend too, and a paper's font has no letters beyond U+FFFF (Unicode 16.0, emoji
// charts: fire is U+1F525): the name keeps its words, and each paper is made.
func TestRoundsAreNamedByAnyLetters(t *testing.T) {
	c := full()
	for i := range c.Rounds {
		c.Rounds[i].Label = "Runde 🔥 " + strconv.Itoa(i+1)
	}
	m := judged(t, c)
	for _, kind := range report.Kinds() {
		pdf := written(t, kind, m, report.Options{})
		sound(t, string(kind), pdf)
		if kind == report.Record && !strings.Contains(flat(pdfText(t, pdf)), "Runde ▯ 2, after repair") {
			t.Errorf("the plot along the flow doesn't name the rounds")
		}
	}
}

// The same picture under two names is kept once, and the document stays sound.
func TestSamePhotoTwice(t *testing.T) {
	c := full()
	c.Photos = []cases.Photo{{File: "photos/1.jpg"}, {File: "photos/again.jpg"}}
	m := judged(t, c)
	m.Photo = func(string) ([]byte, error) { return snapshot(t, 640, 480, 1), nil }
	sound(t, "a photo twice", written(t, report.Record, m, report.Options{}))
}

// Each cause that the record has a row for stands there with its reasons.
func TestEveryCauseHasItsReasons(t *testing.T) {
	m := judged(t, full())
	bare := *m.Causes
	m.Causes.Causes = slices.Clone(bare.Causes)
	m.Causes.Explain(len(bare.Causes))
	want := pdfText(t, written(t, report.Record, m, report.Options{}))
	m.Causes = &bare
	if got := pdfText(t, written(t, report.Record, m, report.Options{})); got != want {
		t.Error("the record tells other reasons where nobody has asked for them before")
	}
}

// snapshot is an invented picture with detail all over.
func snapshot(t testing.TB, w, h, seed int) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := 0; y < h; y++ {
		for x := 0; x < w; x++ {
			v := uint8((x*x + y*seed*7 + x*y) >> 6)
			img.SetRGBA(x, y, color.RGBA{v, uint8(x * 255 / w), uint8(y * 255 / h), 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, nil); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// Wanted: 40 photos of a camera in 3 s and under 10 MB.
func BenchmarkFortyPhotos(b *testing.B) {
	c := full()
	raw := snapshot(b, 4000, 3000, 3)
	for i := range 40 {
		c.Photos = append(c.Photos, cases.Photo{File: fmt.Sprint(i), Caption: "caption"})
	}
	m := judged(b, c)
	m.Photo = func(string) ([]byte, error) { return raw, nil }
	b.ResetTimer()
	size := 0
	for i := 0; i < b.N; i++ {
		size = len(written(b, report.Record, m, report.Options{}))
	}
	b.ReportMetric(float64(size)/1e6, "MB")
}

// Wanted: a paper without photos in 150 ms, and in at most twice what gofpdf
// takes to write as many texts and lines with the same fonts.
func BenchmarkPapers(b *testing.B) {
	for _, kind := range report.Kinds() {
		m := judged(b, long(6, 15))
		pdf := written(b, kind, m, report.Options{})
		marks := countMarks(b, pdf)
		b.Run(string(kind), func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				written(b, kind, m, report.Options{})
			}
		})
		b.Run(string(kind)+" bare", func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				marks.write(b)
			}
		})
	}
}

// marks are how much stands on a paper.
type marks struct{ pages, texts, lines int }

var (
	streamRE = regexp.MustCompile(`(?s)stream\n(.*?)\nendstream`)
	textRE   = regexp.MustCompile(`\bT[jJ]\b`)
	lineRE   = regexp.MustCompile(`(?m)\b(S|f|B|re f|re S|re B)$`)
)

func countMarks(t testing.TB, pdf []byte) marks {
	t.Helper()
	out := marks{pages: pageCount(pdf)}
	for _, s := range streamRE.FindAllSubmatch(pdf, -1) {
		r, err := zlib.NewReader(bytes.NewReader(s[1]))
		if err != nil {
			continue
		}
		text, _ := io.ReadAll(r)
		out.texts += len(textRE.FindAll(text, -1))
		out.lines += len(lineRE.FindAll(text, -1))
	}
	if out.texts == 0 || out.lines == 0 {
		t.Fatalf("nothing found on the paper: %+v", out)
	}
	return out
}

// write puts as many texts and lines down with nothing but gofpdf.
func (m marks) write(t testing.TB) {
	pdf := gofpdf.New("P", "pt", "A4", "")
	pdf.SetCompression(true)
	pdf.AddUTF8FontFromBytes("body", "", bytes.Clone(assets.DejaVuSans))
	pdf.AddUTF8FontFromBytes("body", "B", bytes.Clone(assets.DejaVuSansBold))
	for p := range m.pages {
		pdf.AddPage()
		for i := range m.texts / m.pages {
			pdf.SetFont("body", []string{"", "B"}[(i+p)%2], 8)
			words := fmt.Sprintf("Lower hose, radiator %d.%d °C", i*7%130, p)
			_ = pdf.GetStringWidth(words) // no text is placed without being measured
			pdf.Text(float64(42+i*31%400), float64(42+i*17%700), words)
		}
		for i := range m.lines / m.pages {
			pdf.Line(float64(42+i*13%400), float64(42+i*29%700), float64(60+i*7%500), float64(42+i*19%700))
		}
	}
	if err := pdf.Output(io.Discard); err != nil {
		t.Fatal(err)
	}
}
