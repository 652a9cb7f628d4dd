package notebook

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// saved is the menu of kept searches.
type saved struct {
	view   *View
	names  []string
	texts  map[string]string
	button *kit.Button
}

func newSaved(v *View) *saved {
	s := &saved{view: v}
	s.button = kit.NewButtonWithIcon("", theme.MenuIcon(), s.open)
	s.button.Importance = widget.LowImportance
	return s
}

// ShowSaved sets the kept searches, by their names in order.
func (v *View) ShowSaved(names []string, texts map[string]string) {
	v.saved.names, v.saved.texts = names, texts
}

// open shows the menu under its button.
func (s *saved) open() {
	c := fyne.CurrentApp().Driver().CanvasForObject(s.button)
	if c == nil {
		return
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.button)
	widget.ShowPopUpMenuAtPosition(s.menu(), c, at.AddXY(0, s.button.Size().Height))
}

func (s *saved) menu() *fyne.Menu {
	m := fyne.NewMenu("")
	for _, name := range s.names {
		m.Items = append(m.Items, fyne.NewMenuItem(name, func() { s.view.SetText(s.texts[name]) }))
	}
	if len(s.names) > 0 {
		m.Items = append(m.Items, fyne.NewMenuItemSeparator())
	}
	text := s.view.Text()
	keep := fyne.NewMenuItem(kit.L("window.notebook.keep"), func() {
		if s.view.OnSave != nil {
			s.view.OnSave(text, text)
		}
	})
	keep.Disabled = strings.TrimSpace(text) == ""
	m.Items = append(m.Items, keep)
	for name, kept := range s.texts {
		if kept == text {
			m.Items = append(m.Items, fyne.NewMenuItem(kit.L("window.notebook.forget", name), func() {
				if s.view.OnForget != nil {
					s.view.OnForget(name)
				}
			}))
		}
	}
	m.Items = append(m.Items, fyne.NewMenuItem(kit.L("window.notebook.clear"), func() { s.view.SetText("") }))
	return m
}
