package chart_test

import (
	"bytes"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"

	"loopbook/assets"
	"loopbook/diagram"
	"loopbook/report/chart"
)

// A legend's long name doesn't run into its sign: it ends no further than the
// short one does, as poppler reads the page.
func TestNamesEndBeforeTheirSigns(t *testing.T) {
	long := strings.Repeat("idle", 12)
	l := chart.Lines{X: "x", Y: "y", Curves: []chart.Curve{
		{Name: "kurz", X: []float64{0, 1}, Y: []float64{1, 0}},
		{Name: long, X: []float64{0, 1}, Y: []float64{2, 0}},
	}}
	short, wide := right(t, l, "kurz"), right(t, l, long)
	if wide > short+0.5 {
		t.Errorf("the short name ends at %.1f, the long one at %.1f", short, wide)
	}
}

// pen writes with the fonts that the papers have.
var pen = chart.Pen{Family: "DejaVu", Clean: strings.Clone}

// right is where a word ends on the page, in points.
func right(t *testing.T, l chart.Lines, word string) float64 {
	t.Helper()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext isn't installed: where words stand stays unchecked")
	}
	pdf := gofpdf.New("P", "pt", "A4", "")
	pdf.AddUTF8FontFromBytes("DejaVu", "", bytes.Clone(assets.DejaVuSans))
	pdf.AddPage()
	if err := chart.OnPage(l, pdf, pen, diagram.Box{50, 60, 480, 220}); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "chart.pdf")
	if err := pdf.OutputFileAndClose(file); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("pdftotext", "-bbox", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	at := regexp.MustCompile(`xMax="([\d.]+)" yMax="[\d.]+">` + word + `<`).FindSubmatch(out)
	if at == nil {
		t.Fatalf("%q isn't on the page:\n%s", word, out)
	}
	x, err := strconv.ParseFloat(string(at[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
