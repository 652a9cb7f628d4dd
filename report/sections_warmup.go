package report

import (
	"errors"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/say"
	"loopbook/report/chart"
	"loopbook/report/picture"
)

// chartHeight is of a warm-up's curve.
const chartHeight = 170

// warmUps are the logs as curves, each with what it tells.
func (s *sheet) warmUps() {
	for i := range s.f.WarmUps {
		s.warmUp(i)
	}
	s.bothWarmUps()
}

// bothWarmUps lays the warm-ups before and after the repair over each other.
func (s *sheet) bothWarmUps() {
	if s.m.Proof == nil {
		return
	}
	for _, p := range s.m.Proof.Logs {
		if p.Before < 0 || p.After < 0 {
			continue
		}
		s.heading(s.by.Of("record.both-warm-ups"), chartHeight+10)
		s.plot(s.m.bothWarmUps(p, s.by), 1, chartHeight)
	}
}

// bothWarmUps is the curve of two logs that belong together.
func (m Material) bothWarmUps(p proof.LogPair, by say.Speaker) chart.Lines {
	was, is := &m.Found.WarmUps[p.Before], &m.Found.WarmUps[p.After]
	return picture.BothWarmUps(m.Case, &m.Case.Logs[p.Before], &m.Case.Logs[p.After], was.Result, is.Result, by)
}

func (s *sheet) warmUp(i int) {
	l, w := &s.c.Logs[i], s.f.WarmUps[i]
	name := say.Of("record.log")
	if l.Name != "" {
		name = cases.LogTitle(l.Name)
	}
	s.heading(s.by.Of("record.warm-up", say.List(name, l.Stage.Text())), chartHeight+4*bodyStyle.lead())
	curve := picture.WarmUp(s.c, l, w.Result, nil, s.by)
	err := s.place(curve, 1, chartHeight)
	if errors.Is(err, chart.ErrEmpty) {
		s.paragraph(s.by.Of("record.log-empty"), bodyStyle)
		return
	}
	s.y += bodyStyle.lead()
	var list facts
	for _, f := range picture.WarmUpFacts(w.Result, s.by) {
		list.note(say.Own(f[0]), f[1])
	}
	s.facts(list, 2)
}
