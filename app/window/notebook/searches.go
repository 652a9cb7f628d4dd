package notebook

import (
	"strings"

	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
)

// keepSearch asks for a name and keeps the search under it.
func (l *List) keepSearch(text string) {
	l.askName(kit.L("window.notebook.keep-title"), kit.L("window.notebook.keep-do"), text, func(name string) { l.putSearch(name, text, "") })
}

// renameSearch asks for another name of a kept search.
func (l *List) renameSearch(old string) {
	l.askName(kit.L("window.notebook.rename-title", old), kit.L("window.notebook.rename-do"), old, func(name string) {
		if name != old {
			l.putSearch(name, l.kept[old], old)
		}
	})
}

// askName offers a name to be written over; Enter in it is an answer too. Nothing is kept under no name.
func (l *List) askName(title, does, name string, take func(name string)) {
	f := kit.NewField("", nil)
	f.Put(name)
	do := func() {
		if name := strings.TrimSpace(f.Text); name != "" {
			take(name)
		}
	}
	d := l.at.Ask.Offer(title, does, kit.L("window.notebook.leave"), kit.Wide(420, container.NewVBox(asking.Words(kit.L("window.notebook.keep-name")), f)), do)
	f.OnSubmitted = func(string) {
		d.Hide()
		do()
	}
	l.at.Ask.ShowAt(d, f)
}

// putSearch keeps a search; one of that name that asks for something else is replaced only once that is agreed to.
// The name that it had before goes.
func (l *List) putSearch(name, text, before string) {
	put := func() {
		l.saveSearch(name, text)
		if before != "" {
			l.saveSearch(before, "")
		}
	}
	if other, taken := l.kept[name]; taken && other != text {
		does := kit.L("window.notebook.replace")
		l.at.Ask.Show(l.at.Ask.Offer(does, does, kit.L("window.notebook.leave"), asking.Words(kit.L("window.notebook.taken", name, other)), put))
		return
	}
	put()
}

// saveSearch writes a search under its name; an empty one takes the name out.
func (l *List) saveSearch(name, text string) {
	if err := l.at.Desk.Store.SaveSearch(l.at.Ctx, name, text); err != nil {
		l.at.Ask.Tell(err)
		return
	}
	l.showSearches()
}

func (l *List) showSearches() {
	list, err := l.at.Desk.Store.SavedSearches(l.at.Ctx)
	if err != nil {
		l.at.Ask.Tell(err)
		return
	}
	var names []string
	l.kept = map[string]string{}
	for _, s := range list {
		names = append(names, s.Name)
		l.kept[s.Name] = s.Query
	}
	l.view.ShowSaved(names, l.kept)
}
