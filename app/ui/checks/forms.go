package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// fields are those of the sheet's kind, with the keys of the case format: the
// short ones, which stand two in a row, and what follows them.
func (s *sheet) fields() (short, rest []fyne.CanvasObject) {
	switch s.kind {
	case cases.PressureTest:
		return row(
			s.press(kit.L("window.checks.pressure-start"), func(t *cases.Test) **diagram.KPa { return &t.StartKPa }),
			s.press(kit.L("window.checks.pressure-end"), func(t *cases.Test) **diagram.KPa { return &t.EndKPa }),
			s.temp(kit.L("window.checks.temperature-start"), func(t *cases.Test) **diagram.Celsius { return &t.StartC }),
			s.temp(kit.L("window.checks.temperature-end"), func(t *cases.Test) **diagram.Celsius { return &t.EndC }),
			s.number(kit.L("window.checks.held-for"), units.Minutes().Clock, 0, 1440, func(t *cases.Test) **float64 { return &t.Minutes }),
		), row(note(kit.L("window.checks.pressure-note")))
	case cases.CapTest:
		return row(
			s.form.CapMark(kit.L("window.checks.cap-rated"), func(c *cases.Case) **diagram.KPa { return &s.test(c).RatedKPa }),
			s.press(kit.L("window.checks.cap-opens"), func(t *cases.Test) **diagram.KPa { return &t.OpensKPa }),
			s.yesNo(kit.L("window.checks.cap-holds"), kit.L("window.checks.cap-holds-yes"), kit.L("window.checks.cap-holds-no"), func(t *cases.Test) **bool { return &t.Holds }),
			s.yesNo(kit.L("window.checks.vacuum-valve"), kit.L("window.checks.vacuum-yes"), kit.L("window.checks.vacuum-no"), func(t *cases.Test) **bool { return &t.VacuumValveOK }),
		), nil
	case cases.GasTest:
		return row(pick(s, kit.L("window.checks.result"), cases.Words[cases.GasResult](), cases.GasResult.Name, func(t *cases.Test) *cases.GasResult { return &t.Result })), nil
	case cases.CoolantTest:
		return s.coolant()
	case cases.BenchTest:
		return s.bench()
	case cases.SensorTest:
		return s.sensor()
	case cases.FanTest:
		return row(
			s.yesNo(kit.L("window.checks.fan-commanded"), kit.L("window.checks.fan-on"), kit.L("window.checks.fan-off"), func(t *cases.Test) **bool { return &t.Commanded }),
			s.yesNo(kit.L("window.checks.fan-then"), kit.L("window.checks.fan-runs"), kit.L("window.checks.fan-stands"), func(t *cases.Test) **bool { return &t.Runs }),
			s.temp(kit.L("window.checks.fan-starts"), func(t *cases.Test) **diagram.Celsius { return &t.StartsC }),
		), nil
	case cases.CoreTest:
		return nil, row(s.face())
	}
	return s.looks()
}

// looks are the checks that are one look.
func (s *sheet) looks() (short, rest []fyne.CanvasObject) {
	switch s.kind {
	case cases.LevelTest:
		return row(pick(s, kit.L("window.checks.level"), cases.Words[cases.LevelState](), cases.LevelState.Name, func(t *cases.Test) *cases.LevelState { return &t.State })), nil
	case cases.PumpTest:
		return row(
			s.yesNo(kit.L("window.checks.belt"), kit.L("window.checks.belt-yes"), kit.L("window.checks.belt-no"), func(t *cases.Test) **bool { return &t.BeltOK }),
			s.yesNo(kit.L("window.checks.play"), kit.L("window.checks.play-yes"), kit.L("window.checks.none"), func(t *cases.Test) **bool { return &t.Play }),
			s.yesNo(kit.L("window.checks.weep"), kit.L("window.checks.weep-yes"), kit.L("window.checks.weep-no"), func(t *cases.Test) **bool { return &t.Weep }),
		), nil
	case cases.HoseTest:
		return row(s.yesNo(kit.L("window.checks.lower-hose"), kit.L("window.checks.lower-hose-yes"), kit.L("window.checks.lower-hose-no"), func(t *cases.Test) **bool { return &t.LowerCollapses })), nil
	case cases.BubblesTest:
		return row(s.yesNo(kit.L("window.checks.bubbles"), kit.L("window.checks.bubbles-yes"), kit.L("window.checks.none"), func(t *cases.Test) **bool { return &t.Seen })), nil
	case cases.HeaterTest:
		return row(pick(s, kit.L("window.checks.heater-flow"), cases.Words[cases.HeaterFlow](), cases.HeaterFlow.Name, func(t *cases.Test) *cases.HeaterFlow { return &t.Flows })), nil
	}
	return nil, nil
}

func (s *sheet) coolant() (short, rest []fyne.CanvasObject) {
	return row(
		s.form.FreezingTemp(kit.L("window.checks.freezes"), func(c *cases.Case) **diagram.Celsius { return &s.test(c).FreezeC }),
		s.number(kit.L("window.checks.strength"), units.Number, 0, 100, func(t *cases.Test) **float64 { return &t.VolumePercent }),
		s.number(kit.L("window.checks.ph"), units.Number, 0, 14, func(t *cases.Test) **float64 { return &t.PH }),
		s.number(kit.L("window.checks.stray"), units.Volts().Parse, -50, 50, func(t *cases.Test) **float64 { return &t.StrayV }),
		pick(s, kit.L("window.checks.looks"), cases.Words[cases.Looks](), cases.Looks.Name, func(t *cases.Test) *cases.Looks { return &t.Looks }),
		s.form.Volume(kit.L("window.checks.capacity"), func(c *cases.Case) **float64 { return &c.Loop.CapacityL }),
	), row(s.topUp())
}

func row(o ...fyne.CanvasObject) []fyne.CanvasObject { return o }

// two puts fields side by side; one alone keeps to its half.
func two(fields ...fyne.CanvasObject) fyne.CanvasObject {
	if len(fields) == 1 {
		fields = append(fields, container.NewStack())
	}
	return container.NewGridWithColumns(2, fields...)
}

func note(text string) fyne.CanvasObject { return kit.Paragraphs(kit.Span{Text: text, Small: true}) }
