package papers

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/report"
)

// begun are the papers of a new case.
func begun(t *testing.T) *Papers {
	t.Helper()
	m := benchtest.New(t)
	m.Desk.Begin()
	return New(m.Bench, m.App, library.NewSmaller(), func() {})
}

func TestPapersAreMadeAsChosen(t *testing.T) {
	b := begun(t)
	b.at.Desk.Typed(diagram.Housing, "60")
	b.at.Desk.Edit("customer", func(c *cases.Case) { c.Customer.Name = "Ada Peckwell" })
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(p.pdf, []byte("%PDF")) {
		t.Fatal("no paper is made when its window opens")
	}
	customers := p.pdf
	c := p.choice
	c.Kind, c.Lang, c.Name = report.Trainer, "es", "Nordhang Garage"
	p.view.OnChange(c)
	if bytes.Equal(p.pdf, customers) || !bytes.Contains(p.pdf, []byte("/Lang (es)")) {
		t.Error("another paper in another language is the same")
	}
	again, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	if got := again.choice; got.Kind != report.Trainer || got.Lang != "es" || got.Name != "Nordhang Garage" || got.Named {
		t.Errorf("the next papers begin with %+v", got)
	}
}

// The trainer's sheet goes by no title, which often tells what it was.
func TestEachPaperOfACaseIsProposedANameOfItsOwn(t *testing.T) {
	b := begun(t)
	b.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Hot: standing" })
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	tail := p.about.c.ID[21:] // of 26 letters
	for kind, want := range map[report.Kind]string{
		report.Customer: "Hot- standing (" + tail + ") - customer en.pdf",
		report.Record:   "Hot- standing (" + tail + ") - record en.pdf",
		report.Trainer:  "case (" + tail + ") - trainer en.pdf",
	} {
		c := p.choice
		c.Kind = kind
		if p.view.OnChange(c); p.fileName() != want {
			t.Errorf("the %s paper is called %q, want %q", kind, p.fileName(), want)
		}
	}
}

// Two cars come in with the same words: the second one's page was written over the first one's.
func TestCasesOfOneTitleShareNoPaper(t *testing.T) {
	b := begun(t)
	names := map[string]bool{}
	for range 2 {
		b.at.Desk.Begin()
		b.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
		for range 2 { // the same case has the same name again
			p, err := b.open()
			if err != nil {
				t.Fatal(err)
			}
			names[p.fileName()] = true
		}
	}
	if len(names) != 2 {
		t.Errorf("two cases have papers called %v", names)
	}
}

// What is opened to be printed has the name that Save proposes, after the paper's own case.
func TestAnOpenedPaperIsNamedAsASavedOne(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	b := begun(t)
	b.at.Desk.Edit("title", func(c *cases.Case) { c.Title = strings.Repeat("Hot while standing, ", 3) + "restless" }) // cut in the last word
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	c := p.choice
	c.Lang = "de"
	p.view.OnChange(c)
	b.at.Desk.Begin()
	p.open()
	files, err := os.ReadDir(filepath.Join(home, "Documents", "Loopbook"))
	if err != nil || len(files) != 1 {
		t.Fatalf("%v, %v, want one file", files, err)
	}
	if got := files[0].Name(); got != p.fileName() || !strings.HasSuffix(got, "standing ("+p.about.c.ID[21:]+") - customer de.pdf") {
		t.Errorf("opened as %q, saved as %q", got, p.fileName())
	}
}

func TestPagesAreSeen(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm isn't installed")
	}
	b := begun(t)
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	pages, said := pagesOf(b.at.Ctx, p.pdf)
	if len(pages) != 1 || said != "1 page." {
		t.Errorf("%d pages, %q", len(pages), said)
	}
	if b := pages[0].Bounds(); b.Dy() <= b.Dx() {
		t.Errorf("a page of A4 is %v", b)
	}
	if _, said := pagesOf(b.at.Ctx, []byte("no PDF")); !strings.Contains(said, "can't be shown") {
		t.Errorf("what isn't a PDF: %q", said)
	}
}

func TestALogoIsKeptForAllPapers(t *testing.T) {
	b := begun(t)
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	bare := p.pdf
	if err := p.takeLogo([]byte("no picture")); err == nil || b.kept.logo() != nil && len(b.kept.logo()) > 0 {
		t.Errorf("what is no picture is taken: %v", err)
	}
	var raw bytes.Buffer
	if err := png.Encode(&raw, image.NewRGBA(image.Rect(0, 0, 80, 40))); err != nil {
		t.Fatal(err)
	}
	if err := p.takeLogo(raw.Bytes()); err != nil || len(b.kept.logo()) == 0 || bytes.Equal(p.pdf, bare) {
		t.Errorf("a logo: %v, %d bytes kept", err, len(b.kept.logo()))
	}
	p.logo() // once more takes it off
	if len(b.kept.logo()) != 0 || p.choice.HasLogo {
		t.Error("the logo stays")
	}
}

// Escape closes the papers where nothing in them has the focus.
func TestEscapeClosesThePapers(t *testing.T) {
	b := begun(t)
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	closed := false
	p.window.SetOnClosed(func() { closed = true })
	if p.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape}); !closed {
		t.Error("the papers stay open")
	}
}

// What is asked of a paper that is still being made is done once it is: the button did nothing.
func TestAPaperIsOpenedOnceItIsMade(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	b := begun(t)
	var making func()
	b.at.Start = func(do func()) { making = do }
	p, err := b.open()
	if err != nil {
		t.Fatal(err)
	}
	p.view.OnOpen()
	for _, want := range []int{0, 1} {
		files, _ := os.ReadDir(filepath.Join(home, "Documents", "Loopbook"))
		if len(files) != want {
			t.Fatalf("%d papers were opened, want %d", len(files), want)
		}
		if want == 0 {
			making()
		}
	}
}

// What couldn't be written stands on the screen alone: a customer's page was made without it, and nothing there said so.
func TestNoPaperIsMadeWithoutTheLastEdits(t *testing.T) {
	b := begun(t)
	path := b.at.Desk.Store.Path()
	if err := os.Rename(path, path+".moved"); err != nil {
		t.Fatal(err)
	}
	b.at.Desk.Told = func(error) {}
	b.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
	if _, err := b.open(); !errors.Is(err, cases.ErrGone) {
		t.Errorf("a paper is made: %v", err)
	}
	if err := os.Rename(path+".moved", path); err != nil {
		t.Fatal(err)
	}
	if p, err := b.open(); err != nil || p.about.c.Title != "Runs hot" {
		t.Errorf("it is of %q, %v", p.about.c.Title, err)
	}
}

// What is typed and refused is on no paper: the customer's page went out without the price, and nothing beside it said so.
func TestAPaperTellsWhatItLacks(t *testing.T) {
	b := begun(t)
	home := t.TempDir()
	t.Setenv("HOME", home)
	said := func(lost ...string) string {
		b.Lost = func() []string { return lost }
		p, err := b.open()
		if err != nil {
			t.Fatal(err)
		}
		p.view.OnOpen()
		return kittest.Texts(p.window.Content())
	}
	if text := said("Price each: 1e2"); !strings.Contains(text, "Kept as") || !strings.Contains(text, "Price each: 1e2") {
		t.Errorf("the papers say\n%s", text)
	}
	if text := said(); strings.Contains(text, "could not be kept") {
		t.Errorf("where nothing was refused they say\n%s", text)
	}
}
