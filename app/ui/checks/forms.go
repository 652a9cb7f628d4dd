package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

// fields are those of the sheet's kind, with the keys of the case format: the
// short ones, which stand two in a row, and what follows them.
func (s *sheet) fields() (short, rest []fyne.CanvasObject) {
	switch s.kind {
	case "pressure-hold":
		return row(
			s.press("Pressure at the start", func(t *cases.Test) **diagram.KPa { return &t.StartKPa }),
			s.press("Pressure at the end", func(t *cases.Test) **diagram.KPa { return &t.EndKPa }),
			s.temp("Temperature at the start", func(t *cases.Test) **diagram.Celsius { return &t.StartC }),
			s.temp("Temperature at the end", func(t *cases.Test) **diagram.Celsius { return &t.EndC }),
			s.number("Held for, minutes", 0, 1e5, func(t *cases.Test) **float64 { return &t.Minutes }),
		), row(note("The temperatures are those of the gauge and the neck: their air loses pressure as it cools, and that is taken off."))
	case "cap":
		return row(
			s.press("Rated, where other", func(t *cases.Test) **diagram.KPa { return &t.RatedKPa }),
			s.press("Opens at", func(t *cases.Test) **diagram.KPa { return &t.OpensKPa }),
			s.yesNo("Holds for a minute", "holds", "falls", func(t *cases.Test) **bool { return &t.Holds }),
			s.yesNo("Vacuum valve", "opens and shuts", "sticks", func(t *cases.Test) **bool { return &t.VacuumValveOK }),
		), nil
	case "combustion-gas":
		return row(pick(s, "Result", cases.Words[cases.GasResult](), gasName, func(t *cases.Test) *cases.GasResult { return &t.Result })), nil
	case "coolant":
		return s.coolant()
	case "thermostat-bench":
		return s.bench()
	case "sensor-resistance":
		return s.sensor()
	case "fan":
		return row(
			s.yesNo("Commanded", "on", "off", func(t *cases.Test) **bool { return &t.Commanded }),
			s.yesNo("Then it", "runs", "stands", func(t *cases.Test) **bool { return &t.Runs }),
			s.temp("Starts by itself at", func(t *cases.Test) **diagram.Celsius { return &t.StartsC }),
		), nil
	case "core-scan":
		return nil, row(s.face())
	}
	return s.looks()
}

// looks are the checks that are one look.
func (s *sheet) looks() (short, rest []fyne.CanvasObject) {
	switch s.kind {
	case "level":
		return row(pick(s, "Level, engine cold", cases.Words[cases.LevelState](), word[cases.LevelState], func(t *cases.Test) *cases.LevelState { return &t.State })), nil
	case "pump-drive":
		return row(
			s.yesNo("Belt", "sound and tight", "worn or loose", func(t *cases.Test) **bool { return &t.BeltOK }),
			s.yesNo("Play in the shaft", "play", "none", func(t *cases.Test) **bool { return &t.Play }),
			s.yesNo("Weep hole", "wet", "dry", func(t *cases.Test) **bool { return &t.Weep }),
		), nil
	case "hose-look":
		return row(s.yesNo("Lower hose at raised speed", "is sucked flat", "keeps its shape", func(t *cases.Test) **bool { return &t.LowerCollapses })), nil
	case "bubbles":
		return row(s.yesNo("Bubbles after bleeding", "seen", "none", func(t *cases.Test) **bool { return &t.Seen })), nil
	case "heater-flow":
		return row(pick(s, "Flow through the heater core", cases.Words[cases.HeaterFlow](), word[cases.HeaterFlow], func(t *cases.Test) *cases.HeaterFlow { return &t.Flows })), nil
	}
	return nil, nil
}

func (s *sheet) coolant() (short, rest []fyne.CanvasObject) {
	return row(
		s.temp("Freezes at", func(t *cases.Test) **diagram.Celsius { return &t.FreezeC }),
		s.number("or strength, volume %", 0, 100, func(t *cases.Test) **float64 { return &t.VolumePercent }),
		s.number("pH", 0, 14, func(t *cases.Test) **float64 { return &t.PH }),
		s.number("Stray voltage, V", -50, 50, func(t *cases.Test) **float64 { return &t.StrayV }),
		pick(s, "Looks", cases.Words[cases.Looks](), word[cases.Looks], func(t *cases.Test) *cases.Looks { return &t.Looks }),
		kit.Number(s.form, "Loop's capacity, litres", 0, 1000, func(c *cases.Case) **float64 { return &c.Loop.CapacityL }),
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

func gasName(g cases.GasResult) string {
	if g == "positive" {
		return "gas found"
	}
	return "no gas found"
}

// word names words that speak for themselves.
func word[T ~string](w T) string { return string(w) }
