package window

import (
	"fmt"
	"sort"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	view "loopbook/app/ui/alike"
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

func (w *window) makeAlike() {
	w.alike = view.New()
	w.alike.OnOpen = w.openCase
	w.alike.OnCompare = func(id string) {
		other, err := w.at.Desk.Store.Get(w.at.Ctx, id)
		if err != nil {
			w.at.Ask.Tell(err)
			return
		}
		w.showBeside(w.at.Desk.Case, other)
	}
}

// showAlike finds the cases like the open one, apart from the window.
func (w *window) showAlike() {
	store, id := w.at.Desk.Store, w.at.Desk.Case.ID
	w.at.Start(func() {
		list, err := library.Alike(w.at.Ctx, store, id)
		fyne.Do(func() {
			switch {
			case store != w.at.Desk.Store || id != w.at.Desk.Case.ID: // another one is open by now
			case err != nil:
				w.at.Ask.Tell(err)
			default:
				w.alike.Show(alikeTally(list), alikeRows(list))
			}
		})
	})
}

func alikeRows(list []library.Lookalike) []view.Case {
	out := make([]view.Case, len(list))
	for i, a := range list {
		out[i] = view.Case{
			ID: a.ID, Title: a.Title, Vehicle: a.Vehicle, How: closeness(a.Distance), Near: 1 - a.Distance, Because: a.Because.String(),
			When: a.Opened.Local().Format("2 Jan 2006"),
		}
		if a.Title == "" {
			out[i].Title = kit.L("window.notebook.no-title")
		}
		if a.Cause != "" {
			out[i].Cause = a.Cause.Name()
		}
	}
	return out
}

// alikeTally is what those that are much like it turned out to be.
func alikeTally(list []library.Lookalike) string {
	n := map[cases.Cause]int{}
	settled := 0
	for _, a := range list {
		if a.Cause != "" && a.Distance < likeEnough {
			n[a.Cause]++
			settled++
		}
	}
	if settled == 0 {
		return kit.L("window.alike.none-close")
	}
	causes := make([]cases.Cause, 0, len(n))
	for c := range n {
		causes = append(causes, c)
	}
	sort.Slice(causes, func(i, j int) bool {
		a, b := causes[i], causes[j]
		return n[a] > n[b] || n[a] == n[b] && a < b
	})
	var words []string
	for _, c := range causes {
		words = append(words, fmt.Sprintf("%s %d", c.Name(), n[c]))
	}
	return kit.L("window.alike.tally", settled, strings.Join(words, ", "))
}

// likeEnough is up to which distance a case says something of another (judgement).
const likeEnough = 0.4

// closeness is a distance in a word.
func closeness(distance float64) string {
	switch {
	case distance < 0.12:
		return kit.L("window.alike.very")
	case distance < 0.25:
		return kit.L("window.alike.much")
	case distance < likeEnough:
		return kit.L("window.alike.some")
	}
	return kit.L("window.alike.little")
}
