// Package alike fills the screen of the cases that are like the open one.
package alike

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	view "loopbook/app/ui/alike"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/cases"
)

// Screen shows cases like the open one.
type Screen struct {
	at   bench.Bench
	view *view.View
}

// New shows no cases yet; open turns to a case, compare puts it beside the open one.
func New(at bench.Bench, open func(id string), compare func(id string)) *Screen {
	s := &Screen{at: at, view: view.New()}
	s.view.OnOpen, s.view.OnCompare = open, compare
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Show finds the cases like the open one, apart from the window.
func (s *Screen) Show() {
	store, id := s.at.Desk.Store, s.at.Desk.Case.ID
	s.at.Start(func() {
		list, err := library.Alike(s.at.Ctx, store, id)
		fyne.Do(func() {
			switch {
			case store != s.at.Desk.Store || id != s.at.Desk.Case.ID: // another one is open by now
			case err != nil:
				s.at.Ask.Tell(err)
			default:
				s.view.Show(tally(list), rows(list))
			}
		})
	})
}

func rows(list []library.Lookalike) []view.Case {
	out := make([]view.Case, len(list))
	for i, a := range list {
		out[i] = view.Case{
			ID: a.ID, Title: a.Title, Vehicle: a.Vehicle, How: closeness(a.Distance), Near: nearness(a.Distance), Because: kit.Capital(a.Because.String()),
		}
		if !a.Opened.IsZero() { // a case of a file may have no day
			out[i].When = a.Opened.Local().Format("2 Jan 2006")
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

// tally is what those that are much like it turned out to be.
func tally(list []library.Lookalike) string {
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
	slices.SortFunc(causes, func(a, b cases.Cause) int { return cmp.Or(cmp.Compare(n[b], n[a]), cmp.Compare(a, b)) })
	var words []string
	for _, c := range causes {
		words = append(words, fmt.Sprintf("%s %d", c.Name(), n[c]))
	}
	return kit.L("window.alike.tally", settled, strings.Join(words, ", "))
}

// likeEnough is up to which distance a case says something of another (judgement).
const likeEnough = 0.4

// nearness is a distance as a bar: half of the way is as far as a case that nothing is known of, so that nothing
// of the bar is left there.
func nearness(distance float64) float64 { return max(0, 1-2*distance) }

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
