package report

import (
	"time"

	"loopbook/cases/evidence"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// drawingShare is the most of a page's height that a drawing takes: its words are
// 6 points high on Letter, and the readings of a dozen points still stand under it.
const drawingShare = 0.43

// leastDrawn is the height, in points, that a drawing goes over to the next page
// for: its words are then 5.2 points high.
const leastDrawn = 255

func (s *sheet) rounds() {
	if len(s.c.Rounds) == 0 {
		s.none(say.Of("record.rounds-none"))
	}
	for i := range s.c.Rounds {
		if !s.c.Rounds[i].TellsWarmth() {
			continue // it was only begun
		}
		s.round(i, s.f, s.mostDrawn(), 0)
		s.readings(i)
		s.deltas(i)
		s.flags(i)
	}
	s.hoseMap()
}

// hoseMap are all rounds as curves along the flow.
func (s *sheet) hoseMap() {
	const height = 250
	if s.loop == nil || len(s.c.Rounds) < 2 {
		return
	}
	if lines, ok := picture.HoseMap(s.loop, s.c, s.f, s.by); ok {
		s.heading(s.by.Of("record.along-flow"), height+10)
		s.plot(lines, 1, height)
	}
}

// round writes a round's conditions and, where the layout is known, its drawing by what was found: no higher than most,
// and with room for what follows under it.
func (s *sheet) round(i int, f evidence.Findings, most, follows float64) {
	const gap = 4
	under := gap + follows
	list := s.conditions(i)
	keep := s.factsHeight(list, 3) + under
	var d drawing.Picture
	if s.loop != nil {
		state := picture.State(s.loop, s.c, f, i, s.by)
		if s.unjudged {
			state.Thermostat = drawing.NotKnown // it is read from the hoses
		}
		d = drawing.Draw(s.loop, state, true)
		keep += d.Height * s.drawScale(d, leastDrawn)
	}
	s.heading(s.by.Say(s.roundName(i)), keep)
	s.facts(list, 3)
	if s.loop != nil {
		s.draw(d, min(most, s.bottom()-s.y-under))
		s.y += gap
	}
}

func (s *sheet) roundName(i int) say.Text {
	if l := s.c.Rounds[i].Title(); !l.Empty() {
		return say.Of("record.round", i+1, l)
	}
	return say.Of("record.round-bare", i+1)
}

func (s *sheet) mostDrawn() float64 { return (s.bottom() - margin) * drawingShare }

// conditions are how the engine, the air and the gun were.
func (s *sheet) conditions(i int) facts {
	round := &s.c.Rounds[i]
	var list facts
	list.add(say.Of("record.stage"), round.Stage.Text())
	if !s.unjudged { // without its customer a case has days and hours that aren't its own
		list.note(say.Of("record.taken"), s.taken(round.Taken))
	}
	list.add(say.Of("record.since-start"), quantity("record.minutes", round.MinutesSinceStart))
	list.add(say.Of("record.engine-speed"), quantity("record.rpm", round.EngineRPM))
	list.add(say.Of("record.road-speed"), speed(round.SpeedKmh))
	list.add(say.Of("record.fan"), round.Fan.Text())
	list.add(say.Of("record.heater"), round.Heater.Text())
	list.add(say.Of("record.outside"), temp(s.c.Ambient(i)))
	list.add(say.Of("record.sensor"), temp(round.EctC))
	list.add(say.Of("record.gauge"), round.Gauge.Text())
	list.note(say.Of("record.gun-set"), s.decimal(round.Gun.Emissivity))
	list.add(say.Of("record.mirrored"), temp(round.Gun.ReflectedC))
	if found := s.f.Round(i); found.EngineC != nil {
		list.add(say.Of("record.engine-at"), say.Of("record.by", temp(found.EngineC), found.EngineBy))
	}
	return list
}

// taken is a round's time in the zone that the head names.
func (s *sheet) taken(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(s.c.Opened.Location()).Format("2006-01-02 15:04")
}

// deltas are the round's differences that there is a range for: the others are
// plain sums of the readings above.
func (s *sheet) deltas(i int) {
	var rows [][]cell
	for _, d := range s.f.Deltas {
		if d.Round != i || d.State == evidence.Unknown {
			continue
		}
		out := d.State.Out()
		rows = append(rows, []cell{
			{s.by.Of("capital", say.DeltaName(d.Name)), out}, {text: s.by.Say(end(d.From)) + " − " + s.by.Say(end(d.To))},
			{s.by.Say(say.Value(d.ValueK)), out}, {text: s.by.Say(span(d))}, {s.by.Say(deltaState(d)), out},
		})
	}
	if rows == nil {
		return
	}
	columns := []column{{s.by.Of("record.difference"), 22}, {s.by.Of("record.from-to"), 38}, {s.by.Of("record.value"), 10}, {s.by.Of("record.expected"), 16}, {s.by.Of("record.state"), 14}}
	s.subheading(s.by.Of("record.differences"), s.tableKeep(columns, rows))
	s.table(columns, rows)
}

func end(word string) say.Text {
	if word == evidence.Sensor {
		return say.Of("record.scan-tool")
	}
	return say.Of("drawing.point." + word)
}
