// Package proof fills the screen that tells whether the repair is proven.
package proof

import (
	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/proof"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/report/picture"
)

// Screen judges the open case's repair.
type Screen struct {
	at   bench.Bench
	tab  bench.Tab
	view *view.View
	of   string // the case that the pair belongs to
	pair int    // the one that is looked at
	key  string // of the crowd that is being simulated
}

// Ways lead to where what is missing is measured, and to where the next repair begins.
type Ways struct {
	Walk   func(round int) // begins a round as one was walked before the repair
	Check  func(kind cases.TestKind)
	Causes func()
}

// New judges nothing yet; save writes a chart and says where.
func New(at bench.Bench, tab bench.Tab, save kit.Saver, to Ways) *Screen {
	s := &Screen{at: at, tab: tab, view: view.New(at.Desk.Edit, save)}
	s.view.OnAgain, s.view.OnCheck = to.Walk, to.Check
	s.view.OnNext = func() {
		_, p, _ := s.judged()
		s.at.Desk.Edit(kit.L("window.proof.edit-next"), p.RepairAgain)
		to.Causes()
	}
	s.view.OnPair = func(i int) { s.pair = i; s.Show() }
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// First is what is to be done next.
func (s *Screen) First() fyne.Focusable { return s.view.First() }

// Leave keeps what is being typed.
func (s *Screen) Leave() { s.view.Leave() }

// Show paints the proof.
func (s *Screen) Show() { s.view.Show(s.data()) }

// judged is the proof by the crowd that is there, with what it is asked of and whether that crowd is being simulated.
func (s *Screen) judged() (g mind.Grounds, p proof.Proof, computing bool) {
	d := s.at.Desk
	g = mind.GroundsOf(&d.Case, d.Found, cases.AfterRepair)
	crowd := s.crowdAfter(g)
	p = proof.Judge(&d.Case, d.Found, d.Mind.Rank(&d.Case, d.Found, g, crowd, diagnosis.Prior{}))
	return g, p, g.Known && crowd == nil && len(g.Plan.Rounds) > 0
}

// data is the proof in words.
func (s *Screen) data() view.Data {
	d := s.at.Desk
	if s.of != d.Case.ID {
		s.of, s.pair = d.Case.ID, 0
	}
	g, p, computing := s.judged()
	data := view.Data{Case: d.Case, Units: d.Units, Pair: min(s.pair, len(p.Pairs)-1)}
	by := d.By()
	data.Severity, data.Verdict = severityOf(p.Verdict), by.Say(p.Sentence)
	switch {
	case !g.Known:
		data.Open = kit.L("window.proof.no-layout")
	case computing:
		data.Severity, data.Verdict = "note", kit.L("window.proof.computing")
		p = p.Pending(&d.Case)
	}
	pairWords(d, p, &data)
	s.curves(p, &data)
	for _, l := range p.Lone {
		data.Unmatched = append(data.Unmatched, kit.L("window.proof.unmatched-line", picture.RoundName(&d.Case, l.Round, by), by.Say(l.Why)))
	}
	for _, f := range p.Unexplained {
		data.Unexplained = append(data.Unexplained, by.Say(f.Text))
	}
	data.Repeat = by.All(p.Repeat)
	if data.Severity == "fine" && data.Open == "" && len(p.Repeat) > 0 {
		data.Open = kit.L("window.proof.not-all", len(p.Repeat))
	}
	s.checks(p, &data)
	data.Codes = codesTold(p.Codes)
	data.NoCodes = noCodes(p.Codes.After)
	data.Again, data.NoRepair = toWalkAgain(d, p), p.Verdict == proof.NoRepair
	data.NotFixed = p.Verdict == proof.NotFixed && !computing
	return data
}

func severityOf(v proof.Verdict) string {
	switch v {
	case proof.Fixed:
		return "fine"
	case proof.NotFixed:
		return "act"
	case proof.NoRepair:
		return "note"
	}
	return "look"
}
