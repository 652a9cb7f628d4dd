package picture

import (
	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
	"loopbook/report/chart"
)

// BothWarmUps lays the warm-up after a repair over the one before it, each from
// its engine's start. Either log may be nil. What is said of one that stands alone stands above it, since below are the words
// of the rating.
func BothWarmUps(c *cases.Case, before, after *cases.Log, resultBefore, resultAfter warmup.Result, by say.Speaker) chart.Lines {
	lines := chart.Lines{X: by.Of("chart.minutes"), Y: by.Of("chart.coolant", string(by.Units.Temperature))}
	add := func(l *cases.Log, r warmup.Result, name string, kind chart.Kind) {
		if l == nil {
			return
		}
		curve := coolant(l, r.StartS, r.StartS, by)
		curve.Name, curve.Kind = name, kind
		lines.Curves = append(lines.Curves, curve)
		if k := r.Knee; k != nil {
			lines.Marks = append(lines.Marks, chart.Mark{X: k.S / 60, Y: by.Units.FromC(k.C), Name: by.Of("chart.opens", k.C), Above: kind == chart.Main || after == nil})
		}
	}
	add(after, resultAfter, by.Say(cases.AfterRepair.Text()), chart.Main)
	add(before, resultBefore, by.Say(cases.BeforeRepair.Text()), chart.Second)
	if rated := c.Loop.ThermostatOpensC; rated != nil && len(lines.Curves) > 0 {
		lines.Levels = append(lines.Levels, chart.Level{Y: by.Units.FromC(*rated), Name: by.Of("chart.rating")})
	}
	return lines
}
