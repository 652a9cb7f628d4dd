// Package hosemap is the screen where temperatures are typed at the hoses:
// the rounds, the conditions of the round, the drawing, and what it means.
package hosemap

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Data is what the screen shows.
type Data struct {
	Case    cases.Case
	Round   int // which round; -1 where there is none
	Picture drawing.Picture
	Texts   map[diagram.Point]kit.Typed
	Flags   []evidence.Flag
	Out     bool // a number of the round is out of its range
	Boiling string
	ToDo    ToDo         // before anything is measured in the round
	Slipped map[int]bool // rounds with a number at a hose that could not be kept, beside what is put aside here
	Units   units.Set
}

// ToDo is how a round is walked that a check asked for; the zero one says nothing.
type ToDo struct{ Title, Text, Caution string }

func (d Data) round() *cases.Round {
	if d.Round < 0 || d.Round >= len(d.Case.Rounds) {
		return nil
	}
	return &d.Case.Rounds[d.Round]
}

// View is the screen. Its callbacks must all be set before it is shown.
type View struct {
	// Edit changes the case; what is a word for the history.
	Edit func(what string, change func(*cases.Case))
	// OnReading is called with what was typed at a point.
	OnReading func(p diagram.Point, text string)
	// OnRound is called with the round to show.
	OnRound func(i int)
	// OnLayout is called where no layout is chosen yet.
	OnLayout func(id string)
	// OnCauses is called to see all causes.
	OnCauses func()
	// Walk is a round of that name, begun.
	Walk func(label string) cases.Round

	data       Data
	point      diagram.Point
	loop       *kit.LoopView
	rounds     *fyne.Container
	roundTools *fyne.Container
	scroller   *container.Scroll
	sheet      *container.Scroll // holds the drawing, on a screen too low for it
	conditions *conditions
	place      *place
	meaning    *fyne.Container
	news       *container.Scroll // of it
	likely     *fyne.Container
	why        *kit.Button
	share      *underneath
	side       *fyne.Container // both
	aside      cases.ByRound[[]Aside]
	grave      int // how grave the findings are that are told
	choose     *fyne.Container
	left       *fyne.Container // all but the side
	content    fyne.CanvasObject
}

// New makes the screen.
func New() *View {
	v := &View{loop: kit.NewLoopView(), rounds: container.New(strip{}), roundTools: container.NewHBox(), meaning: container.NewVBox(), likely: container.NewVBox(), choose: container.NewVBox()}
	v.conditions = newConditions(v.editRound)
	v.place = newPlace(v)
	v.loop.OnLeft = func(p diagram.Point, text string) { v.OnReading(p, text) }
	v.loop.OnFocus = v.focused
	v.chain()
	v.scroller = container.NewHScroll(v.rounds)
	v.sheet = container.NewVScroll(container.NewStack(v.loop, v.choose))
	v.left = kit.Framed(
		container.NewVBox(container.New(layout.NewCustomPaddedLayout(theme.Padding(), 0, 0, 0), container.NewBorder(nil, nil, nil, v.roundTools, v.scroller)), kit.Explained(container.NewVBox(v.conditions.content, v.place.content))),
		nil, nil, nil,
		v.sheet,
	)
	v.why = kit.NewButtonWithIcon(kit.L("window.hosemap.why"), theme.NavigateNextIcon(), func() { v.OnCauses() })
	v.why.Importance, v.why.Alignment = widget.LowImportance, widget.ButtonAlignLeading
	v.news = container.NewVScroll(container.NewPadded(v.meaning))
	// What is likely stays in sight: where it scrolled with what it means, Enter in the last hose went on to
	// its button and carried away the findings that the number had just made.
	v.share = &underneath{likely: v.likely}
	v.side = container.New(v.share, v.news, container.NewPadded(v.likely))
	right := kit.Wide(272, kit.On(kit.NewGround(drawing.Card, "", 0), v.side))
	v.content = kit.Framed(nil, nil, nil, right, v.left)
	return v
}

// chain lets Enter go from number to number, past what is chosen between them,
// which would swallow what is typed, and on to the hoses.
func (v *View) chain() {
	hose := func() fyne.Focusable { return v.loop.Field("") }
	numbers := v.conditions.fields
	v.conditions.label.After = func() fyne.Focusable { return numbers[0].Field }
	for i, n := range numbers {
		n.After = hose
		if i+1 < len(numbers) {
			n.After = func() fyne.Focusable { return numbers[i+1].Field }
		}
	}
	v.place.number.After = func() fyne.Focusable { return v.loop.Field(v.point) }
	v.place.gun.After = func() fyne.Focusable { return v.place.reflected }
	v.place.reflected.After = hose
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Leave keeps what is being typed.
func (v *View) Leave() {
	v.loop.Leave()
	v.conditions.leave()
	v.place.leave()
}

// Show paints the data. Call it on the Fyne goroutine.
func (v *View) Show(d Data) {
	if v.turn(d) {
		v.grave = 0
		v.news.ScrollToTop()
		v.point = v.loop.Caret() // none, unless one is being typed at
	}
	v.data = d
	v.showRounds()
	v.showChoice()
	v.conditions.show(d)
	v.place.show(v.point, d.round(), d.Units)
	v.left.Layout.Layout(v.left.Objects, v.left.Size()) // a case without rounds has no conditions
	v.loop.Draw(d.Picture, d.Texts)
	v.showMeaning()
	v.takeUp()
}

func (v *View) focused(p diagram.Point) {
	v.point = p
	v.place.show(p, v.data.round(), v.data.Units)
}

// showChoice asks for the layout while none is known.
func (v *View) showChoice() {
	v.choose.RemoveAll()
	if v.data.Case.Loop.Layout != "" {
		v.choose.Hide()
		return
	}
	v.choose.Show()
	v.choose.Add(kit.Heading(kit.L("window.hosemap.which-loop")))
	loops, err := diagram.Loops()
	if err != nil {
		return
	}
	for _, l := range loops {
		id := l.ID
		b := kit.NewButton(say.LoopName(l).String(), func() { v.OnLayout(id) })
		b.Alignment = widget.ButtonAlignLeading
		v.choose.Add(container.NewVBox(b, kit.Aside(say.English().With(v.data.Units).Say(say.LoopAbout(l)))))
	}
}

func (v *View) editRound(what string, change func(*cases.Round)) {
	i := v.data.Round
	if v.data.round() == nil {
		return
	}
	v.Edit(what, func(c *cases.Case) { change(&c.Rounds[i]) })
}

// showMeaning lists the flags, the gravest first, each with its reasons.
func (v *View) showMeaning() {
	v.meaning.RemoveAll()
	if do := v.data.ToDo; do.Title != "" {
		v.meaning.Add(kit.Card("note", do.Title, kit.Span{Text: do.Text}))
		v.meaning.Add(kit.Signed("act", kit.Paragraphs(kit.Span{Text: do.Caution, Small: true, Color: theme.ColorNameError})))
	}
	v.meaning.Add(kit.Heading(kit.L("window.hosemap.means")))
	flags, grave := 0, 0
	for _, f := range v.data.Flags {
		if (f.Round != v.data.Round && f.Round >= 0) || v.ofOtherStage(f) {
			continue
		}
		if !f.Caution() {
			flags++
		}
		grave = graver(grave, f.Severity)
		v.meaning.Add(kit.FlagCard(f, v.data.Units))
	}
	switch r := v.data.round(); {
	case flags > 0:
	case r == nil || len(r.Readings) == 0:
		v.meaning.Add(kit.Card("note", kit.SeverityWord(evidence.Note), kit.Span{Text: kit.L("window.hosemap.nothing")}))
	case v.data.Out:
		v.meaning.Add(kit.Card("look", kit.SeverityWord(evidence.Look), kit.Span{Text: kit.L("window.hosemap.odd")}))
	default:
		v.meaning.Add(kit.Card("fine", kit.L("window.hosemap.fine"), kit.Span{Text: kit.L("window.hosemap.fine-text")}))
	}
	v.share.last = v.meaning.Objects[len(v.meaning.Objects)-1]
	if v.data.Boiling != "" {
		v.meaning.Add(kit.Paragraphs(kit.Span{Text: v.data.Boiling, Small: true}))
	}
	v.meaning.Add(kit.Paragraphs(kit.Span{
		Text:  kit.L("window.hosemap.general") + " " + kit.L("check.maker-first"),
		Small: true, Color: theme.ColorNamePlaceHolder,
	}))
	if grave > v.grave {
		v.news.ScrollToTop() // the gravest stands first
	}
	v.grave = grave
	v.side.Refresh() // it may be shorter than what was scrolled to, and leave more to the causes
}

// graver is how grave findings are with one more of a severity: each to act on counts.
func graver(so int, s evidence.Severity) int {
	switch s {
	case evidence.Act:
		return so + 2
	case evidence.Look:
		return max(so, 1)
	}
	return so
}

// ShowLikely tells a stage's likeliest causes in short, or nothing; standing says how far they
// are the last word.
func (v *View) ShowLikely(stage cases.Stage, causes []kit.Likely, standing string) {
	v.likely.RemoveAll()
	if len(causes) == 0 {
		v.side.Refresh()
		return
	}
	// The standing has its line whatever it says, so that nothing moves as it changes.
	v.likely.Add(container.New(kit.Tight{More: 4}, kit.Heading(kit.L("window.hosemap.likely", stage.Text())), kit.Small(standing)))
	for _, c := range causes {
		line := kit.NewLikelyLine()
		line.Put(c)
		v.likely.Add(line)
	}
	v.likely.Add(v.why)
	v.side.Refresh() // it takes its room from what it means
}

// ofOtherStage reports whether the flag is of a test on the other side of the
// repair than the round that is shown.
func (v *View) ofOtherStage(f evidence.Flag) bool {
	r := v.data.round()
	return r != nil && r.Stage != "" && f.Stage != "" && f.Stage != r.Stage
}
