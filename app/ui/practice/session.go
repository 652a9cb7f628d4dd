package practice

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/drawing"
)

// Item is a piece of evidence: its name with its minutes, or with what it says once it
// is bought.
type Item struct {
	Number int // for OnBuy
	Name   string
	Cost   string
	Says   string // once bought
	Short  string // the same on the item's line; a sign where it is longer
	Bought bool
}

// Group is what belongs together, as a round's points.
type Group struct {
	Title string
	Items []Item
}

// Session is a case as the trainee knows it now.
type Session struct {
	Place     string // among a class's cases; "": none
	Title     string
	Complaint []string // paragraphs
	Groups    []Group
	Told      []Item // bought ones that say more than a line holds, the newest first
	Drawing   drawing.Picture
	Spent     string
	Causes    []cases.Cause // to choose the answer among
}

// tellingsHigh holds what one check says, under its name.
const tellingsHigh = 104

// session is the screen while somebody practises.
type session struct {
	place      *widget.Label
	title      *widget.Label
	spent      *widget.Label
	complaint  *kit.Prose
	items      *items
	buying     *container.Scroll // holds the items
	told       *kit.Prose
	tellings   *container.Scroll
	drawing    *kit.Picture
	cause      *kit.Choice[cases.Cause]
	named      cases.Cause
	confidence *kit.Slider
	sure       *widget.Label
	answer     *kit.Button
	judging    bool // the answer is given: nothing is bought or answered any more
	content    fyne.CanvasObject
}

func newSession(v *View) *session {
	s := &session{place: kit.Small(""), title: kit.Heading(""), spent: kit.Heading(""), complaint: kit.Paragraphs(), items: newItems(v), told: kit.Paragraphs(), drawing: kit.NewDrawn(0.5), sure: kit.Caption("")}
	s.cause = kit.NewChoice(cases.Words[cases.Cause](), cases.Cause.Name, func(c cases.Cause) {
		s.named = c
		s.ready()
	})
	s.cause.Sure()
	s.cause.PlaceHolder = kit.L("window.practice.which")
	s.confidence = kit.NewSlider(5, 99)
	s.confidence.OnChanged = func(v float64) { s.sure.SetText(kit.L("window.practice.sure", math.Round(v))) }
	s.answer = kit.NewButtonWithIcon(kit.L("window.practice.answer"), theme.ConfirmIcon(), func() {
		if v.OnAnswer != nil {
			v.OnAnswer(s.named, s.confidence.Value/100)
		}
	})
	s.answer.Importance = widget.HighImportance
	stop := kit.NewQuiet(kit.L("window.practice.stop"), nil, func() { call(v.OnGiveUp) })
	s.buying = container.NewVScroll(s.items.content)
	left := container.NewBorder(container.New(kit.Tight{}, s.place, s.title, s.complaint), nil, nil, nil, s.buying)
	s.tellings = container.NewVScroll(s.told)
	bar := container.NewVBox(
		kit.Roomy(fyne.NewSize(0, tellingsHigh), s.tellings), // there from the beginning, so that nothing moves
		container.NewBorder(nil, nil, s.spent, stop),
		container.New(kit.Shares{240, 240, 90, 130}, s.cause.Select, s.confidence, container.NewCenter(s.sure), s.answer),
	)
	s.content = container.New(kit.Shares{440, 600}, container.NewPadded(left), container.NewPadded(container.NewBorder(nil, bar, nil, nil, s.drawing)))
	return s
}

// begin forgets the last answer, and lets one of those causes be named.
func (s *session) begin(causes []cases.Cause) {
	s.named, s.judging = "", false
	s.items.forget()
	s.buying.ScrollToTop() // the last case was left where its checks stand
	s.cause.Offer(causes, cases.Cause.Name)
	s.cause.Put("")
	s.confidence.SetValue(50)
	s.confidence.OnChanged(50)
	s.ready()
}

// judge takes what can be bought and answered out of use while an answer is judged; giving up stays.
func (s *session) judge(on bool) {
	s.judging = on
	s.ready()
}

// ready lets an answer be given once a cause is named, and nothing be done once one was given.
func (s *session) ready() {
	s.items.enable(!s.judging)
	kit.SetEnabled(!s.judging, s.cause, s.confidence)
	kit.SetEnabled(!s.judging && s.named != "", s.answer)
}

func (s *session) show(d Session) {
	s.place.SetText(d.Place)
	s.place.Hidden = d.Place == ""
	s.title.SetText(d.Title)
	spans := make([]kit.Span, len(d.Complaint))
	for i, p := range d.Complaint {
		spans[i] = kit.Span{Text: p, Small: i > 0}
	}
	kit.SetParagraphs(s.complaint, spans...)
	s.spent.SetText(d.Spent)
	s.drawing.Draw(d.Drawing)
	s.items.show(d.Groups)
	s.ready() // they may be laid out anew
	s.tell(d.Told)
}

// tell says what was bought last and has no room where it was bought, the newest first.
func (s *session) tell(told []Item) {
	spans := make([]kit.Span, 0, 2*len(told))
	for _, i := range told {
		spans = append(spans, kit.Span{Text: i.Name, Bold: true, Small: true}, kit.Span{Text: i.Says, Small: true})
	}
	kit.SetParagraphs(s.told, spans...)
	s.tellings.ScrollToTop()
}
