package picture

import (
	"fmt"
	"math"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
)

// fewPoints are shown as points too: they were written down one by one.
const fewPoints = 40

// WarmUp is a log as a curve, with the thermostat's rating, the regulation's
// target, where the thermostat opens, and where healthy cars would be (nil: not
// known).
func WarmUp(c *cases.Case, l *cases.Log, r warmup.Result, b *diagnosis.Band, by say.Speaker) chart.Lines {
	u := by.Units
	lines := chart.Lines{X: by.Of("chart.minutes"), Y: by.Of("chart.coolant", string(u.Temperature))}
	measured := coolant(l, math.Inf(-1), 0, by)
	if b != nil {
		like := by.Of("chart.healthy-driven")
		if !l.SpeedNoted() {
			like = by.Of("chart.healthy-anyhow")
		}
		lines.Bands, measured.Name = append(lines.Bands, band(b, like, by)), by.Of("chart.measured")
	}
	lines.Curves = append(lines.Curves, measured)
	if len(measured.X) < fewPoints {
		lines.Curves = append(lines.Curves, chart.Curve{X: measured.X, Y: measured.Y, Kind: chart.Dots})
	}
	if c.Loop.ThermostatOpensC != nil {
		target := "chart.target"
		if c.Loop.Heated() {
			target = "chart.target-heated" // less than the regulation asks for (TH7)
		}
		lines.Levels = append(lines.Levels,
			chart.Level{Y: u.FromC(*c.Loop.ThermostatOpensC), Name: by.Of("chart.rating")},
			chart.Level{Y: u.FromC(r.TargetC), Name: by.Of(target)})
	}
	if k := r.Knee; k != nil {
		lines.Marks = append(lines.Marks, chart.Mark{X: (k.S + r.StartS) / 60, Y: u.FromC(k.C), Name: by.Of("chart.opens", k.C), Above: true})
	}
	return lines
}

// coolant is a log's curve from a second on, by the minutes since another. A gap that the analysis bridges is none: many
// scan tools ask for one value after the other, so that every other row lacks this one.
func coolant(l *cases.Log, from, zero float64, by say.Speaker) chart.Curve {
	var c chart.Curve
	last, lacks := math.NaN(), false // when the coolant was known last, and whether a row lacked it since
	for i, s := range l.TimeS[:min(len(l.TimeS), len(l.EctC))] {
		switch {
		case s < from:
			continue
		case math.IsNaN(l.EctC[i]):
			lacks = true
			continue
		case lacks && s-last > warmup.BridgedS:
			c.X, c.Y = append(c.X, (last-zero)/60), append(c.Y, math.NaN())
		}
		c.X, c.Y = append(c.X, (s-zero)/60), append(c.Y, by.Units.FromC(diagram.Celsius(l.EctC[i])))
		last, lacks = s, false
	}
	return c
}

func band(b *diagnosis.Band, name string, by say.Speaker) chart.Band {
	u := by.Units
	out := chart.Band{Name: name}
	for i, s := range b.TimeS {
		out.X = append(out.X, s/60)
		out.Low = append(out.Low, u.FromC(diagram.Celsius(b.LowC[i])))
		out.High = append(out.High, u.FromC(diagram.Celsius(b.HighC[i])))
	}
	return out
}

// WarmUpFacts are what a log tells, each with its name.
func WarmUpFacts(r warmup.Result, by say.Speaker) [][2]string {
	var out [][2]string
	add := func(what, value say.Text) { out = append(out, [2]string{by.Say(what), by.Say(value)}) }
	if r.StartC != nil {
		add(say.Of("warm-up.starts-at"), say.Value(*r.StartC))
	}
	for _, level := range warmup.Levels() {
		if s, ok := r.SecondsTo[level]; ok {
			add(say.Of("warm-up.to", diagram.Celsius(level)), minutes(s))
		}
	}
	if r.Knee != nil {
		add(say.Of("warm-up.opens"), say.Of("warm-up.opens-at", r.Knee.C, minutes(r.Knee.S)))
	}
	if r.Plateau != nil {
		add(say.Of("warm-up.holds"), say.Value(r.Plateau.C))
	}
	if len(r.FanCycles) > 0 {
		add(say.Of("warm-up.fan-cycles"), say.Value(len(r.FanCycles)))
	}
	if reaches := r.ReachesRegulating; reaches != nil {
		add(say.Of("warm-up.reaches"), yesNo(*reaches))
	}
	return out
}

func minutes(s float64) say.Text {
	return say.Of("warm-up.minutes", fmt.Sprintf("%d:%02d", int(s)/60, int(s)%60))
}

func yesNo(is bool) say.Text {
	if is {
		return say.Of("yes")
	}
	return say.Of("no")
}
