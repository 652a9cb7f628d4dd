// Package papers is the window that a case's papers are made in: which paper, in
// which language and size, under whose head, and how its pages look.
package papers

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/diagram/say"
	"loopbook/report"
)

// Choice is what a person chooses of a paper.
type Choice struct {
	Kind    report.Kind
	Lang    say.Lang
	Page    report.Page
	Answer  bool   // the trainer's sheet with its answer
	Named   bool   // the trainer's sheet with the customer's data
	Name    string // of the shop
	Address string
	HasLogo bool
}

// View is the window's content.
type View struct {
	OnChange func(Choice) // something is chosen or typed
	OnSave   func()       // where the paper is to lie
	OnOpen   func()       // the system's program, which prints too
	OnLogo   func()       // a picture for the shop's head, or none any more

	choice  Choice
	quiet   bool
	said    string
	kind    *kit.Radio
	lang    *kit.Select
	page    *kit.Select
	answer  *kit.Check
	named   *kit.Check
	name    *kit.Field
	address *kit.Field
	logo    *kit.Button
	says    *widget.Label
	blank   *widget.Label // says it where the pages will be, while none is there
	side    *fyne.Container
	pages   *fyne.Container
	scroll  *container.Scroll
	content fyne.CanvasObject
}

// sideWidth is of the choices beside the pages.
const sideWidth = 300

// New makes the content.
func New() *View {
	v := &View{OnChange: func(Choice) {}, OnSave: func() {}, OnOpen: func() {}, OnLogo: func() {}, says: widget.NewLabel(""), pages: container.NewVBox()}
	v.blank = widget.NewLabelWithStyle("", fyne.TextAlignCenter, fyne.TextStyle{})
	v.says.Wrapping, v.blank.Wrapping = fyne.TextWrapWord, fyne.TextWrapWord
	v.kind = kit.NewRadio(kindNames(), func(string) { v.change(func(c *Choice) { c.Kind = kinds()[at(kindNames(), v.kind.Selected)] }) })
	v.lang = kit.NewSelect(langNames(), func(string) { v.change(func(c *Choice) { c.Lang = say.Langs()[v.lang.SelectedIndex()] }) })
	v.page = kit.NewSelect([]string{string(report.A4), string(report.Letter)}, func(s string) { v.change(func(c *Choice) { c.Page = report.Page(s) }) })
	v.answer = kit.NewCheck(kit.L("window.papers.answer"), func(on bool) { v.change(func(c *Choice) { c.Answer = on }) })
	v.named = kit.NewCheck(kit.L("window.papers.named"), func(on bool) { v.change(func(c *Choice) { c.Named = on }) })
	v.name = kit.NewField(kit.L("window.papers.name-hint"), func(s string) { v.change(func(c *Choice) { c.Name = s }) })
	v.address = kit.NewArea(kit.L("window.papers.address-hint"), 3, func(s string) { v.change(func(c *Choice) { c.Address = s }) })
	v.logo = kit.NewButtonWithIcon("", theme.FileImageIcon(), func() { v.OnLogo() })
	open := kit.NewButtonWithIcon(kit.L("window.papers.open"), theme.DocumentPrintIcon(), func() { v.OnOpen() })
	open.Importance = widget.HighImportance
	save := kit.NewButtonWithIcon(kit.L("window.papers.save"), theme.DocumentSaveIcon(), func() { v.OnSave() })
	v.side = container.NewVBox(
		kit.Section(kit.L("window.papers.which"), v.kind, v.answer, v.named),
		kit.Section(kit.L("window.papers.how"), container.NewGridWithColumns(2, v.lang, v.page)),
		kit.Section(kit.L("window.papers.shop"), v.name, v.address, v.logo),
		open, save, v.says,
	)
	v.scroll = container.NewScroll(v.pages)
	v.content = container.NewBorder(nil, nil, kit.Wide(sideWidth, container.NewVScroll(container.NewPadded(v.side))), nil, container.NewStack(v.scroll, container.New(layout.NewCustomPaddedVBoxLayout(0), layout.NewSpacer(), v.blank, layout.NewSpacer())))
	return v
}

// Content is the window's.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Put shows a choice that was made elsewhere.
func (v *View) Put(c Choice) {
	v.quiet = true
	v.choice = c
	v.kind.SetSelected(kindNames()[at(kinds(), c.Kind)])
	v.lang.SetSelectedIndex(at(say.Langs(), c.Lang))
	v.page.SetSelected(string(c.Page))
	v.answer.SetChecked(c.Answer)
	v.named.SetChecked(c.Named)
	v.name.Put(c.Name)
	v.address.Put(c.Address)
	v.quiet = false
	v.fit()
}

// change takes one of a person's choices up.
func (v *View) change(take func(*Choice)) {
	if v.quiet {
		return
	}
	before := v.choice
	take(&v.choice)
	if v.choice != before {
		v.fit()
		v.OnChange(v.choice)
	}
}

// fit shows only what the chosen paper has a use for.
func (v *View) fit() {
	if v.choice.Kind == report.Trainer {
		v.answer.Show()
		v.named.Show()
	} else {
		v.answer.Hide()
		v.named.Hide()
	}
	v.side.Refresh() // what comes and goes moves what stands under it
	text := kit.L("window.papers.logo-add")
	if v.choice.HasLogo {
		text = kit.L("window.papers.logo-remove")
	}
	v.logo.SetText(text)
}

// Leave takes up what is typed and not yet left.
func (v *View) Leave() {
	v.name.Leave()
	v.address.Leave()
}

// Say tells how far the paper is, where it lies, or what went wrong.
func (v *View) Say(text string) {
	v.said = text
	v.place()
}

// place tells it once: among the choices, or where the pages will be. Neither is ever hidden: the toolkit forgets to
// paint a window whose words come into sight for the first time.
func (v *View) place() {
	aside, blank := v.said, ""
	if len(v.pages.Objects) == 0 {
		aside, blank = blank, aside
	}
	v.says.SetText(aside)
	v.blank.SetText(blank)
}

// pageWidth is the least that a page is shown at.
const pageWidth = 620

// ShowPages shows the paper's pages, as pictures, one under the other.
func (v *View) ShowPages(pages []image.Image) {
	v.pages.RemoveAll()
	for _, p := range pages {
		img := canvas.NewImageFromImage(p)
		img.FillMode, img.ScaleMode = canvas.ImageFillContain, canvas.ImageScaleSmooth
		b := p.Bounds()
		img.SetMinSize(fyne.NewSize(pageWidth, pageWidth*float32(b.Dy())/float32(max(1, b.Dx()))))
		v.pages.Add(container.NewPadded(img))
	}
	v.place()
	v.pages.Refresh()
	v.scroll.ScrollToTop()
}

func kinds() []report.Kind { return report.Kinds() }

func kindNames() []string {
	out := make([]string, len(kinds()))
	for i, k := range kinds() {
		out[i] = kit.L("window.papers.kind." + string(k))
	}
	return out
}

func langNames() []string {
	out := make([]string, len(say.Langs()))
	for i, l := range say.Langs() {
		out[i] = kit.L("window.papers.lang." + string(l))
	}
	return out
}

// at is a word's place in its list; what isn't in it is the first.
func at[T comparable](list []T, word T) int {
	for i, w := range list {
		if w == word {
			return i
		}
	}
	return 0
}
