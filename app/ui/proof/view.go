// Package proof is the screen that shows whether a repair worked: the loop
// before under after, the differences, both warm-ups, and the verdict.
package proof

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

// Data is what the screen shows. All words are ready to be read.
type Data struct {
	Case     cases.Case
	Units    units.Set
	Severity string // of the verdict: "act", "look", "note", or "fine"
	Verdict  string
	Open     string // what the verdict doesn't count yet; "": nothing

	Pairs       []string // of rounds, to choose from
	Pair        int      // the one that is shown; -1: there is none
	Condition   string   // of the pair, as far as it wasn't noted
	Picture     drawing.Picture
	Rows        []Row       // of the pair
	Curves      chart.Chart // nil: there are none
	Unmatched   []string
	Unexplained []string
	Repeat      []string
	Checks      []Row
	Codes       string
	NoCodes     string // what is noted among the codes and has the form of none; "": nothing
	NoRepair    bool   // the loop was found sound
	NotFixed    bool
	Again       []Round // measured before the repair, to be walked again
	Owed        []Check // to be done
}

// Check is a workshop check.
type Check struct {
	Kind  cases.TestKind
	Name  string
	Again bool // it came out badly before the repair
}

// Round is one of the case's.
type Round struct {
	Index int
	Name  string
}

// Row is something before and after.
type Row struct {
	Name, Before, After, Expected string
	Out                           bool // after the repair it is out of its range
}

// View is the screen.
type View struct {
	OnPair  func(i int) // another pair is chosen
	OnAgain func(i int) // a round of the case is to be walked again
	OnCheck func(kind cases.TestKind)
	OnNext  func() // another repair is begun, since this one didn't help

	data    Data
	form    *kit.Form
	pick    *kit.Select
	quiet   bool
	picture *kit.Picture
	rows    *fyne.Container
	curves  *kit.Plot
	side    *fyne.Container
	legend  *fyne.Container
	top     fyne.CanvasObject // over the pair
	empty   *fyne.Container   // in the pair's place
	alone   *fyne.Container   // the verdict, while there is nothing else
	yet     fyne.CanvasObject // says what is to be measured first
	again   *fyne.Container
	next    *kit.Button // what is to be measured again first; nil: nothing
	codes   fyne.CanvasObject
	content fyne.CanvasObject
}

// leastScale keeps the ghosts' words, which are drawn large, at 13 points.
const leastScale = 0.65

// New makes the screen; edit changes the case, save writes a chart.
func New(edit func(string, func(*cases.Case)), save kit.Saver) *View {
	v := &View{
		OnPair: func(int) {}, OnAgain: func(int) {}, OnCheck: func(cases.TestKind) {}, OnNext: func() {}, form: kit.NewForm(edit), picture: kit.NewDrawn(leastScale), rows: container.NewVBox(), legend: container.NewStack(),
		curves: kit.NewPlot(kit.L("window.proof.curves"), save), side: container.NewVBox(), again: container.NewVBox(),
	}
	v.yet = nothingYet()
	v.alone = container.NewStack()
	v.empty = container.NewCenter(container.NewVBox(v.alone, v.yet, v.again))
	v.pick = kit.NewSelect(nil, func(string) {
		if i := v.pick.SelectedIndex(); !v.quiet && i >= 0 {
			v.OnPair(i)
		}
	})
	v.codes = v.codesField()
	v.form.Chain(v.form.First) // Enter stays: it is the only field
	v.top = container.NewPadded(container.NewBorder(nil, nil, nil, v.legend, container.New(atMost(pickMost), v.pick)))
	below := container.New(kit.Shares{384, 290}, container.NewVScroll(v.rows), v.curves.Content)
	left := container.NewBorder(v.top, nil, nil, nil, container.NewVScroll(container.New(shared{}, container.NewStack(v.picture, v.empty), below)))
	v.content = kit.Framed(nil, nil, nil, kit.Wide(sideWidth, container.NewVScroll(container.NewPadded(v.side))), left)
	return v
}

// First is what is to be done next for the proof, or else where the codes are noted.
func (v *View) First() fyne.Focusable {
	switch {
	case v.next != nil:
		return v.next
	case !v.data.wantsCodes():
		return nil
	}
	return v.form.First()
}

func nothingYet() fyne.CanvasObject {
	return kit.Wide(emptyWidth, kit.Paragraphs(
		kit.Span{Text: kit.L("window.proof.none"), Bold: true}, kit.Span{Text: kit.L("window.proof.none-text")}))
}

// showAgain offers to walk each round of before the repair again that wasn't yet, and to do each check that is owed, in
// buttons of a width.
func (v *View) showAgain(at *fyne.Container, width float32) {
	v.next = nil
	offer := func(says, name string, begin func()) {
		b := kit.NewButtonWithIcon(kit.L(says, name), theme.ContentAddIcon(), begin)
		if v.next == nil { // before it is measured: that paints it for the first time
			b.Importance = widget.HighImportance
			v.next = b
		}
		if over := b.MinSize().Width - width; over > 0 {
			b.SetText(kit.L(says, kit.Cut(name, kit.BoldWidth(name)-over)))
		}
		at.Add(b)
	}
	for _, r := range v.data.Again {
		offer("window.proof.again", r.Name, func() { v.OnAgain(r.Index) })
	}
	for _, c := range v.data.Owed {
		says := "window.proof.check-now"
		if c.Again {
			says = "window.proof.check-again"
		}
		offer(says, c.Name, func() { v.OnCheck(c.Kind) })
	}
}

// The widths of the side, and of what stands in the middle where there is nothing to show.
const (
	sideWidth  = 300
	emptyWidth = 420
)

// pickMost is as wide as the names of two rounds may be.
const pickMost = 560

// atMost gives what lies in it the room, up to a width.
type atMost float32

// MinSize is the object's.
func (atMost) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// Layout leaves what is beyond the width free.
func (m atMost) Layout(o []fyne.CanvasObject, room fyne.Size) {
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(min(room.Width, float32(m)), room.Height))
}

// codesField takes the codes that were read after the repair.
func (v *View) codesField() fyne.CanvasObject {
	return v.form.Quantity(
		func(units.Set) string { return kit.L("window.proof.codes-after") },
		func(c *cases.Case, _ units.Set) string { return strings.Join(c.Repair.CodesAfter, ", ") },
		func(c *cases.Case, text string, _ units.Set) error {
			c.Repair.CodesAfter = strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' || r == ' ' })
			return nil
		})
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Leave keeps what is being typed.
func (v *View) Leave() { v.form.Leave() }

// Show paints a case's proof. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	before := v.next
	v.data = d
	v.form.Show(d.Case, d.Units)
	v.quiet = true
	v.pick.SetOptions(d.Pairs)
	if d.Pair >= 0 {
		v.pick.SetSelectedIndex(d.Pair)
	}
	v.quiet = false
	kit.SetVisible(d.Pair >= 0, v.top, v.picture)
	kit.SetVisible(d.Pair < 0, v.empty)
	kit.SetVisible(!d.NoRepair, v.yet)
	v.again.RemoveAll()
	v.showAgain(v.again, emptyWidth)
	v.picture.Draw(d.Picture)
	v.curves.Draw(d.Curves)
	v.showLegend()
	v.showRows()
	v.showSide()
	if before != nil && v.next != nil { // it is made anew when the proof is judged
		kit.Hand(before, v.next)
	}
}

// showLegend explains the picture, whose numbers stand without their unit.
func (v *View) showLegend() {
	w, h, shapes := drawing.PairLegend(say.English(), string(v.data.Units.Temperature))
	v.legend.Objects = []fyne.CanvasObject{kit.NewPicture(w, h, shapes...)}
	v.legend.Refresh()
}

func (v *View) showRows() {
	v.rows.RemoveAll()
	if len(v.data.Rows) > 0 {
		v.rows.Add(table(kit.L("window.proof.differences"), kit.L("window.proof.expected"), v.data.Rows))
	}
}

// table is rows under their heads, close to each other.
func table(name, last string, rows []Row) fyne.CanvasObject {
	out := container.New(kit.Tight{More: 4})
	head := func(text string, align fyne.TextAlign) fyne.CanvasObject {
		l := kit.Small(text)
		l.Alignment = align
		return l
	}
	out.Add(container.New(columns(), head(name, fyne.TextAlignLeading), head(kit.L("window.proof.before"), fyne.TextAlignTrailing),
		head(kit.L("window.proof.after"), fyne.TextAlignTrailing), head(last, fyne.TextAlignLeading)))
	for _, r := range rows {
		out.Add(rowOf(r))
	}
	return out
}

func columns() kit.Shares { return kit.Shares{130, 64, 64, 110} }

func rowOf(r Row) fyne.CanvasObject {
	cell := func(text string, align fyne.TextAlign, bold bool) *widget.Label {
		l := widget.NewLabelWithStyle(text, align, fyne.TextStyle{Bold: bold})
		l.SizeName, l.Truncation = theme.SizeNameCaptionText, fyne.TextTruncateEllipsis
		return l
	}
	after := cell(r.After, fyne.TextAlignTrailing, true)
	after.Truncation = fyne.TextTruncateOff
	expected := cell(r.Expected, fyne.TextAlignLeading, false)
	if r.Out {
		after.Importance = widget.DangerImportance
		expected.Importance = widget.DangerImportance
	}
	return container.New(columns(), cell(r.Name, fyne.TextAlignLeading, false), cell(r.Before, fyne.TextAlignTrailing, false), after, expected)
}

// showSide paints the verdict and all that is said in words.
func (v *View) showSide() {
	d := v.data
	v.side.RemoveAll()
	var more []kit.Span
	if d.Open != "" {
		more = append(more, kit.Span{Text: d.Open, Small: true})
	}
	head, rest, _ := strings.Cut(d.Verdict, ": ")
	verdict := kit.Card(d.Severity, head, append([]kit.Span{{Text: kit.Capital(rest)}}, more...)...)
	v.alone.RemoveAll()
	if d.Pair < 0 {
		v.alone.Add(kit.Wide(emptyWidth, verdict))
	} else {
		v.side.Add(verdict)
	}
	if d.Condition != "" {
		v.side.Add(kit.Aside(d.Condition))
	}
	v.list("window.proof.unexplained", d.Unexplained)
	v.list("window.proof.repeat", d.Repeat)
	if d.Pair >= 0 {
		v.showAgain(v.side, sideWidth-2*theme.Padding())
	}
	if d.NotFixed {
		v.side.Add(container.New(kit.Tight{More: 2}, kit.Heading(kit.L("window.proof.next")), kit.Paragraphs(kit.Span{Text: kit.L("window.proof.next-text"), Small: true})))
		begin := kit.NewButton(kit.L("window.proof.next-begin"), func() { v.OnNext() })
		if v.side.Add(begin); v.next == nil { // or the focus would lie at the codes, and the verdict out of sight above them
			v.next = begin
		}
	}
	v.list("window.proof.unmatched", d.Unmatched)
	if len(d.Checks) > 0 {
		v.side.Add(kit.Heading(kit.L("window.proof.checks")))
		v.side.Add(checkRows(d.Checks))
	}
	if d.wantsCodes() {
		v.showCodes()
	}
	v.side.Add(layout.NewSpacer())
}

// wantsCodes reports whether the codes after the repair are told and asked for: a sound loop has no after.
func (d Data) wantsCodes() bool { return !d.NoRepair || len(d.Case.Repair.CodesAfter) > 0 }

func (v *View) showCodes() {
	d := v.data
	v.side.Add(kit.Heading(kit.L("window.proof.codes")))
	v.side.Add(kit.Paragraphs(kit.Span{Text: d.Codes, Small: true}))
	v.side.Add(v.codes)
	if d.NoCodes != "" {
		v.side.Add(kit.Warning(d.NoCodes))
	}
}

func (v *View) list(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	spans := make([]kit.Span, len(lines))
	for i, l := range lines {
		spans[i] = kit.Span{Text: l, Small: true}
	}
	v.side.Add(container.New(kit.Tight{More: 2}, kit.Heading(kit.L(title)), kit.Paragraphs(spans...)))
}

// checkRows tell each check's outcome before and after, under its name.
func checkRows(rows []Row) fyne.CanvasObject {
	spans := make([]kit.Span, 0, 2*len(rows))
	for _, r := range rows {
		came := r.Before
		if r.After != "" {
			came = kit.L("window.proof.check", r.Before, r.After)
		}
		spans = append(spans, kit.Span{Text: r.Name, Bold: true, Small: true}, kit.Span{Text: came, Small: true})
	}
	return kit.Paragraphs(spans...)
}

// shared gives the drawing above what its width asks for, as far as what is
// below keeps room to be read.
type shared struct{}

// belowLeast is room for a chart with its axes, and for some rows.
const belowLeast = 200

// MinSize is that of both.
func (shared) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(max(a.Width, b.Width), a.Height+b.Height)
}

// Layout gives the drawing three fifths of the height.
func (shared) Layout(o []fyne.CanvasObject, room fyne.Size) {
	above := min(max(o[0].MinSize().Height, room.Height*3/5), room.Height-belowLeast)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(room.Width, above))
	o[1].Move(fyne.NewPos(0, above+theme.Padding()))
	o[1].Resize(fyne.NewSize(room.Width, room.Height-above-theme.Padding()))
}
