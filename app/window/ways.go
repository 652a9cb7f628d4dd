package window

import (
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/causes"
	"loopbook/cases"
)

// ways lead from wherever one is to a screen of the open case, and from one of its screens to another.
type ways struct {
	at      bench.Bench
	home    func() bool // turns to the case's room, where that may be, and reports whether it is there
	screens *screens
}

// goTo turns to a screen.
func (w *ways) goTo(tab int) {
	w.home()
	w.screens.tabs.SelectIndex(tab)
}

// tab is a screen's own place among the tabs.
func (w *ways) tab(at int) bench.Tab {
	return bench.Tab{Open: func() { w.goTo(at) }, InSight: func() bool { return w.screens.tabs.SelectedIndex() == at }}
}

// turnTo leads a key to a screen, and to what is done first there. What is being typed is kept before, so
// that the hose that is left counts as read.
func (w *ways) turnTo(tab int) {
	w.at.Leave()
	w.goTo(tab)
	kit.Focus(w.screens.first(tab))
}

// begun leads to where a new case is told.
func (w *ways) begun() {
	w.goTo(complaintTab)
	kit.Focus(w.screens.first(complaintTab))
}

// next leads to what follows the verdict.
func (w *ways) next(step causes.Step) {
	w.at.Leave()
	w.screens.tabs.SelectIndex(map[causes.Step]int{causes.None: causesTab, causes.Verdict: verdictTab, causes.Repair: repairTab, causes.Proof: proofTab}[step])
}

// addRound begins a round like the one that is shown. It turns to the hose map first: elsewhere that may
// show the case before, and takes no focus. Who practises adds none: it would go unseen into the open case.
func (w *ways) addRound() {
	if !w.home() {
		return
	}
	w.at.Leave()
	w.screens.tabs.SelectIndex(hoseMapTab)
	w.screens.hosemap.AddRound("", true)
}

// walkAgain begins a round as one was walked before the repair.
func (w *ways) walkAgain(round int) {
	w.at.Leave()
	w.screens.tabs.SelectIndex(hoseMapTab)
	kit.Focus(w.screens.hosemap.Again(round))
}

// doCheck turns to a check's form.
func (w *ways) doCheck(kind cases.TestKind) {
	w.at.Leave()
	w.screens.tabs.SelectIndex(checksTab)
	kit.Focus(w.screens.checks.Begin(kind))
}

// repeatCheck turns to an empty form of a check that was done before.
func (w *ways) repeatCheck(kind cases.TestKind) {
	w.doCheck(kind)
	w.screens.checks.Again()
}

func (w *ways) checkAgain() {
	if !w.home() {
		return
	}
	w.screens.tabs.SelectIndex(checksTab)
	w.screens.checks.Again()
}

func (w *ways) deleteCheck() {
	if w.home() && w.screens.tabs.SelectedIndex() == checksTab {
		w.screens.checks.Delete()
	}
}
