package checks

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// What no thermostat lifts by, and no sensor of an engine has (judgement): a
// number beyond is a slip of the hand.
const (
	mostLiftMM = 30
	mostOhm    = 1e6
)

// bench is the form of a thermostat in heated water.
func (s *sheet) bench() (short, rest []fyne.CanvasObject) {
	return row(
			s.temp(kit.L("window.checks.rated-opens"), func(t *cases.Test) **diagram.Celsius { return &t.RatedOpensC }),
			s.temp(kit.L("window.checks.rated-full"), func(t *cases.Test) **diagram.Celsius { return &t.RatedFullC }),
			s.number(kit.L("window.checks.rated-lift"), units.Millimetres().Parse, 0, 100, func(t *cases.Test) **float64 { return &t.RatedLiftMM }),
		), row(
			titled(kit.L("window.checks.water-lift"), kit.L("window.checks.water-lift-note")),
			s.table(&table{
				what:    kit.L("window.checks.point"),
				columns: []column{benchTemp(kit.L("window.checks.water"), waterC), benchNumber(kit.L("window.checks.lift"), units.Millimetres(), mostLiftMM, liftMM)},
				length:  func(t *cases.Test) int { return len(t.Points) },
				grow:    growBench,
				drop:    dropBench,
				ending:  s.heating,
			}),
		)
}

func titled(title, text string) fyne.CanvasObject {
	return container.New(kit.Tight{More: 2}, kit.Heading(title), note(text))
}

func waterC(p *cases.BenchPoint) **diagram.Celsius { return &p.WaterC }
func liftMM(p *cases.BenchPoint) **float64         { return &p.LiftMM }
func tempC(p *cases.BenchPoint) **diagram.Celsius  { return &p.TempC }
func ohm(p *cases.BenchPoint) **float64            { return &p.Ohm }

// heating says whether the water of a line is warming or cooling.
func (s *sheet) heating(row int) ending {
	choice := kit.NewChoice([]answer{yes, no}, func(a answer) string {
		if a == yes {
			return kit.L("window.checks.warming")
		}
		return kit.L("window.checks.cooling")
	}, func(a answer) {
		s.change(kit.L("window.checks.water"), func(t *cases.Test) {
			if row < len(t.Points) {
				t.Points[row].Heating = truth(a)
			}
		})
	})
	return ending{choice.Select, func(t *cases.Test) {
		if row >= len(t.Points) {
			choice.Hide()
			return
		}
		choice.Show()
		choice.Put(said(t.Points[row].Heating))
	}}
}

// growBench adds a line that goes the way of the one before.
func growBench(t *cases.Test) {
	p := cases.BenchPoint{}
	if t.Kind == cases.BenchTest {
		up := true
		if n := len(t.Points); n > 0 && t.Points[n-1].Heating != nil {
			up = *t.Points[n-1].Heating
		}
		p.Heating = &up
	}
	t.Points = append(t.Points, p)
}

func dropBench(t *cases.Test, row int) {
	if p := t.Points[row]; p.WaterC == nil && p.LiftMM == nil && p.TempC == nil && p.Ohm == nil {
		t.Points = slices.Delete(t.Points, row, row+1)
	}
}

// sensor is the form of a sensor's resistance: measured beside the reference.
func (s *sheet) sensor() (short, rest []fyne.CanvasObject) {
	measured := s.table(&table{
		what:    kit.L("window.checks.measured"),
		columns: []column{benchTemp(kit.L("window.checks.at"), tempC), benchNumber(kit.L("window.checks.ohm"), units.Ohms(), mostOhm, ohm)},
		length:  func(t *cases.Test) int { return len(t.Points) },
		grow:    growBench,
		drop:    dropBench,
	})
	reference := s.table(&table{
		what: kit.L("window.checks.reference"),
		columns: []column{
			pointTemp(kit.L("window.checks.at"), func(t *cases.Test, i int) **diagram.Celsius { return &t.Reference[i].TempC }),
			pointNumber(kit.L("window.checks.ohm"), units.Ohms(), mostOhm, func(t *cases.Test, i int) **float64 { return &t.Reference[i].Ohm }),
		},
		length: func(t *cases.Test) int { return len(t.Reference) },
		grow:   func(t *cases.Test) { t.Reference = append(t.Reference, cases.OhmPoint{}) },
		drop: func(t *cases.Test, i int) {
			if p := t.Reference[i]; p.TempC == nil && p.Ohm == nil {
				t.Reference = slices.Delete(t.Reference, i, i+1)
			}
		},
	})
	return nil, row(
		note(kit.L("window.checks.reference-note")),
		two(container.New(kit.Tight{}, kit.Heading(kit.L("window.checks.measured")), measured), container.New(kit.Tight{}, kit.Heading(kit.L("window.checks.reference")), reference)),
	)
}

func benchTemp(title string, of func(*cases.BenchPoint) **diagram.Celsius) column {
	return pointTemp(title, func(t *cases.Test, i int) **diagram.Celsius { return of(&t.Points[i]) })
}

func benchNumber(title string, in units.Measure, most float64, of func(*cases.BenchPoint) **float64) column {
	return pointNumber(title, in, most, func(t *cases.Test, i int) **float64 { return of(&t.Points[i]) })
}

func pointTemp(title string, at func(*cases.Test, int) **diagram.Celsius) column {
	return column{
		title: func(u units.Set) string { return title + ", " + string(u.Temperature) },
		read: func(t *cases.Test, i int, u units.Set) string {
			return kit.Written(*at(t, i), u.Temp)
		},
		write: func(t *cases.Test, i int, text string, u units.Set) error {
			return kit.Set(at(t, i), text, u.ParseTemp)
		},
	}
}

// pointNumber takes numbers from 0 to most.
func pointNumber(title string, in units.Measure, most float64, at func(*cases.Test, int) **float64) column {
	return column{
		title: func(units.Set) string { return title },
		read:  func(t *cases.Test, i int, _ units.Set) string { return kit.Written(*at(t, i), kit.Plain[float64]) },
		write: func(t *cases.Test, i int, text string, _ units.Set) error {
			return kit.Set(at(t, i), text, kit.Between(in.Parse, 0, most, kit.Plain[float64]))
		},
	}
}
