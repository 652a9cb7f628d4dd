// Package picture joins a layout, a case and its findings to the state that
// the drawing shows. The window and the paper use the same.
package picture

import (
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
)

// State is what the drawing of a round shows, as the speaker says it. A round
// that the case doesn't have gives the bare loop with its scales.
func State(l *diagram.Loop, c *cases.Case, f evidence.Findings, round int, by say.Speaker) drawing.State {
	u := by.Units
	s := drawing.State{
		By:     by,
		Points: map[diagram.Point]drawing.PointState{},
		Deltas: map[string]drawing.DeltaState{},
		Unit:   string(u.Temperature),
		ScaleText: [3]string{
			u.Temp(drawing.ScaleLowC), u.Temp((drawing.ScaleLowC + drawing.ScaleHighC) / 2), u.TempUnit(drawing.ScaleHighC),
		},
	}
	if round < 0 || round >= len(c.Rounds) || round >= len(f.Rounds) {
		return s
	}
	r, found := &c.Rounds[round], f.Rounds[round]
	for _, at := range l.Points {
		s.Points[at.Point] = point(r.Reading(at.Point), found, at.Point, by)
	}
	for _, d := range f.Deltas {
		if d.Round == round {
			s.Deltas[d.Name] = delta(d, by)
		}
	}
	s.Thermostat, s.Doubt = opening(l, found, evidence.AirC(c, round)), doubt(f.Flags, round)
	s.Fan, s.FanOn = fan(r.Fan, by)
	if r.EctC != nil {
		s.Sensor = by.Of("drawing.sensor", *r.EctC)
	}
	s.Bottle = level(c.Tests, r.Stage, by)
	if found.CapShut {
		s.Caution = by.Of("drawing.hot", cases.OpenBelowC)
	}
	return s
}

func point(shown *cases.Reading, found evidence.Round, p diagram.Point, by say.Speaker) drawing.PointState {
	var s drawing.PointState
	u := by.Units
	if want, ok := found.Expected[p]; ok {
		low, high := want.LowC, want.HighC
		s.LowC, s.HighC = &low, &high
		s.Range = u.TempRange(low, high)
	}
	if shown == nil {
		return s
	}
	if shown.CantReach() {
		s.Mark = drawing.CantReach
		return s
	}
	reading, ok := found.Readings[p]
	switch {
	case !ok && shown.ShownC == nil: // a surface alone was noted
		return s
	case !ok: // no coolant can have it: of an older program, or imported
		s.Text, s.Mark, s.Range, s.Note = by.Fill("{0.1#}", *shown.ShownC), drawing.Repeat, "", by.Of("drawing.repeat")
		return s
	}
	value := reading.TrueC
	s.Text, s.TrueC, s.Mark = by.Fill("{0.1#}", value), &value, drawing.Kept
	switch {
	case reading.Impossible:
		s.Mark, s.Range, s.Note = drawing.Repeat, "", by.Of("drawing.repeat")
	case reading.Doubtful:
		s.Mark, s.Range, s.Note = drawing.Repeat, "", by.Of("drawing.repeat-on-tape")
	case reading.State == evidence.Low:
		s.Mark, s.Note = drawing.OutOfRange, off(*s.LowC-value, "under", by)
	case reading.State == evidence.High:
		s.Mark, s.Note = drawing.OutOfRange, off(value-*s.HighC, "over", by)
	case reading.CorrectionK > 0.5 || reading.CorrectionK < -0.5:
		s.Note = by.Of("drawing.gun", reading.ShownC)
	}
	return s
}

// off is how far a reading is under or over its range, as the record's table says it too.
func off(c diagram.Celsius, way string, by say.Speaker) string {
	if c < 0.5 {
		return by.Of("drawing.just-" + way)
	}
	return strings.Replace(by.Of("drawing."+way, diagram.DeltaK(c)), " F°", "°", 1) // there is no room for more
}

func delta(d evidence.Delta, by say.Speaker) drawing.DeltaState {
	u := by.Units
	s := drawing.DeltaState{Text: u.Delta(d.ValueK), ValK: d.ValueK, LowK: d.ExpectedLowK, HighK: d.ExpectedHighK, Mark: drawing.Kept}
	if d.State.Out() {
		s.Mark = drawing.OutOfRange
	}
	switch {
	case s.LowK != nil && s.HighK != nil:
		s.Range = u.DeltaRange(*s.LowK, *s.HighK)
	case s.LowK != nil:
		s.Range = by.Of("drawing.delta-over", *s.LowK)
	case s.HighK != nil:
		s.Range = by.Of("drawing.delta-up-to", *s.HighK)
	}
	switch { // what is out and reads as its bound is told to a tenth, beside the bound that it is out of
	case d.State == evidence.Low && u.Delta(*s.LowK) == s.Text:
		s.Text, s.Range = by.Fill("{0.1}", d.ValueK), by.Fill("≥ {0.1}", *s.LowK)
	case d.State == evidence.High && u.Delta(*s.HighK) == s.Text:
		s.Text, s.Range = by.Fill("{0.1}", d.ValueK), by.Fill("≤ {0.1}", *s.HighK)
	}
	return s
}

// opening reads from the hoses how far the thermostat seems to stand open: by
// the lower hose at an inlet, by the upper hose at an outlet.
func opening(l *diagram.Loop, found evidence.Round, air diagram.Celsius) drawing.Opening {
	behind, before := diagram.EngineOut, diagram.Housing
	if l.Thermostat == diagram.Inlet {
		behind, before = diagram.PumpIn, diagram.EngineOut
	}
	read := func(p diagram.Point) (evidence.Reading, bool) {
		r, ok := found.Readings[p]
		return r, ok && r.Usable()
	}
	b, ok := read(behind)
	if !ok && l.Thermostat == diagram.Inlet {
		b, ok = read(diagram.RadOut)
	}
	if !ok {
		return drawing.NotKnown
	}
	engine := found.EngineC
	if a, ok := read(before); ok {
		engine = &a.TrueC
	}
	if engine == nil {
		return drawing.NotKnown
	}
	step := *engine - b.TrueC
	if found.Regime == evidence.Shut || found.Regime == evidence.Below {
		return openingOfACool(float64(step), float64(*engine-air))
	}
	switch {
	case l.Thermostat == diagram.Outlet && step > 25: // DT6, common practice
		return drawing.Shut
	case l.Thermostat == diagram.Outlet && step > 8:
		return drawing.ALittleOpen
	case l.Thermostat == diagram.Inlet && step > 50 && b.TrueC <= air+15: // DT7, common practice; warmer a little comes through
		return drawing.Shut
	case l.Thermostat == diagram.Inlet && step > 25:
		return drawing.ALittleOpen
	}
	return drawing.Open
}

// openingOfACool is of an engine under what its thermostat holds, where no step is large yet: a hose that doesn't follow
// the engine from the air's temperature has a shut thermostat before it (DT9, common practice; the shares are judgement).
// One that is as cool as the air tells nothing.
func openingOfACool(step, warmed float64) drawing.Opening {
	switch {
	case warmed < 10:
		return drawing.NotKnown
	case step > warmed/2:
		return drawing.Shut
	case step > warmed/4:
		return drawing.ALittleOpen
	}
	return drawing.Open
}

// doubt reports whether a flag puts the radiator's flow in doubt.
func doubt(flags []evidence.Flag, round int) bool {
	return slices.ContainsFunc(flags, func(f evidence.Flag) bool {
		return f.Round == round && (f.ID == "thermostat-not-opening" || f.ID == "flow-restricted")
	})
}

func fan(s cases.FanState, by say.Speaker) (word string, on bool) {
	switch s {
	case cases.FanOn:
		return by.Of("drawing.fan-on"), true
	case cases.FanOff:
		return by.Of("drawing.fan-off"), false
	}
	return by.Of("drawing.fan"), false
}

func level(tests []cases.Test, stage cases.Stage, by say.Speaker) string {
	for i := len(tests) - 1; i >= 0; i-- {
		if tests[i].State != "" && stage.Holds(tests[i].Stage) {
			return by.Of("drawing.level-" + string(tests[i].State))
		}
	}
	return ""
}
