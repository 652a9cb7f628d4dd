package notebook

func (l *List) keepSearch(name, text string) {
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
	texts := map[string]string{}
	for _, s := range list {
		names = append(names, s.Name)
		texts[s.Name] = s.Query
	}
	l.view.ShowSaved(names, texts)
}
