package window

import (
	"loopbook/app/desk"
	"loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/whatif"
	"loopbook/app/window/bench"
	"loopbook/app/window/tryout"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

func (w *window) makeCauses() {
	d := w.at.Desk
	o := d.Odds
	o.Flat, o.Learn = w.prefs.flat(), w.prefs.learn()
	d.Believe(o)
	d.Answered, d.Progressed = w.showCauses, w.showProgress
	w.causes = causes.New()
	w.causes.OnCause, w.causes.OnRound = d.Choose, d.ShowRound
	w.causes.OnBegin = w.begin
	w.causes.OnNext = func() {
		_, tab := nextStep(&d.Case)
		w.leave()
		w.tabs.SelectIndex(tab)
	}
	w.causes.OnTake = func(cause cases.Cause) {
		d.Edit(kit.L("window.verdict.cause"), func(c *cases.Case) { c.Verdict.Cause = cause })
	}
	w.causes.OnFlat = func(on bool) {
		o := d.Odds
		o.Flat = on
		w.prefs.setFlat(on)
		d.Believe(o)
	}
	w.causes.OnLearn = func(on bool) {
		o := d.Odds
		o.Learn = desk.LearnNo
		if on {
			o.Learn = desk.LearnYes
		}
		w.prefs.setLearn(o.Learn)
		d.Believe(o)
	}
}

// tab is a screen's own place among the tabs.
func (w *window) tab(at int) bench.Tab {
	return bench.Tab{Open: func() { w.tabs.SelectIndex(at) }, InSight: func() bool { return w.tabs.SelectedIndex() == at }}
}

// showTab paints the screen that is looked at. The others wait until they are:
// all of them together take longer than a person should wait for a field.
func (w *window) showTab() {
	d := w.at.Desk
	w.showWhatIf()
	if !d.Open {
		return
	}
	switch w.tabs.SelectedIndex() {
	case complaintTab:
		w.complaint.Show(d.Case, d.Units)
	case warmUpTab:
		w.warmup.Show()
	case hoseMapTab:
		w.showHoseMap()
	case checksTab:
		w.checks.Show(d.Case, diagnosis.Overheated(&d.Case, d.Found), d.Units)
	case alikeTab:
		w.showAlike()
	case verdictTab:
		w.showVerdict()
	case repairTab:
		w.showRepair()
	case proofTab:
		w.showProof()
	case photosTab:
		w.photos.Show()
	}
	w.showCauses()
}

// showProgress says how far the causes are computed.
func (w *window) showProgress() { w.head.progress.SetText(w.at.Desk.Progress()) }

// showCauses paints the causes where they are looked at, and how far they are
// computed.
func (w *window) showCauses() {
	w.showProgress()
	switch at := w.tabs.SelectedIndex(); {
	case !w.at.Desk.Open:
	case at == causesTab:
		w.causes.Show(causesOf(w.at.Desk))
	case at == verdictTab:
		w.showVerdict()
	case at == hoseMapTab:
		w.hosemap.ShowLikely(w.at.Desk.Answer().Thought.Ranking.Stage, likelyOf(w.at.Desk), standingOf(w.at.Desk.Answer()))
	}
}

func (w *window) makeWhatIf() {
	w.whatif = whatif.New()
	w.live = tryout.New(w.at.Start, w.whatif.Show, w.at.Ask.Tell)
	w.whatif.OnChange = func(s whatif.Settings) { w.live.Want(func(x *tryout.Wish) { x.Set = s }) }
	w.whatif.OnPause = func(on bool) { w.live.Want(func(x *tryout.Wish) { x.Paused = on }) }
	w.whatif.OnCold = func() { w.live.Want(func(x *tryout.Wish) { x.Again = tryout.FromCold }) }
	w.whatif.OnWarm = func() { w.live.Want(func(x *tryout.Wish) { x.Again = tryout.FromWarm }) }
}

// showWhatIf lets the simulated car run while it is looked at. It begins with
// the open case's loop, ratings and weather.
func (w *window) showWhatIf() {
	d := w.at.Desk
	if !d.Open || w.tabs.SelectedIndex() != whatIfTab {
		w.live.End()
		w.tried = ""
		return
	}
	if name := d.Case.ID + d.Case.Loop.Layout + string(d.Units.Temperature) + string(d.Units.Distance); name != w.tried {
		w.tried = name
		w.tryOut()
	}
}

func (w *window) tryOut() {
	build, set, ok := tryout.Of(&w.at.Desk.Case)
	w.whatif.Put(set, w.at.Desk.Units)
	w.whatif.SetPaused(false)
	if !ok {
		w.live.End()
		w.whatif.Show(whatif.Shown{Facts: []whatif.Fact{{Name: kit.L("window.whatif.loop"), Value: kit.L("window.whatif.no-loop")}}})
		return
	}
	w.live.Begin(build, set, w.at.Desk.Units)
}
