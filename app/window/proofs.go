package window

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/proof"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

// proofs judges the open case's repair.
type proofs struct {
	of   string // the case that the pair belongs to
	pair int    // the one that is looked at
	key  string // of the crowd that is being simulated
}

func (w *window) makeProof() {
	w.proofs = &proofs{}
	w.proof = view.New(w.at.Desk.Edit, w.charts.Save)
	w.proof.OnAgain = func(i int) {
		w.leave()
		w.tabs.SelectIndex(hoseMapTab)
		kit.Focus(w.hosemap.Again(i))
	}
	w.proof.OnPair = func(i int) { w.proofs.pair = i; w.showProof() }
}

// showProof paints the proof.
func (w *window) showProof() { w.proof.Show(w.proofData()) }

// proofData is the proof in words, by the crowd that is there.
func (w *window) proofData() view.Data {
	d := w.at.Desk
	if w.proofs.of != d.Case.ID {
		w.proofs.of, w.proofs.pair = d.Case.ID, 0
	}
	g := mind.GroundsOf(&d.Case, d.Found, cases.AfterRepair)
	crowd := w.crowdAfter(g)
	p := proof.Judge(&d.Case, d.Found, d.Mind.Rank(&d.Case, d.Found, g, crowd, diagnosis.Prior{}))
	data := view.Data{Case: d.Case, Units: d.Units, Pair: min(w.proofs.pair, len(p.Pairs)-1)}
	by := d.By()
	data.Severity, data.Verdict = severityOf(p.Verdict), by.Say(p.Sentence)
	switch {
	case !g.Known:
		data.Open = kit.L("window.proof.no-layout")
	case crowd == nil && len(g.Plan.Rounds) > 0:
		data.Severity, data.Verdict = "note", kit.L("window.proof.computing")
	}
	pairWords(d, p, &data)
	w.proofCurves(p, &data)
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
	w.proofChecks(p, &data)
	data.Codes = codesTold(p.Codes)
	data.NoCodes = noCodes(p.Codes.After)
	data.Again = toWalkAgain(d, p)
	return data
}

// toWalkAgain are the rounds of before the repair with readings that have no like after it.
func toWalkAgain(d *desk.Desk, p proof.Proof) []view.Round {
	var out []view.Round
	for i, r := range d.Case.Rounds {
		walked := slices.ContainsFunc(p.Pairs, func(of proof.Pair) bool { return of.Before == i })
		if r.Stage != cases.AfterRepair && len(r.Readings) > 0 && !walked {
			out = append(out, view.Round{Index: i, Name: kit.RoundName(r, i)})
		}
	}
	return out
}

func severityOf(v proof.Verdict) string {
	switch v {
	case proof.Fixed:
		return "fine"
	case proof.NotFixed:
		return "act"
	}
	return "look"
}

// crowdAfter is the crowd that the stage after the repair is judged by, or nil;
// then it is simulated apart from the window, and those of the stage's logs with it,
// where there is anything to judge.
func (w *window) crowdAfter(g mind.Grounds) *ensemble.Ensemble {
	m, key, missing := w.at.Desk.Mind, "", []diagnosis.Plan(nil)
	if len(g.Plan.Rounds)+len(g.Logs) == 0 {
		return nil
	}
	for _, p := range g.Plans() {
		if m.Crowds.Kept(p) == nil {
			missing = append(missing, p)
			key += p.Setting.Key()
		}
	}
	if len(missing) > 0 && key != w.proofs.key { // else it is under way
		w.proofs.key = key
		w.at.Start(func() { w.simulateAfter(missing, key) })
	}
	return m.Crowd(g)
}

// simulateAfter makes the crowds that the proof waits for, and shows it anew.
func (w *window) simulateAfter(missing []diagnosis.Plan, key string) {
	var err error
	for _, p := range missing {
		if err == nil {
			_, err = w.at.Desk.Mind.Crowds.Get(w.at.Ctx, p, nil)
		}
	}
	fyne.Do(func() {
		if w.proofs.key == key {
			w.proofs.key = ""
		}
		if err == nil && w.tabs.SelectedIndex() == proofTab {
			w.showProof()
		}
	})
}

// pairWords fill in the pairs, and the one that is looked at.
func pairWords(d *desk.Desk, p proof.Proof, to *view.Data) {
	by := d.By()
	for _, pair := range p.Pairs {
		to.Pairs = append(to.Pairs, kit.L("window.proof.pair", picture.RoundName(&d.Case, pair.Before, by), picture.RoundName(&d.Case, pair.After, by)))
	}
	if to.Pair < 0 {
		return
	}
	pair := p.Pairs[to.Pair]
	if len(pair.Open) > 0 {
		to.Condition = kit.L("window.proof.not-noted", by.Say(say.List(pair.Open...)))
	}
	l, err := diagram.LoopByID(d.Case.Loop.Layout)
	if err != nil {
		return
	}
	to.Picture = picture.Pair(l, &d.Case, d.Found, pair, by)
	state := picture.State(l, &d.Case, d.Found, pair.After, by)
	before := picture.State(l, &d.Case, d.Found, pair.Before, by)
	for _, at := range l.Deltas {
		b, a := before.Deltas[at.Name], state.Deltas[at.Name]
		if b.Text == "" && a.Text == "" {
			continue
		}
		to.Rows = append(to.Rows, view.Row{Name: kit.Capital(by.Say(say.DeltaName(at.Name))), Before: b.Text, After: a.Text, Expected: a.Range, Out: outNow(pair, at.Name)})
	}
}

func outNow(p proof.Pair, name string) bool {
	for _, d := range p.Deltas {
		if d.Name == name && d.After != nil {
			return d.After.State.Out()
		}
	}
	return false
}

// proofCurves lay the first pair of warm-ups over each other; one without its
// like stands alone.
func (w *window) proofCurves(p proof.Proof, to *view.Data) {
	d := w.at.Desk
	if len(p.Logs) == 0 {
		return
	}
	pair := p.Logs[0]
	for _, l := range p.Logs {
		if l.Before >= 0 && l.After >= 0 {
			pair = l
			break
		}
	}
	before, after := logAt(d, pair.Before), logAt(d, pair.After)
	if lines := picture.BothWarmUps(&d.Case, before, after, resultAt(d, pair.Before), resultAt(d, pair.After), d.By()); len(lines.Curves) > 0 {
		to.Curves = lines
	}
}

// logAt is one of the case's logs, or nil.
func logAt(d *desk.Desk, i int) *cases.Log {
	if i < 0 {
		return nil
	}
	return &d.Case.Logs[i]
}

func resultAt(d *desk.Desk, i int) warmup.Result {
	if i < 0 {
		return warmup.Result{}
	}
	return d.Found.WarmUps[i].Result
}

// proofChecks tell how each check came out in either stage.
func (w *window) proofChecks(p proof.Proof, to *view.Data) {
	d := w.at.Desk
	says := func(at int) string {
		if at < 0 {
			return kit.L("window.proof.not-done")
		}
		return words.CheckResult(w.tables, &d.Case, &d.Case.Tests[at], d.Units).Says
	}
	for _, t := range p.Tests {
		to.Checks = append(to.Checks, view.Row{Name: kit.Capital(t.Kind.Name()), Before: says(t.Before), After: says(t.After)})
	}
}

// noCodes names what has not the form of a trouble code.
func noCodes(words []string) string {
	var none []string
	for _, w := range words {
		if !evidence.IsCode(w) {
			none = append(none, w)
		}
	}
	if len(none) == 0 {
		return ""
	}
	return kit.L("window.proof.malformed", strings.Join(none, ", "), say.Of("code.malformed"))
}

func codesTold(c proof.Codes) string {
	var out []string
	if len(c.Before) > 0 {
		out = append(out, kit.L("window.proof.codes-before", strings.Join(c.Before, ", ")))
	} else {
		out = append(out, kit.L("window.proof.codes-none"))
	}
	switch {
	case !c.Read:
		out = append(out, kit.L("window.proof.codes-unread"))
	case len(c.After) == 0:
		out = append(out, kit.L("window.proof.codes-clear"))
	default:
		out = append(out, kit.L("window.proof.codes-now", strings.Join(c.After, ", ")))
	}
	if len(c.Back) > 0 {
		out = append(out, kit.L("window.proof.codes-back", strings.Join(c.Back, ", ")))
	}
	return strings.Join(out, " ")
}
