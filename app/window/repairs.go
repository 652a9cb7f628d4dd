package window

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/repair"
	"loopbook/app/ui/verdict"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/access"
	"loopbook/cases/money"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

func (w *window) makeRepair() {
	w.verdict = verdict.New(w.at.Desk.Edit)
	w.verdict.OnPaper = w.papers.Print
	w.repair = repair.New(w.editRepair, repair.Money{
		Parse: func(code string) (string, error) {
			c, err := money.ParseCurrency(code)
			return c.Code, err
		},
		Write: writePrice,
		Read:  readPrice,
	})
	w.repair.Usual = w.prefs.usualRepair
}

// writePrice writes a price as money, without the currency's code. In what is no
// currency, or no bill has room for, it stands as it was typed.
func writePrice(code string, price float64) string {
	c, err := money.ParseCurrency(code)
	if err != nil {
		return kit.Plain(price)
	}
	a, err := c.FromMajor(price)
	if err != nil {
		return kit.Plain(price)
	}
	c.Code = ""
	return c.Write(a, say.EN)
}

// readPrice reads a price as money. In a currency of two places 1.234 may be meant as 1234 as
// well as 1.23, so that it is asked for again.
func readPrice(code, text string) (float64, error) {
	v, err := units.Number(text)
	if err != nil {
		return 0, err
	}
	c, err := money.ParseCurrency(code)
	if err != nil {
		c = money.Currency{Digits: 2} // what is no currency is told elsewhere
	}
	places := 0
	if i := strings.LastIndexAny(text, ",."); i >= 0 {
		places = len(strings.TrimSpace(text[i+1:]))
	}
	if places > c.Digits {
		whole := math.Round(v * math.Pow10(places))
		return 0, fmt.Errorf("%q has too many places: write %s or %s", text, writePrice(code, whole), writePrice(code, v))
	}
	return v, nil
}

// editRepair keeps an edit, and for the next case what the shop asks for.
func (w *window) editRepair(what string, change func(*cases.Case)) {
	w.at.Desk.Edit(what, change)
	if r := w.at.Desk.Case.Repair; r.Currency != "" {
		w.prefs.setUsualRepair(r)
	}
}

func (w *window) showVerdict() {
	d := w.at.Desk
	data := verdict.Data{Case: d.Case, Units: d.Units, Evidence: w.confirming()}
	if a := d.Answer(); a.Case != nil && !a.Thought.Ranking.Blank && a.Thought.Ranking.Stage == cases.BeforeRepair {
		data.RuledOut = ruledOut(a)
		data.Odds = odd(a, d.Case.Verdict.Cause)
		for _, c := range a.Thought.Ranking.Causes {
			data.Ranked = append(data.Ranked, verdict.Ranked{Cause: c.Cause, Chance: kit.Chance(c.Probability)})
		}
	}
	w.verdict.Show(data)
}

func ruledOut(a desk.Answer) string {
	var out []string
	for _, c := range a.Thought.Ranking.RuledOut(a.Thought.Beside) {
		out = append(out, c.Name())
	}
	if len(out) == 0 {
		return ""
	}
	return kit.L("window.verdict.under-one", strings.Join(out, ", "))
}

func odd(a desk.Answer, cause cases.Cause) string {
	for _, c := range a.Thought.Ranking.Causes {
		if c.Cause == cause {
			return kit.L("window.verdict.odds", kit.Capital(cause.Name()), kit.Chance(c.Probability))
		}
	}
	return ""
}

// confirming is what the case holds from before the repair that a cause can be
// confirmed by.
func (w *window) confirming() []verdict.Evidence {
	d := w.at.Desk
	out := w.roundsMeasured()
	for i, l := range d.Case.Logs {
		if l.Stage != cases.AfterRepair {
			out = append(out, verdict.Evidence{Word: cases.ByWarmUp, Text: kit.L("window.verdict.log", l.Name, logTold(d, i))})
		}
	}
	for i := range d.Case.Tests {
		t := &d.Case.Tests[i]
		if t.Stage == cases.AfterRepair {
			continue
		}
		if r := words.CheckResult(w.tables, &d.Case, t, d.Units); r.Says != "" {
			out = append(out, verdict.Evidence{Word: string(t.Kind), Text: kit.L("window.verdict.check", t.Kind.Name(), strings.TrimSuffix(r.Says, "."))})
		}
	}
	return out
}

func (w *window) roundsMeasured() []verdict.Evidence {
	d := w.at.Desk
	rounds, off := 0, 0
	for i, r := range d.Found.Rounds {
		if len(r.Readings) == 0 || d.Case.Rounds[i].Stage == cases.AfterRepair {
			continue
		}
		rounds++
		for _, reading := range r.Readings {
			if reading.State.Out() {
				off++
			}
		}
	}
	if rounds == 0 {
		return nil
	}
	return []verdict.Evidence{{Word: cases.ByHoseMap, Text: kit.L("window.verdict.rounds", rounds, off)}}
}

func logTold(d *desk.Desk, i int) string {
	r := d.Found.WarmUps[i].Result
	told := kit.L("window.verdict.no-knee")
	if r.Knee != nil {
		told = kit.L("window.verdict.opens", d.Units.TempUnit(r.Knee.C))
	}
	if r.Plateau != nil {
		told += ", " + kit.L("window.verdict.holds", d.Units.TempUnit(r.Plateau.C))
	}
	return told
}

func (w *window) showRepair() {
	d := w.at.Desk
	data := repair.Data{Case: d.Case, Units: d.Units, Bill: billWords(d.Case.Repair)}
	advice, err := access.For(&d.Case)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	by := d.By()
	for _, n := range advice.Due() {
		data.Notes = append(data.Notes, repair.Note{What: by.Say(n.What), Hours: by.Say(n.Hours), Way: by.Say(n.Way), Renew: by.Say(n.Renew), Class: by.Say(n.Class)})
	}
	for _, s := range advice.Steps {
		data.Steps = append(data.Steps, repair.Step{ID: s.ID, Text: by.Say(s.Text), Done: s.Done})
	}
	data.Cautions = by.All(advice.Cautions)
	w.repair.Show(data)
}

// billWords is the bill of a repair; what can't be summed is told in its place.
func billWords(r cases.Repair) repair.Bill {
	b, err := money.Of(r)
	if err != nil {
		return repair.Bill{Remark: err.Error()}
	}
	write := func(a money.Amount) string { return b.Currency.Write(a, say.EN) }
	out := repair.Bill{Parts: make([]string, len(b.Parts))}
	for i, l := range b.Parts {
		if l.Each != nil {
			out.Parts[i] = write(l.Sum)
		}
	}
	if b.Labour != nil {
		out.Labour = write(b.Labour.Sum)
	}
	if !b.Empty() {
		out.Subtotal, out.Total = write(b.Subtotal), write(b.Total)
	}
	if b.TaxPercent != nil && !b.Empty() {
		out.Tax = write(b.Tax)
	}
	if b.Unpriced > 0 && slices.ContainsFunc(out.Parts, func(s string) bool { return s != "" }) {
		out.Remark = kit.L("window.repair.unpriced", b.Unpriced)
	}
	return out
}
