package main

import (
	"loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/whatif"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

func (w *window) makeCauses() {
	d := w.desk
	o := d.odds
	o.flat, o.learn = w.prefs.flat(), w.prefs.learn()
	d.believe(o)
	d.judging.changed, d.judging.progressed = w.showCauses, w.showProgress
	w.causes = causes.New()
	w.causes.OnCause, w.causes.OnRound = d.judging.choose, d.showRound
	w.causes.OnBegin = w.begin
	w.causes.OnNext = func() {
		_, tab := nextStep(&d.c)
		w.leave()
		w.tabs.SelectIndex(tab)
	}
	w.causes.OnTake = func(cause cases.Cause) {
		d.edit(kit.L("window.verdict.cause"), func(c *cases.Case) { c.Verdict.Cause = cause })
	}
	w.causes.OnFlat = func(on bool) {
		o := d.odds
		o.flat = on
		w.prefs.setFlat(on)
		d.believe(o)
	}
	w.causes.OnLearn = func(on bool) {
		o := d.odds
		o.learn = learnNo
		if on {
			o.learn = learnYes
		}
		w.prefs.setLearn(o.learn)
		d.believe(o)
	}
}

// showTab paints the screen that is looked at. The others wait until they are:
// all of them together take longer than a person should wait for a field.
func (w *window) showTab() {
	d := w.desk
	w.showWhatIf()
	if !d.open {
		return
	}
	switch w.tabs.SelectedIndex() {
	case complaintTab:
		w.complaint.Show(d.c, d.units)
	case warmUpTab:
		w.showWarmUp()
	case hoseMapTab:
		w.showHoseMap()
	case checksTab:
		w.checks.Show(d.c, diagnosis.Overheated(&d.c, d.found), d.units)
	case alikeTab:
		w.showAlike()
	case verdictTab:
		w.showVerdict()
	case repairTab:
		w.showRepair()
	case proofTab:
		w.showProof()
	case photosTab:
		w.showPhotos()
	}
	w.showCauses()
}

// showProgress says how far the causes are computed.
func (w *window) showProgress() { w.head.progress.SetText(w.desk.judging.progress()) }

// showCauses paints the causes where they are looked at, and how far they are
// computed.
func (w *window) showCauses() {
	w.showProgress()
	switch at := w.tabs.SelectedIndex(); {
	case !w.desk.open:
	case at == causesTab:
		w.causes.Show(causesOf(w.desk))
	case at == verdictTab:
		w.showVerdict()
	case at == hoseMapTab:
		w.hosemap.ShowLikely(w.desk.judging.answer.thought.Ranking.Stage, likelyOf(w.desk), standingOf(w.desk.judging.answer))
	}
}

func (w *window) makeWhatIf() {
	w.whatif = whatif.New()
	w.live = newLive(w.start, w.whatif.Show, w.tell)
	w.whatif.OnChange = func(s whatif.Settings) { w.live.want(func(x *wish) { x.set = s }) }
	w.whatif.OnPause = func(on bool) { w.live.want(func(x *wish) { x.paused = on }) }
	w.whatif.OnCold = func() { w.live.want(func(x *wish) { x.again = fromCold }) }
	w.whatif.OnWarm = func() { w.live.want(func(x *wish) { x.again = fromWarm }) }
}

// showWhatIf lets the simulated car run while it is looked at. It begins with
// the open case's loop, ratings and weather.
func (w *window) showWhatIf() {
	d := w.desk
	if !d.open || w.tabs.SelectedIndex() != whatIfTab {
		w.live.end()
		w.tried = ""
		return
	}
	if name := d.c.ID + d.c.Loop.Layout + string(d.units.Temperature) + string(d.units.Distance); name != w.tried {
		w.tried = name
		w.tryOut()
	}
}

func (w *window) tryOut() {
	build, set, ok := trial(&w.desk.c)
	w.whatif.Put(set, w.desk.units)
	w.whatif.SetPaused(false)
	if !ok {
		w.live.end()
		w.whatif.Show(whatif.Shown{Facts: []whatif.Fact{{Name: kit.L("window.whatif.loop"), Value: kit.L("window.whatif.no-loop")}}})
		return
	}
	w.live.begin(build, set, w.desk.units)
}
