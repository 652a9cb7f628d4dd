package report_test

import (
	"bytes"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/report"
)

var opened = time.Date(2025, 2, 3, 9, 30, 0, 0, time.FixedZone("", 3600))

func p[T any](v T) *T { return &v }

// full is an invented case that has something of everything.
func full() *cases.Case {
	c := &cases.Case{
		Format: cases.Format, Version: cases.Version, ID: "CASE-0042", Opened: opened,
		Title: "Overheats in traffic, cabin stays cool",
		Vehicle: cases.Vehicle{Make: "Maker A", Model: "estate", Year: p(2014), Engine: "1.6 4-cylinder",
			Motive: cases.Hybrid, VIN: "TESTVIN0000000042", OdometerKm: p(154200.0)},
		Customer: cases.Customer{Name: "Customer 7", Contact: "counter"},
		Loop: cases.Loop{Layout: "inlet-thermostat", ThermostatOpensC: p(diagram.Celsius(88)), ThermostatFullC: p(diagram.Celsius(102)),
			CapKPa: p(diagram.KPa(110)), Coolant: cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: p(50.0)},
			CapacityL: p(6.5), Fan: "electric"},
		Site:      cases.Site{AmbientC: p(diagram.Celsius(21)), AltitudeM: p(diagram.Metre(300))},
		Complaint: cases.Complaint{Text: "The gauge climbs while standing in a queue.", Symptoms: []cases.Symptom{"overheats-idle", "cabin-heat-poor"}},
		Codes: []cases.Code{{Code: "P0217", State: "stored", FreezeFrame: cases.FreezeFrame{EctC: p(diagram.Celsius(118)), RPM: p(850.0), SpeedKmh: p(0.0)}},
			{Code: "p1299", State: "pending"}},
		Logs:   []cases.Log{{Name: "warm-up", Stage: cases.BeforeRepair, TimeS: []float64{0, 60, 120}, EctC: []float64{12, 20, 31}}},
		Tests:  tests(),
		Photos: []cases.Photo{{File: "photos/1.jpg", Caption: "fins full of fluff", Point: diagram.RadOut}},
		Tags:   []string{"summer", "teaching"}, Lesson: "Measure both ends before the part is ordered.",
		Verdict: cases.Verdict{Cause: "radiator-restricted", ConfirmedBy: "core-scan", Note: "A cold patch over the lower third."},
		Repair: cases.Repair{Parts: []cases.Part{{Name: "Radiator", Quantity: p(1.0), Price: p(189.5)}, {Name: "Coolant, litres", Quantity: p(6.5)}},
			LabourHours: p(2.4), AccessNote: "The bumper's cover comes off first."},
	}
	c.Rounds = []cases.Round{hotIdle(), repaired()}
	return c
}

func hotIdle() cases.Round {
	return cases.Round{
		Label: "hot idle, fan running", Stage: cases.BeforeRepair, Taken: opened.Add(40 * time.Minute),
		MinutesSinceStart: p(31.0), EngineRPM: p(820.0), SpeedKmh: p(0.0), Fan: cases.FanOn, Heater: cases.HeaterFull,
		AmbientC: p(diagram.Celsius(21)), EctC: p(diagram.Celsius(113)), Gauge: cases.GaugeRed,
		Gun: cases.Gun{Emissivity: p(0.95), ReflectedC: p(diagram.Celsius(21))},
		Readings: []cases.Reading{
			on("plastic", diagram.EngineOut, 104.5), on("rubber", diagram.RadIn, 90), on("rubber", diagram.RadIn, 103.5),
			on("rubber", diagram.RadOut, 63), on("rubber", diagram.PumpIn, 61.5), on("cast-iron", diagram.Housing, 84.5),
			{Point: diagram.Bypass}, on("rubber", diagram.HeaterIn, 97), on("rubber", diagram.HeaterOut, 58),
			on("", diagram.AirOn, 24), on("", diagram.AirOff, 39), on("", diagram.Vent, 31.5),
		},
	}
}

func repaired() cases.Round {
	return cases.Round{
		Label: "warm idle after the repair", Stage: cases.AfterRepair, Taken: opened.Add(50 * time.Hour),
		MinutesSinceStart: p(26.0), EngineRPM: p(800.0), Fan: cases.FanOff, Heater: cases.HeaterFull,
		AmbientC: p(diagram.Celsius(18)), EctC: p(diagram.Celsius(91)), Gauge: "middle", Gun: cases.Gun{Emissivity: p(0.95)},
		Readings: []cases.Reading{
			on("rubber", diagram.EngineOut, 86.5), on("rubber", diagram.RadIn, 85.5), on("rubber", diagram.RadOut, 61),
			on("rubber", diagram.PumpIn, 60), on("aluminium-bare", diagram.Housing, 41), on("rubber", diagram.Bypass, 78),
			on("rubber", diagram.HeaterIn, 85), on("rubber", diagram.HeaterOut, 76.5), on("", diagram.Vent, 56),
		},
	}
}

func on(surface string, at diagram.Point, shown diagram.Celsius) cases.Reading {
	return cases.Reading{Point: at, ShownC: &shown, Surface: cases.Surface{Word: surface}}
}

// tests holds one workshop check of every kind.
func tests() []cases.Test {
	t := []cases.Test{
		{Kind: "pressure-hold", StartKPa: p(diagram.KPa(100)), EndKPa: p(diagram.KPa(99)), Minutes: p(10.0), StartC: p(diagram.Celsius(20)), EndC: p(diagram.Celsius(20))},
		{Kind: "cap", RatedKPa: p(diagram.KPa(110)), OpensKPa: p(diagram.KPa(108)), Holds: p(true), VacuumValveOK: p(false)},
		{Kind: "combustion-gas", Result: "negative"},
		{Kind: "coolant", FreezeC: p(diagram.Celsius(-34)), VolumePercent: p(49.0), PH: p(8.2), StrayV: p(0.125), Looks: "rusty"},
		{Kind: "thermostat-bench", RatedOpensC: p(diagram.Celsius(88)), RatedFullC: p(diagram.Celsius(102)), RatedLiftMM: p(8.0), Points: []cases.BenchPoint{
			{WaterC: p(diagram.Celsius(86)), LiftMM: p(0.0), Heating: p(true)}, {WaterC: p(diagram.Celsius(99)), LiftMM: p(7.4), Heating: p(true)}, {WaterC: p(diagram.Celsius(83)), LiftMM: p(0.2), Heating: p(false)}}},
		{Kind: "sensor-resistance", Points: []cases.BenchPoint{{TempC: p(diagram.Celsius(20)), Ohm: p(2440.0)}}, Reference: []cases.OhmPoint{{TempC: p(diagram.Celsius(20)), Ohm: p(2500.0)}, {TempC: p(diagram.Celsius(80)), Ohm: p(323.0)}}},
		{Kind: "fan", Commanded: p(true), Runs: p(true), StartsC: p(diagram.Celsius(97))},
		{Kind: "level", State: "low"},
		{Kind: "pump-drive", BeltOK: p(true), Play: p(false), Weep: p(false)},
		{Kind: "hose-look", LowerCollapses: p(false)},
		{Kind: "core-scan", ShownC: [][]float64{{92, 91, 90}, {84, math.NaN(), 83}, {79, 62.5, 61}}},
		{Kind: "bubbles", Seen: p(false)},
		{Kind: "heater-flow", Flows: "weak"},
	}
	for i := range t {
		t[i].Stage = cases.BeforeRepair
	}
	return t
}

// long is a case with so many rounds of so many readings.
func long(rounds, readings int) *cases.Case {
	c := full()
	c.Loop.Layout = "inlet-thermostat-bottle"
	c.Rounds = nil
	points := diagram.Points()
	for i := range rounds {
		r := hotIdle()
		r.Label, r.Readings = "walk "+strings.Repeat("I", i+1), nil
		for j := range readings {
			r.Readings = append(r.Readings, on("rubber", points[j%len(points)], diagram.Celsius(40+7*i)+diagram.Celsius(j)*2.5))
		}
		c.Rounds = append(c.Rounds, r)
	}
	return c
}

// hostile is a case of texts that break layouts and fonts.
func hostile() *cases.Case {
	c := full()
	c.Title = "Überhitzt 🔥🚗 Перегрев ⚠ שלום 冷却水 \x00\x07\uFFFF end"
	c.Vehicle.Model = strings.Repeat("unbroken", 60)
	c.Complaint.Text = strings.Repeat("0123456789", 1000) + " tail-of-the-note\n\n\n" + strings.Repeat("ну и день ", 40) + "\xff\xfe"
	c.Verdict.Note = strings.Repeat("The note goes on and on. ", 400) + "last-words"
	c.Repair.Parts = append(c.Repair.Parts, cases.Part{Name: strings.Repeat("part ", 2000) + "part-end"})
	c.Rounds[0].Label = "שלום " + strings.Repeat("label ", 40)
	c.Codes = append(c.Codes, cases.Code{Code: "💥", State: strings.Repeat("state", 30)})
	c.Loop.Layout = ""
	c.Tests[10].ShownC = [][]float64{make([]float64, 31), make([]float64, 31)}
	return c
}

func analysed(t testing.TB, c *cases.Case) evidence.Findings {
	t.Helper()
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	return a.Analyse(c)
}

func record(t testing.TB, c *cases.Case, o report.Options) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := report.Write(&out, report.Record, report.Material{Case: c, Found: analysed(t, c)}, o); err != nil {
		t.Fatalf("Record(%q): %v", c.Title, err)
	}
	return out.Bytes()
}

func itoa(n int) string { return strconv.Itoa(n) }
