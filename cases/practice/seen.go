package practice

import (
	"slices"

	"loopbook/cases"
)

// With is the case as somebody knows it who has those items: the complaint, the codes,
// the vehicle and how each round was walked are told from the beginning; all that was
// found out later, and the title, which often says it, are not.
func (s *Session) With(items []Item) cases.Case {
	w := s.whole
	c := cases.Case{
		Format: w.Format, Version: w.Version, ID: w.ID, Opened: w.Opened, Vehicle: w.Vehicle,
		Loop: w.Loop, Site: w.Site, Complaint: w.Complaint, Codes: w.Codes,
	}
	c.Vehicle.Extra, c.Loop.Extra, c.Complaint.Extra = nil, nil, nil
	for _, r := range w.Rounds {
		if r.Stage != cases.AfterRepair {
			c.Rounds = append(c.Rounds, bare(r))
		}
	}
	for _, i := range items {
		switch i.Kind {
		case Dash:
			r := &c.Rounds[s.RoundOf(i.At)]
			r.EctC, r.Gauge, r.Fan = w.Rounds[i.At].EctC, w.Rounds[i.At].Gauge, w.Rounds[i.At].Fan
		case Point:
			r := &c.Rounds[s.RoundOf(i.At)]
			r.Readings = append(r.Readings, *w.Rounds[i.At].Reading(i.Point))
		case Log:
			l := w.Logs[i.At]
			l.Name = ""
			c.Logs = append(c.Logs, l)
		case Test:
			c.Tests = append(c.Tests, w.Tests[i.At])
		}
	}
	return c
}

// bare is how a round was walked, without what it showed.
func bare(r cases.Round) cases.Round {
	r.EctC, r.Gauge, r.Fan, r.Readings, r.Extra = nil, "", "", nil, nil
	return r
}

// RoundOf is the index in Seen of the whole case's round, or -1.
func (s *Session) RoundOf(whole int) int {
	if s.whole.Rounds[whole].Stage == cases.AfterRepair {
		return -1
	}
	n := 0
	for _, r := range s.whole.Rounds[:whole] {
		if r.Stage != cases.AfterRepair {
			n++
		}
	}
	return n
}

// Left are the items that aren't bought yet.
func (s *Session) Left() []Item {
	return slices.DeleteFunc(s.Items(), s.Has)
}
