// Package verdict is the screen for the end of a case: the cause, what
// confirmed it, what was done, and what is to be learned from it.
package verdict

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// View is the screen.
type View struct {
	// OnPaper is called to make the record as a PDF.
	OnPaper func()

	id      string // of the case that is shown
	edit    func(what string, change func(*cases.Case))
	form    *kit.Form
	parts   *fyne.Container
	rows    []*partRow
	paper   *widget.RichText
	content fyne.CanvasObject
}

// New makes the screen; edit changes the case.
func New(edit func(what string, change func(*cases.Case))) *View {
	f := kit.NewForm(edit)
	v := &View{edit: edit, form: f, parts: container.NewVBox(), paper: kit.Paragraphs()}
	left := container.NewVBox(
		kit.Section("Verdict",
			kit.Pick(f, "Cause", cases.Words[cases.Cause](), cases.Cause.Name, func(c *cases.Case) *cases.Cause { return &c.Verdict.Cause }),
			kit.Pick(f, "Confirmed by", confirmations(), confirmation, func(c *cases.Case) *string { return &c.Verdict.ConfirmedBy }),
			f.Area("Note", "what confirmed it, what was ruled out", 3, func(c *cases.Case) *string { return &c.Verdict.Note }),
		),
		kit.Section("For the next one like it",
			f.Area("Lesson", "what the next technician should know", 3, func(c *cases.Case) *string { return &c.Lesson }),
		),
	)
	add := widget.NewButtonWithIcon("Add a part", theme.ContentAddIcon(), func() {
		edit("part added", func(c *cases.Case) { c.Repair.Parts = append(c.Repair.Parts, cases.Part{Name: "part"}) })
	})
	add.Importance = widget.LowImportance
	print := widget.NewButtonWithIcon("Print the record (PDF)", theme.DocumentPrintIcon(), func() { v.OnPaper() })
	print.Importance = widget.HighImportance
	right := container.NewVBox(
		kit.Section("Repair",
			v.parts, container.NewHBox(add),
			kit.Number(f, "Labour, hours", 0, 1e5, func(c *cases.Case) **float64 { return &c.Repair.LabourHours }),
			f.Area("In the way, and renewed with it", "what had to come off; seals, clamps, coolant", 3, func(c *cases.Case) *string { return &c.Repair.AccessNote }),
		),
		kit.Section("Paper", container.NewHBox(print), v.paper,
			kit.Card("act", "Before the car goes out",
				kit.Span{Text: "Engine below 50 °C before the cap is opened. Level checked cold after a heat cycle. Coolant wiped up: it is toxic to people and pets.", Small: true})),
	)
	v.content = container.NewVScroll(container.NewPadded(container.New(kit.Shares{500, 500}, left, container.NewPadded(right))))
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints a case.
func (v *View) Show(c cases.Case, u units.Set) {
	v.form.Show(c, u)
	if v.id != c.ID {
		v.id = c.ID
		v.ShowPaper("") // it was another case's
	}
	if len(v.rows) != len(c.Repair.Parts) { // else the caret stays where it is
		v.parts.RemoveAll()
		v.rows = v.rows[:0]
		for i := range c.Repair.Parts {
			row := newPartRow(v.edit, i)
			v.rows = append(v.rows, row)
			v.parts.Add(row.content)
		}
	}
	for i, row := range v.rows {
		row.show(c.Repair.Parts[i])
	}
}

// ShowPaper says where the paper is, or what went wrong.
func (v *View) ShowPaper(text string) {
	kit.SetParagraphs(v.paper, kit.Span{Text: text, Small: true})
}

// Leave keeps what is being typed.
func (v *View) Leave() {
	v.form.Leave()
	for _, row := range v.rows {
		row.leave()
	}
}

// confirmations are the workshop checks, and the hose map itself.
func confirmations() []string {
	out := []string{"hose-map"}
	for _, k := range cases.Words[cases.TestKind]() {
		out = append(out, string(k))
	}
	return out
}

func confirmation(word string) string {
	if word == "hose-map" {
		return "hose map"
	}
	return cases.TestKind(word).Name()
}
