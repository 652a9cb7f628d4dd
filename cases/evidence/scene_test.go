package evidence_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// Conditions of testdata/trade/signatures.csv.
const (
	cold5    = "COLD5"
	warmIdle = "WIDLE"
	warm2500 = "W2500"
	hotFan   = "HIDLE_FAN"
)

const (
	outsideC = 20.0
	ratedC   = 88.0
)

// scene is a round with its temperatures, invented: a healthy loop that a test
// then breaks.
type scene struct {
	layout string
	round  cases.Round
	ectC   float64
	t      map[diagram.Point]float64
	tests  []cases.Test
	fan    cases.FanKind
}

// healthy is a healthy loop in one of the four conditions.
func healthy(layout, condition string) *scene {
	s := &scene{layout: layout, t: map[diagram.Point]float64{}}
	s.round = cases.Round{
		Label: condition, Stage: cases.BeforeRepair, Fan: cases.FanOff, Heater: cases.HeaterFull,
		MinutesSinceStart: casetest.P(30.0), EngineRPM: casetest.P(800.0), SpeedKmh: casetest.P(0.0),
		AmbientC: casetest.P(diagram.Celsius(outsideC)),
	}
	switch condition {
	case cold5:
		s.round.MinutesSinceStart = casetest.P(5.0)
		s.shut(55)
	case warmIdle:
		s.open(89, 20)
	case warm2500:
		s.round.EngineRPM = casetest.P(2500.0)
		s.open(90, 12)
	case hotFan:
		s.round.Fan = cases.FanOn
		s.open(95, 15)
	}
	return s
}

func (s *scene) inlet() bool { return s.layout != "outlet-thermostat" }

// shut sets the temperatures of a warm-up with the thermostat shut.
func (s *scene) shut(ect float64) *scene {
	s.ectC = ect
	s.set("bypass", ect-5).set("rad_out", outsideC+3).set("pump_in", outsideC+4)
	if s.inlet() { // the upper hose creeps warm
		s.set("engine_out", outsideC+0.4*(ect-outsideC)).set("rad_in", outsideC+0.25*(ect-outsideC)).set("housing", ect-10)
	} else {
		s.set("housing", ect-1).set("engine_out", outsideC+8).set("rad_in", outsideC+3)
	}
	return s.heat(ect-6, ect-14)
}

// open sets the temperatures with flow through the radiator, which takes drop.
// The fan runs where it should.
func (s *scene) open(ect, drop float64) *scene {
	s.ectC = ect
	if ect > 98 {
		s.round.Fan = cases.FanOn
	}
	s.set("engine_out", ect-3).set("rad_in", ect-4).set("bypass", ect-10)
	s.set("rad_out", ect-4-drop).set("pump_in", ect-5-drop).set("housing", ect-1)
	if s.inlet() { // a mix of bypass and lower hose
		s.set("housing", ect-2-drop)
	}
	return s.heat(ect-5, ect-12)
}

// heat sets the heater's hoses and a vent that follows them.
func (s *scene) heat(in, out float64) *scene {
	return s.set("heater_in", in).set("heater_out", out).set("vent", outsideC+0.6*(in-outsideC))
}

func (s *scene) set(p diagram.Point, t float64) *scene {
	s.t[p] = t
	return s
}

// toCase is a case with the scenes as its rounds.
func toCase(scenes ...*scene) *cases.Case {
	first := scenes[0]
	c := &cases.Case{Format: cases.Format, Version: cases.Version, ID: "invented"}
	c.Loop = cases.Loop{
		Layout: first.layout, ThermostatOpensC: casetest.P(diagram.Celsius(ratedC)), CapKPa: casetest.P(diagram.KPa(110)),
		Coolant: cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, Fan: "electric",
	}
	if first.fan != "" {
		c.Loop.Fan = first.fan
	}
	for _, s := range scenes {
		c.Rounds = append(c.Rounds, s.toRound())
		c.Tests = append(c.Tests, s.tests...)
	}
	return c
}

// toRound shows each temperature as a gun set to the surface's own emissivity
// does, which needs no correction. Housings are read on tape.
func (s *scene) toRound() cases.Round {
	r := s.round
	r.EctC = casetest.P(diagram.Celsius(s.ectC))
	for _, p := range diagram.Points() {
		t, ok := s.t[p]
		if !ok {
			continue
		}
		surface := cases.Surface{Word: "rubber"}
		if p == diagram.Housing {
			surface.Word = "tape"
		}
		r.Readings = append(r.Readings, cases.Reading{Point: p, ShownC: casetest.P(diagram.Celsius(t)), Surface: surface})
	}
	return r
}

func analyst(t testing.TB) *evidence.Analyst {
	t.Helper()
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// pressing lists the ids of the flags that ask for something, once each.
func pressing(f evidence.Findings) []string {
	var ids []string
	for _, flag := range f.Flags {
		if flag.Severity != evidence.Note && !has(ids, flag.ID) {
			ids = append(ids, flag.ID)
		}
	}
	return ids
}

func has(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

func find(f evidence.Findings, id string) *evidence.Flag {
	for i := range f.Flags {
		if f.Flags[i].ID == id {
			return &f.Flags[i]
		}
	}
	return nil
}
