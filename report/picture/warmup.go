package picture

import (
	"fmt"
	"math"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/units"
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
)

// fewPoints are shown as points too: they were written down one by one.
const fewPoints = 40

// WarmUp is a log as a curve, with the thermostat's rating, the regulation's
// target, where the thermostat opens, and where healthy cars would be (nil: not
// known).
func WarmUp(c *cases.Case, l *cases.Log, r warmup.Result, b *diagnosis.Band, u units.Set) chart.Lines {
	lines := chart.Lines{X: "minutes", Y: "coolant, " + string(u.Temperature)}
	measured := chart.Curve{X: make([]float64, len(l.TimeS)), Y: make([]float64, len(l.TimeS))}
	for i, s := range l.TimeS {
		measured.X[i], measured.Y[i] = s/60, math.NaN()
		if i < len(l.EctC) {
			measured.Y[i] = u.FromC(diagram.Celsius(l.EctC[i]))
		}
	}
	if b != nil {
		like := "healthy, driven like this"
		if len(l.EngineRPM) == 0 && len(l.SpeedKmh) == 0 {
			like = "healthy, if it idles"
		}
		lines.Bands, measured.Name = append(lines.Bands, band(b, like, u)), "measured"
	}
	lines.Curves = append(lines.Curves, measured)
	if len(measured.X) < fewPoints {
		lines.Curves = append(lines.Curves, chart.Curve{X: measured.X, Y: measured.Y, Kind: chart.Dots})
	}
	if c.Loop.ThermostatOpensC != nil {
		lines.Levels = append(lines.Levels,
			chart.Level{Y: u.FromC(*c.Loop.ThermostatOpensC), Name: "thermostat's rating"},
			chart.Level{Y: u.FromC(r.TargetC), Name: "to be reached (regulation)"})
	}
	if k := r.Knee; k != nil {
		lines.Marks = append(lines.Marks, chart.Mark{X: (k.S + r.StartS) / 60, Y: u.FromC(k.C), Name: "opens, " + u.TempUnit(k.C)})
	}
	return lines
}

func band(b *diagnosis.Band, name string, u units.Set) chart.Band {
	out := chart.Band{Name: name}
	for i, s := range b.TimeS {
		out.X = append(out.X, s/60)
		out.Low = append(out.Low, u.FromC(diagram.Celsius(b.LowC[i])))
		out.High = append(out.High, u.FromC(diagram.Celsius(b.HighC[i])))
	}
	return out
}

// WarmUpFacts are what a log tells, each with its name.
func WarmUpFacts(r warmup.Result, u units.Set) [][2]string {
	var out [][2]string
	add := func(what, value string) { out = append(out, [2]string{what, value}) }
	if r.StartC != nil {
		add("Starts at", u.TempUnit(*r.StartC))
	}
	for _, level := range warmup.Levels() {
		if s, ok := r.SecondsTo[level]; ok {
			add("To "+u.TempUnit(diagram.Celsius(level)), minutes(s))
		}
	}
	if r.Knee != nil {
		add("Thermostat opens", fmt.Sprintf("%s, %s", u.TempUnit(r.Knee.C), minutes(r.Knee.S)))
	}
	if r.Plateau != nil {
		add("Holds", u.TempUnit(r.Plateau.C))
	}
	if len(r.FanCycles) > 0 {
		add("Fan cycles", fmt.Sprint(len(r.FanCycles)))
	}
	if reaches := r.ReachesRegulating; reaches != nil {
		add("Reaches its target", map[bool]string{true: "yes", false: "no"}[*reaches])
	}
	return out
}

func minutes(s float64) string { return fmt.Sprintf("%d:%02d min", int(s)/60, int(s)%60) }
