package practice

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
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
	Bought bool
}

// Group is what belongs together, as a round's points.
type Group struct {
	Title string
	Items []Item
}

// Session is a case as the trainee knows it now.
type Session struct {
	Title     string
	Complaint []string // paragraphs
	Groups    []Group
	Drawing   drawing.Picture
	Spent     string
}

// session is the screen while somebody practises.
type session struct {
	view       *View
	title      *widget.Label
	spent      *widget.Label
	complaint  *widget.RichText
	evidence   *fyne.Container
	drawing    *kit.Picture
	cause      *kit.Choice[cases.Cause]
	named      cases.Cause
	confidence *widget.Slider
	sure       *widget.Label
	answer     *widget.Button
	content    fyne.CanvasObject
}

func newSession(v *View) *session {
	s := &session{view: v, title: kit.Heading(""), spent: kit.Heading(""), complaint: kit.Paragraphs(), evidence: container.NewVBox(), drawing: kit.NewDrawn(0.5), sure: kit.Caption("")}
	s.cause = kit.NewChoice(cases.Words[cases.Cause](), cases.Cause.Name, func(c cases.Cause) {
		s.named = c
		s.ready()
	})
	s.cause.PlaceHolder = kit.L("window.practice.which")
	s.confidence = widget.NewSlider(5, 99)
	s.confidence.OnChanged = func(v float64) { s.sure.SetText(kit.L("window.practice.sure", math.Round(v))) }
	s.answer = widget.NewButtonWithIcon(kit.L("window.practice.answer"), theme.ConfirmIcon(), func() {
		if v.OnAnswer != nil {
			v.OnAnswer(s.named, s.confidence.Value/100)
		}
	})
	s.answer.Importance = widget.HighImportance
	stop := widget.NewButton(kit.L("window.practice.stop"), func() { call(v.OnStop) })
	stop.Importance = widget.LowImportance
	left := container.NewBorder(container.New(kit.Tight{}, s.title, s.complaint), nil, nil, nil, container.NewVScroll(s.evidence))
	bar := container.NewVBox(
		container.NewBorder(nil, nil, s.spent, stop),
		container.New(kit.Shares{240, 240, 90, 130}, s.cause.Select, s.confidence, container.NewCenter(s.sure), s.answer),
	)
	s.content = container.New(kit.Shares{400, 640}, container.NewPadded(left), container.NewPadded(container.NewBorder(nil, bar, nil, nil, s.drawing)))
	return s
}

func call(do func()) {
	if do != nil {
		do()
	}
}

// begin forgets the last answer.
func (s *session) begin() {
	s.named = ""
	s.cause.Put("")
	s.confidence.SetValue(50)
	s.confidence.OnChanged(50)
	s.ready()
}

// ready lets an answer be given once a cause is named.
func (s *session) ready() {
	if s.named == "" {
		s.answer.Disable()
		return
	}
	s.answer.Enable()
}

func (s *session) show(d Session) {
	s.title.SetText(d.Title)
	spans := make([]kit.Span, len(d.Complaint))
	for i, p := range d.Complaint {
		spans[i] = kit.Span{Text: p, Small: i > 0}
	}
	kit.SetParagraphs(s.complaint, spans...)
	s.spent.SetText(d.Spent)
	s.drawing.Draw(d.Drawing)
	s.evidence.RemoveAll()
	for _, g := range d.Groups {
		s.evidence.Add(kit.Caption(g.Title))
		line := container.New(layout.NewRowWrapLayoutWithCustomPadding(2, 2))
		for _, i := range g.Items {
			if i.Bought && len([]rune(i.Says)) > longest {
				s.evidence.Add(line)
				s.evidence.Add(kit.Paragraphs(kit.Span{Text: i.Name, Bold: true, Small: true}, kit.Span{Text: i.Says, Small: true}))
				line = container.New(layout.NewRowWrapLayoutWithCustomPadding(2, 2))
				continue
			}
			line.Add(s.item(i))
		}
		s.evidence.Add(line)
	}
	s.evidence.Refresh()
}

// longest is how many letters stand beside a name; more stand under it.
const longest = 22

func (s *session) item(i Item) fyne.CanvasObject {
	if i.Bought {
		name, says := kit.Caption(i.Name), widget.NewLabel(i.Says)
		says.TextStyle.Bold = true
		says.SizeName = theme.SizeNameCaptionText
		return kit.On(kit.NewGround(drawing.FineGround, "", 5), container.NewHBox(name, says))
	}
	b := widget.NewButton(kit.L("window.practice.item", i.Name, i.Cost), func() {
		if s.view.OnBuy != nil {
			s.view.OnBuy(i.Number)
		}
	})
	return b
}
