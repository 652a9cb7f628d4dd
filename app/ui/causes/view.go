// Package causes is the screen that says what explains a case: the causes by
// their probability, what speaks for and against one, what it would show at the
// hoses, and which check is worth its minutes next.
package causes

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// Data is what the screen shows. All words are ready to be read.
type Data struct {
	Case    string  // its ID
	Causes  []Cause // the likeliest first; none: not judged yet
	Chosen  cases.Cause
	Verdict cases.Cause // that the case has; "": none
	For     []Reason
	Against []Reason

	Ghosts  drawing.Picture // what the chosen cause would show
	Compare string          // where that agrees with what was measured
	Rounds  []Round         // to choose from
	Round   int             // the one that is shown, by its Index

	Next   Next // what comes after the verdict
	Checks []Check
	Order  string  // in which they stand
	Beside *Beside // what the judged cause is no reason for; nil: nothing
	Basis  string  // what the causes were weighed from
	Blank  bool    // from nothing: the odds before this case
	// Standing says how far all this may be read as the last word.
	Standing string

	Flat      bool // all causes alike before the case
	Learn     bool // from the notebook's confirmed cases
	Confirmed int  // how many those are
}

// Cause is a line of the list.
type Cause struct {
	Cause       cases.Cause
	Probability float64
}

// Reason is one piece of evidence.
type Reason struct {
	Words  string
	Times  string  // its weight in words
	Weight float64 // the same from 0 to 1
}

// Round is one of the rounds that the causes are judged by.
type Round struct {
	Index int // in the case
	Name  string
}

// Check is a next step.
type Check struct {
	Check string        // its word
	Point diagram.Point // of a hose to read; "": none

	Title   string
	Minutes string
	Worth   string // how much of what is open it settles, or that it proves
	Text    string
	Needs   string // of the engine; "": anything
	Caution string
}

// Beside is what may be a second fault.
type Beside struct {
	Text  string
	Check *Check // tells what it is; nil: none is left
}

// View is the screen. Its callbacks must all be set before it is shown.
type View struct {
	OnCause func(cases.Cause)
	OnTake  func(cases.Cause) // as the case's verdict
	OnBegin func(check string, at diagram.Point)
	OnNext  func() // what comes after the verdict
	OnRound func(i int)
	OnFlat  func(bool)
	OnLearn func(bool)

	data    Data
	list    *list
	prior   *prior
	blank   fyne.CanvasObject
	name    *widget.Label
	chance  *widget.Label
	take    *kit.Button
	reasons *fyne.Container
	why     *container.Scroll // of the reasons
	rounds  *kit.Select
	ghosts  *kit.Picture
	compare *kit.Prose
	head    *fyne.Container // over the checks
	checks  *fyne.Container
	scroll  *container.Scroll // of the checks
	basis   *kit.Prose
	stands  *widget.Label
	quiet   bool
	content fyne.CanvasObject
}

// New makes the screen.
func New() *View {
	v := &View{name: kit.Heading(""), chance: kit.Heading(""), reasons: container.New(kit.Tight{}), head: container.NewVBox(), checks: container.NewVBox(), basis: kit.Aside(""), stands: kit.Small(""), compare: kit.Aside("")}
	v.list = newList(func(c cases.Cause) { v.OnCause(c) })
	v.prior = newPrior(func(on bool) { v.OnFlat(on) }, func(on bool) { v.OnLearn(on) })
	v.blank = kit.Card("note", kit.L("window.causes.blank"), kit.Span{Text: kit.L("window.causes.blank-odds")})
	v.rounds = kit.NewSelect(nil, func(string) {
		if i := v.rounds.SelectedIndex(); !v.quiet && i >= 0 {
			v.OnRound(v.data.Rounds[i].Index)
		}
	})
	v.take = kit.NewButtonWithIcon("", theme.ConfirmIcon(), func() { v.OnTake(v.data.Chosen) })
	v.name.Truncation = fyne.TextTruncateEllipsis
	v.ghosts = kit.NewDrawn(leastScale)
	left := container.NewBorder(container.NewVBox(container.New(kit.Tight{More: 4}, kit.Heading(kit.L("window.causes.heading")), v.stands), v.blank), container.NewVBox(v.prior.content, widget.NewSeparator(), v.basis), nil, nil, v.list.widget)
	v.scroll = container.NewVScroll(container.NewPadded(v.checks))
	right := container.NewBorder(v.head, nil, nil, nil, v.scroll)
	v.content = container.New(kit.Shares{240, 492, 262}, left, kit.On(kit.NewGround(drawing.Card, drawing.Rule, 6), v.middle()), right)
	return v
}

// leastScale keeps the ghosts' words, which are drawn large, at 12.4 points.
const leastScale = 0.62

func (v *View) middle() fyne.CanvasObject {
	top := container.NewBorder(nil, nil, nil, container.NewHBox(v.chance, v.take), v.name)
	w, h, shapes := drawing.GhostLegend(say.English())
	legend := kit.NewPicture(w, h, shapes...)
	under := container.NewVBox(widget.NewSeparator(), container.NewBorder(nil, nil, legend, nil, kit.Wide(128, v.rounds)))
	v.why = container.NewVScroll(v.reasons)
	return kit.Framed(top, nil, nil, nil,
		container.NewVScroll(container.New(halves{}, v.why, container.NewBorder(under, v.compare, nil, nil, v.ghosts))))
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Focus puts the focus on the list of causes.
func (v *View) Focus() fyne.Focusable { return v.list.widget }

// Show paints the data. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	if d.Case != v.data.Case {
		v.list.whole = false
		v.scroll.ScrollToTop()
	}
	if d.Case != v.data.Case || d.Chosen != v.data.Chosen || d.Round != v.data.Round || strongest(d) > strongest(v.data) {
		v.why.ScrollToTop()
	}
	v.data = d
	v.quiet = true
	defer func() { v.quiet = false }()
	v.list.show(d.Causes, d.Chosen)
	v.prior.show(d)
	kit.SetVisible(d.Blank, v.blank)
	v.name.SetText(kit.Capital(d.Chosen.Name()))
	v.chance.SetText(v.list.chance(d.Chosen))
	v.showTake()
	v.showReasons()
	v.showRounds()
	v.ghosts.Draw(d.Ghosts)
	kit.SetParagraphs(v.compare, kit.Soft(d.Compare))
	v.showHead()
	v.showChecks()
	kit.SetParagraphs(v.basis, kit.Soft(d.Basis))
	v.stands.SetText(d.Standing)
}

// strongest is the weight of the reason that tells most, on either side.
func strongest(d Data) float64 {
	most := 0.0
	for _, r := range append(slices.Clone(d.For), d.Against...) {
		most = max(most, r.Weight)
	}
	return most
}

// showTake offers the chosen cause as the verdict, unless it is.
func (v *View) showTake() {
	kit.SetVisible(v.data.Chosen != "", v.take)
	if v.data.Chosen == v.data.Verdict {
		v.take.SetText(kit.L("window.causes.is-verdict"))
		v.take.Disable()
		return
	}
	v.take.SetText(kit.L("window.causes.take"))
	v.take.Enable()
}

func (v *View) showRounds() {
	var names []string
	chosen := -1
	for i, r := range v.data.Rounds {
		names = append(names, r.Name)
		if r.Index == v.data.Round {
			chosen = i
		}
	}
	v.rounds.SetOptions(names)
	kit.SetVisible(len(names) > 1, v.rounds)
	if chosen >= 0 {
		v.rounds.SetSelectedIndex(chosen)
	}
}

// halves gives the drawing below what its width asks for, as far as the text
// above keeps room to be read.
type halves struct{}

// aboveLeast is the text's least height: two reasons or so.
const aboveLeast = 96

// MinSize is that of the drawing and a little text.
func (halves) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(max(a.Width, b.Width), aboveLeast+b.Height)
}

// Layout gives the drawing up to two thirds of the height.
func (halves) Layout(o []fyne.CanvasObject, room fyne.Size) {
	below := min(max(o[1].MinSize().Height, room.Height*2/3), room.Height-aboveLeast)
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(room.Width, room.Height-below-theme.Padding()))
	o[1].Move(fyne.NewPos(0, room.Height-below))
	o[1].Resize(fyne.NewSize(room.Width, below))
}
