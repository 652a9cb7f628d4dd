package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Guide says by what a check is judged, and what it can't tell. Limits of a
// vehicle's maker come before them.
type Guide struct {
	Accepts   say.Text
	NotProven say.Text // by a pass
}

// GuideTo is the guide to a check, on a car with that fan.
func GuideTo(kind cases.TestKind, fan cases.FanKind) Guide {
	switch {
	case kind == cases.FanTest && fan == cases.ViscousFan: // FN6 and FN8, published (V20)
		return Guide{say.Of("guide.fan-viscous.accepts", ViscousTurns, ViscousBitesC, ViscousBittenC), say.Of("guide.fan-belt.not-proven")}
	case kind == cases.FanTest && fan == cases.FixedFan:
		return Guide{say.Of("guide.fan-fixed.accepts"), say.Of("guide.fan-belt.not-proven")}
	}
	return Guide{
		Accepts:   say.Of("guide."+string(kind)+".accepts", accepted(kind)...),
		NotProven: say.Of("guide."+string(kind)+".not-proven", unproven(kind)...),
	}
}

// accepted are the limits that a check is judged by. Those that the rules don't
// name are of testdata/trade/numbers.csv.
func accepted(kind cases.TestKind) []any {
	switch kind {
	case cases.PressureTest: // PR1 to PR4, published (V6, V7, V8, M10)
		return []any{needleKPa, failKPa}
	case cases.CapTest: // PR7, PR8, PR10, published (M14, M16, T17)
		return []any{vacuumKPa}
	case cases.CoolantTest: // CO1, CO2, CO3, published (V32, M21, T19); CO8, SV5, common practice
		return []any{weakPercent, strongPercent, inhibitPercent, uselessPercent, acidPH, alkalinePH, strayWatchV, strayV}
	case cases.BenchTest: // TH1 to TH4, published (M2, V1 to V4)
		return []any{diagram.DeltaK(opensEarlyK), diagram.DeltaK(6), diagram.DeltaK(15), benchLift, shutByC}
	case cases.SensorTest: // DT15, DT16, common practice; V15 to V17
		return []any{sensorPassK, sensorFailK}
	case cases.FanTest: // FN1, published (V23); FN5, common practice
		return []any{diagram.Celsius(93), usualFanStartC, secondLowC, secondHighC}
	case cases.CoreTest: // DT14, common practice; M17, V22
		return []any{suspectK, patchK}
	case cases.HeaterTest: // DT10, DT11, common practice; V21
		return []any{hosesOddK, diagram.DeltaK(20)}
	}
	return nil
}

// unproven are the numbers in what a pass doesn't show.
func unproven(kind cases.TestKind) []any {
	switch kind {
	case cases.BenchTest: // TH10
		return []any{diagram.Celsius(95)}
	case cases.SensorTest: // SN1, SN2, published (V35)
		return []any{diagram.Celsius(-30), diagram.Celsius(130)}
	}
	return nil
}
