package verdict

import (
	"strings"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/verdict"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// confirming is what the case holds from before the repair that a cause can be
// confirmed by.
func (s *Screen) confirming() []view.Evidence {
	d := s.desk
	out := s.roundsMeasured()
	for i, l := range d.Case.Logs {
		if l.Stage != cases.AfterRepair {
			out = append(out, view.Evidence{Word: cases.ByWarmUp, Text: logLine(d, l.Name, logTold(d, i))})
		}
	}
	for i := range d.Case.Tests {
		t := &d.Case.Tests[i]
		if t.Stage == cases.AfterRepair {
			continue
		}
		if r := words.CheckResult(&d.Case, t, d.Units); r.Says != "" {
			out = append(out, view.Evidence{Word: string(t.Kind), Text: kit.L("window.verdict.check", t.Kind.Name(), strings.TrimSuffix(r.Says, "."))})
		}
	}
	return out
}

func logLine(d *desk.Desk, name, told string) string {
	if name == "" {
		return kit.L("window.verdict.log", told)
	}
	return kit.L("window.verdict.log-named", d.By().Say(cases.LogTitle(name)), told)
}

func (s *Screen) roundsMeasured() []view.Evidence {
	d := s.desk
	rounds, off := 0, 0
	for i, r := range d.Found.Rounds {
		if len(r.Readings) == 0 || d.Case.Rounds[i].Stage == cases.AfterRepair {
			continue
		}
		rounds++
		off += r.Out()
	}
	if rounds == 0 {
		return nil
	}
	return []view.Evidence{{Word: cases.ByHoseMap, Text: kit.L("window.verdict.rounds", rounds, off)}}
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
