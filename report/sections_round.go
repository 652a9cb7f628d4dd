package report

import (
	"fmt"
	"strings"
	"time"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/report/picture"
)

// drawingShare is the most of a page's height that a drawing takes.
const drawingShare = 0.5

func (r *record) rounds() {
	if len(r.c.Rounds) == 0 {
		r.blank = append(r.blank, "rounds with the gun")
	}
	for i := range r.c.Rounds {
		r.round(i)
	}
}

func (r *record) round(i int) {
	list := r.conditions(i)
	keep := r.factsHeight(list, 3)
	var d drawing.Picture
	if r.loop != nil {
		d = drawing.Draw(r.loop, picture.State(r.loop, r.c, r.f, i, r.by), true)
		keep += d.Height * r.drawScale(d, r.mostDrawn())
	}
	r.heading(join(": ", fmt.Sprintf("Round %d", i+1), r.c.Rounds[i].Label), keep)
	r.facts(list, 3)
	if r.loop != nil {
		r.draw(d, r.mostDrawn())
		r.y += 4
	}
	r.readings(i)
	r.deltas(i)
	r.flags(i)
}

func (r *record) mostDrawn() float64 { return (r.bottom() - margin) * drawingShare }

// conditions are how the engine, the air and the gun were.
func (r *record) conditions(i int) facts {
	round := &r.c.Rounds[i]
	var list facts
	list.add("Stage", round.Stage.Name())
	list.add("Taken", r.taken(round.Taken))
	list.add("Since the start", number(round.MinutesSinceStart, "min"))
	list.add("Engine speed", number(round.EngineRPM, "rpm"))
	list.add("Road speed", r.say.speed(round.SpeedKmh))
	list.add("Fan", round.Fan.Name())
	list.add("Heater", round.Heater.Name())
	list.add("Air outside", r.say.temp(r.c.Ambient(i)))
	list.add("Sensor", r.say.temp(round.EctC))
	list.add("Dash gauge", round.Gauge.Name())
	list.add("Gun set to", number(round.Gun.Emissivity, ""))
	list.add("Mirrored", r.say.temp(round.Gun.ReflectedC))
	if found := r.found(i); found.EngineC != nil {
		list.add("Engine at", join(", by ", r.say.temp(found.EngineC), r.say.by().Say(found.EngineBy)))
	}
	return list
}

// taken is a round's time in the zone that the head names.
func (r *record) taken(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(r.c.Opened.Location()).Format("2006-01-02 15:04")
}

// found is what the findings say about a round, or nothing.
func (r *record) found(i int) evidence.Round {
	if i >= len(r.f.Rounds) {
		return evidence.Round{}
	}
	return r.f.Rounds[i]
}

func (r *record) deltas(i int) {
	var rows [][]cell
	for _, d := range r.f.Deltas {
		if d.Round != i {
			continue
		}
		out := d.State == evidence.Low || d.State == evidence.High
		rows = append(rows, []cell{
			{r.deltaTitle(d), out}, {text: end(d.From) + " − " + end(d.To)}, {r.say.Delta(d.ValueK), out},
			{text: r.say.span(d)}, {stateWord(d.State), out},
		})
	}
	if rows == nil {
		return
	}
	r.subheading("Differences", tableStart)
	r.table([]column{{"Difference", 20}, {"From − to", 40}, {"Value", 10}, {"Expected", 16}, {"State", 14}}, rows)
}

// deltaTitle is the difference in the layout's words.
func (r *record) deltaTitle(d evidence.Delta) string {
	if r.loop != nil {
		for _, at := range r.loop.Deltas {
			if at.Name == d.Name {
				return capital(at.Title)
			}
		}
	}
	return capital(strings.ReplaceAll(d.Name, "-", " "))
}

func end(word string) string {
	if word == evidence.Sensor {
		return "Scan tool"
	}
	return diagram.Point(word).String()
}
