// Package repair fills the screen of the repair, its bill among it.
package repair

import (
	"fyne.io/fyne/v2"

	view "loopbook/app/ui/repair"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/access"
)

// Screen shows the open case's repair.
type Screen struct {
	at   bench.Bench
	view *view.View
	kept remembered
}

// New shows no repair yet.
func New(at bench.Bench, kept fyne.Preferences) *Screen {
	s := &Screen{at: at, kept: remembered{kept}}
	s.view = view.New(s.edit, view.Money{
		Parse: readCurrency,
		Write: writePrice,
		Read:  readPrice,
	})
	s.view.Usual = s.kept.usual
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Leave keeps what is being typed.
func (s *Screen) Leave() { s.view.Leave() }

// Show paints the repair, with what is known of how such a part is got at.
func (s *Screen) Show() {
	d := s.at.Desk
	data := view.Data{Case: d.Case, Units: d.Units, Bill: billWords(d.Case.Repair)}
	advice, err := access.For(&d.Case)
	if err != nil {
		s.at.Ask.Tell(err)
		return
	}
	by := d.By()
	for _, n := range advice.Due() {
		data.Notes = append(data.Notes, view.Note{What: by.Say(n.What), Hours: by.Say(n.Hours), Way: by.Say(n.Way), Renew: by.Say(n.Renew), Class: by.Say(n.Class)})
	}
	for _, s := range advice.Steps {
		data.Steps = append(data.Steps, view.Step{ID: s.ID, Text: by.Say(s.Text), Done: s.Done})
	}
	data.Cautions = by.All(advice.Cautions)
	s.view.Show(data)
}

// edit keeps an edit, and for the next case what the shop asks for.
func (s *Screen) edit(what string, change func(*cases.Case)) {
	s.at.Desk.Edit(what, change)
	if r := s.at.Desk.Case.Repair; r.Currency != "" {
		s.kept.setUsual(r)
	}
}
