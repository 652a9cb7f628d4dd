// Package verdict fills the screen of the verdict.
package verdict

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/verdict"
	"loopbook/cases"
)

// Screen shows the open case's verdict, beside what its causes were held to be.
type Screen struct {
	desk *desk.Desk
	view *view.View
}

// New shows no verdict yet; print opens the papers.
func New(d *desk.Desk, print func()) *Screen {
	s := &Screen{desk: d, view: view.New(d.Edit)}
	s.view.OnPaper = print
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Leave keeps what is being typed.
func (s *Screen) Leave() { s.view.Leave() }

// Show paints the verdict.
func (s *Screen) Show() {
	d := s.desk
	data := view.Data{Case: d.Case, Units: d.Units, Evidence: s.confirming()}
	if a := d.Answer(); a.Case != nil && !a.Thought.Ranking.Blank && a.Thought.Ranking.Stage == cases.BeforeRepair {
		data.RuledOut = ruledOut(a)
		data.Odds = odd(a, d.Case.Verdict.Cause)
		if b := a.Thought.Beside; b != nil && a.Case.Verdict.Cause == d.Case.Verdict.Cause { // else one of another verdict is being held
			data.Beside = d.By().Say(b.Words())
		}
		for _, c := range a.Thought.Ranking.Causes {
			data.Ranked = append(data.Ranked, view.Ranked{Cause: c.Cause, Chance: kit.Chance(c.Probability)})
		}
	}
	s.view.Show(data)
}

// ruledOut are the causes that don't explain it, of those that the loop has the parts for.
func ruledOut(a desk.Answer) []string {
	var out []string
	for _, c := range a.Thought.Ranking.RuledOut(a.Thought.Beside) {
		if !a.Case.Loop.Lacks(c) {
			out = append(out, c.Name())
		}
	}
	return out
}

func odd(a desk.Answer, cause cases.Cause) string {
	c, ranked := a.Thought.Ranking.Of(cause)
	if !ranked {
		return ""
	}
	if first := a.Thought.Ranking.Causes[0]; first.Probability > c.Probability {
		return kit.L("window.verdict.odds-behind", kit.Chance(c.Probability), first.Cause.Name(), kit.Chance(first.Probability))
	}
	return kit.L("window.verdict.odds", kit.Chance(c.Probability))
}
