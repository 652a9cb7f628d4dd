package practice

import (
	"fmt"
	"math"
	"strings"

	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/practice"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

func roundWords(r cases.Round, i int) string {
	name := kit.RoundName(r, i)
	if r.MinutesSinceStart == nil {
		return name
	}
	minutes := minutesText(*r.MinutesSinceStart)
	if strings.HasPrefix(name, minutes) { // it says so itself, as the usual one from cold
		return name
	}
	return kit.L("window.practice.round-at", name, minutes)
}

// signed is a score with a sign that can be seen.
func signed(bits float64) string { return strings.Replace(fmt.Sprintf("%.1f", bits), "-", "−", 1) }

func itemName(i practice.Item) string {
	switch i.Kind {
	case practice.Point:
		return kit.Capital(say.Place(i.Point).String())
	case practice.Dash:
		return kit.L("window.practice.dash")
	case practice.Log:
		return kit.L("window.practice.log")
	}
	return kit.Capital(i.Check.Name())
}

// boughtName is an item's name with its round, where it has one.
func boughtName(c cases.Case, i practice.Item) string {
	if i.Kind == practice.Point || i.Kind == practice.Dash {
		return kit.L("window.practice.in-round", itemName(i), kit.RoundName(c.Rounds[i.At], i.At))
	}
	return itemName(i)
}

// itemSays is what an item that was bought says.
func (t teller) itemSays(c cases.Case, i practice.Item) string {
	u := t.desk.Units
	switch i.Kind {
	case practice.Point:
		return u.TempUnit(*c.Rounds[i.At].Reading(i.Point).ShownC)
	case practice.Dash:
		return t.dashWords(c.Rounds[i.At])
	case practice.Log:
		return t.logWords(c, i.At)
	}
	r := words.CheckResult(&c, &c.Tests[i.At], u)
	said := r.Says
	for _, told := range r.Told {
		said += "\n" + told.Text
	}
	if said == "" {
		said = kit.L("window.practice.untold") // what passes says so itself
	}
	return strings.TrimSpace(said)
}

func (t teller) logWords(c cases.Case, at int) string {
	found := t.analyst.Analyse(&c)
	if at >= len(found.WarmUps) {
		return ""
	}
	var facts []string
	for _, f := range picture.WarmUpFacts(found.WarmUps[at].Result, t.desk.By()) {
		facts = append(facts, f[0]+": "+f[1])
	}
	if most, ok := evidence.HeldC(&c.Logs[at]); ok { // whoever has the curve sees it
		facts = append(facts, kit.L("window.practice.log-hottest", t.desk.Units.TempUnit(most)))
	}
	return strings.Join(facts, "; ")
}

func (t teller) dashWords(r cases.Round) string {
	var words []string
	if r.EctC != nil {
		words = append(words, kit.L("window.practice.scan", t.desk.Units.TempUnit(*r.EctC)))
	}
	if r.Gauge != "" {
		words = append(words, kit.L("window.practice.gauge", r.Gauge.Name()))
	}
	if r.Fan != "" {
		words = append(words, kit.L("window.practice.fan", r.Fan.Name()))
	}
	return strings.Join(words, ", ")
}

// longest is how many letters have room beside an item's name.
const longest = 14

func isLong(says string) bool { return len([]rune(says)) > longest }

func minutesText(m float64) string { return kit.L("window.practice.min", math.Round(m*10)/10) }
