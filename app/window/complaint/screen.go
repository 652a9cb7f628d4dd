// Package complaint fills the screen where the customer, the vehicle, the loop and the trouble codes are told.
package complaint

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	view "loopbook/app/ui/complaint"
	"loopbook/app/window/words"
	"loopbook/cases/evidence"
)

// Screen shows the open case's complaint.
type Screen struct {
	desk *desk.Desk
	view *view.View
}

// New shows no complaint yet.
func New(d *desk.Desk) *Screen {
	said := view.Words{Code: d.Mind.Analyst.CodeMeaning, IsCode: evidence.IsCode, Coolant: words.Coolant, VIN: words.VIN}
	return &Screen{desk: d, view: view.New(d.Edit, said)}
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Show paints the complaint.
func (s *Screen) Show() { s.view.Show(s.desk.Case, s.desk.Units) }

// Leave keeps what is being typed.
func (s *Screen) Leave() { s.view.Leave() }

// First is where a new case begins to be told.
func (s *Screen) First() fyne.Focusable { return s.view.First() }

// NewCode is where a trouble code is written.
func (s *Screen) NewCode() fyne.Focusable { return s.view.NewCode() }
