package report_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/report"
)

// The PDF is looked at with other people's readers: poppler and qpdf.

func builders() map[string]func() *cases.Case {
	return map[string]func() *cases.Case{
		"full":    full,
		"long":    func() *cases.Case { return long(6, 15) },
		"hostile": hostile,
		"empty":   func() *cases.Case { return &cases.Case{} },
	}
}

func tool(t *testing.T, pdf []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Skipf("%s isn't installed: what is in the PDF stays unchecked", name)
	}
	file := filepath.Join(t.TempDir(), "record.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s %v: %v\n%s", name, args, err, out)
	}
	return string(out)
}

// pdfText is the text in reading order.
func pdfText(t *testing.T, pdf []byte) string {
	t.Helper()
	return tool(t, pdf, "pdftotext", "-layout", "FILE", "-") + tool(t, pdf, "pdftotext", "-raw", "FILE", "-")
}

func pdfPages(t *testing.T, pdf []byte) []string {
	t.Helper()
	return strings.Split(strings.TrimSuffix(tool(t, pdf, "pdftotext", "-layout", "FILE", "-"), "\f"), "\f")
}

// flat is a text with all blanks alike, for what was wrapped.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

func TestPDFIsWellFormed(t *testing.T) {
	for name, make := range builders() {
		for _, page := range []report.Page{report.A4, report.Letter} {
			pdf := record(t, make(), report.Options{Page: page})
			if out := tool(t, pdf, "qpdf", "--check", "FILE"); strings.Contains(out, "WARNING") {
				t.Errorf("%s on %s: %s", name, page, out)
			}
		}
	}
}

func TestPDFCarriesItsFontsTitleAndLanguage(t *testing.T) {
	pdf := record(t, full(), report.Options{})
	lines := strings.Split(strings.TrimSpace(tool(t, pdf, "pdffonts", "FILE")), "\n")[2:]
	if len(lines) != 2 {
		t.Errorf("%d fonts, want the plain and the bold one: %q", len(lines), lines)
	}
	for _, line := range lines {
		if f := strings.Fields(line); len(f) < 5 || f[len(f)-5] != "yes" {
			t.Errorf("a font isn't embedded: %s", line)
		}
	}
	if info := flat(tool(t, pdf, "pdfinfo", "FILE")); !strings.Contains(info, "Title: Overheats in traffic, cabin stays cool") || !strings.Contains(info, "Creator: Loopbook") {
		t.Errorf("pdfinfo lacks the title or the creator: %s", info)
	}
	for _, w := range []string{"/Lang (en)", "/DisplayDocTitle true", "/Outlines"} {
		if !strings.Contains(string(pdf), w) {
			t.Errorf("the document lacks %s", w)
		}
	}
}

func TestPDFSizes(t *testing.T) {
	for page, want := range map[report.Page]string{report.A4: "595.28 x 841.89 pts (A4)", report.Letter: "612 x 792 pts (letter)"} {
		if info := tool(t, record(t, full(), report.Options{Page: page}), "pdfinfo", "FILE"); !strings.Contains(info, want) {
			t.Errorf("%s: want a page of %s in %s", page, want, info)
		}
	}
}

var readingRow = regexp.MustCompile(`\d +rubber +\d`)

func TestTableTitlesComeAgainOnEveryPage(t *testing.T) {
	pages := pdfPages(t, record(t, long(6, 40), report.Options{}))
	seen := 0
	for i, page := range pages {
		if readingRow.MatchString(page) {
			seen++
			if !strings.Contains(page, "Corrected, °C") {
				t.Errorf("page %d has rows of the table of readings without its titles", i+1)
			}
		}
		if want := flat(page); !strings.Contains(want, "page "+itoa(i+1)+" of "+itoa(len(pages))) || !strings.Contains(want, "case CASE-0042") {
			t.Errorf("page %d lacks its number or the case", i+1)
		}
	}
	if seen < 7 {
		t.Errorf("240 readings stand on %d pages: the tables should have broken", seen)
	}
}

var headings = regexp.MustCompile(`^(Readings|Differences|What stands out|The case as a whole|Tests|Verdict|Repair|Lesson|Complaint|Trouble codes|Round \d+.*|[^–].*, before repair|Part +Quantity +Price|Difference +From.*|Point +Shown.*)$`)

func TestNoHeadingStandsAloneAtTheFootOfAPage(t *testing.T) {
	for readings := 1; readings < 40; readings += 3 {
		for i, page := range pdfPages(t, record(t, long(2, readings), report.Options{})) {
			lines := strings.Split(strings.TrimSpace(page), "\n")
			var said []string
			for _, l := range lines[:len(lines)-1] { // the last is the footer
				if l = strings.TrimSpace(l); l != "" {
					said = append(said, l)
				}
			}
			if last := said[len(said)-1]; headings.MatchString(last) {
				t.Errorf("with %d readings page %d ends with %q", readings, i+1, last)
			}
		}
	}
}

func TestNothingIsCutOff(t *testing.T) {
	for name, make := range builders() {
		for _, page := range []report.Page{report.A4, report.Letter} {
			for i, p := range boxes(t, record(t, make(), report.Options{Page: page})).Pages {
				for _, w := range p.Words {
					if w.XMin < 41.5 || w.XMax > p.Width-41.5 || w.YMin < 41 || w.YMax > p.Height-41.5 {
						t.Errorf("%s on %s, page %d: %q lies at %.0f to %.0f, %.0f to %.0f: outside the margins of 42", name, page, i+1, w.Text, w.XMin, w.XMax, w.YMin, w.YMax)
						break
					}
				}
			}
		}
	}
}

func TestHostileTexts(t *testing.T) {
	c := hostile()
	const note = 10000
	c.Complaint.Text = strings.Repeat("ж", note) + " tail-of-the-note"
	text := tool(t, record(t, c, report.Options{}), "pdftotext", "-raw", "FILE", "-")
	if n := strings.Count(text, "ж"); n != note {
		t.Errorf("%d of a note's %d letters are on the paper", n, note)
	}
	for _, w := range []string{
		"Überhitzt ▯▯ Перегрев ⚠", "▯▯▯", // no emoji, no Chinese: the gaps are seen
		"tail-of-the-note", "last-words", "part-end",
	} {
		if !strings.Contains(text, w) {
			t.Errorf("the record lacks %q", w)
		}
	}
	if !strings.Contains(text, "שלום") && !strings.Contains(text, "םולש") { // either way round
		t.Error("the record lacks the Hebrew word")
	}
}
