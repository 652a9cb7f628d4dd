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
	s.button = kit.NewQuiet("", theme.MenuIcon(), s.open)
	return s
}

// ShowSaved sets the kept searches, by their names in order.
func (v *View) ShowSaved(names []string, texts map[string]string) {
	v.saved.names, v.saved.texts = names, texts
	v.showCount()
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
	kept := s.named(text)
	keep := fyne.NewMenuItem(kit.L("window.notebook.keep"), func() { give(s.view.OnSave, text) })
	keep.Disabled = strings.TrimSpace(text) == "" || kept != ""
	m.Items = append(m.Items, keep)
	if kept != "" {
		m.Items = append(m.Items,
			fyne.NewMenuItem(kit.L("window.notebook.rename", kept), func() { give(s.view.OnRename, kept) }),
			fyne.NewMenuItem(kit.L("window.notebook.forget", kept), func() { give(s.view.OnForget, kept) }))
	}
	m.Items = append(m.Items, fyne.NewMenuItem(kit.L("window.notebook.clear"), func() { s.view.SetText("") }))
	return m
}

// named is the first kept search that asks for the text, or nothing.
func (s *saved) named(text string) string {
	for _, name := range s.names {
		if s.texts[name] == text {
			return name
		}
	}
	return ""
}

func give(to func(string), word string) {
	if to != nil {
		to(word)
	}
}
