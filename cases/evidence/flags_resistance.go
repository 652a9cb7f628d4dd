package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/thermistor"
)

// sensorPassK is what a sensor may be off: DT15, common practice.
const sensorPassK diagram.DeltaK = 5

// sensorTest reads each resistance off the reference curve and compares: 5 K
// passes, 10 K fails (DT15, DT16, common practice). One beyond the curve, as a cut
// wire's, is off at least as far as the curve's end.
func sensorTest(t *cases.Test) judgement {
	curve, err := thermistor.Fit(reference(t))
	if err != nil {
		return judgement{}
	}
	var worst diagram.DeltaK
	var because []say.Text
	compared, atLeast := false, false // the second is of the worst
	for _, p := range ohms(t) {
		off, why, within := offCurve(curve, p)
		compared = compared || within
		if abs(off) <= sensorPassK {
			continue
		}
		because = append(because, why)
		if abs(off) > abs(worst) {
			worst, atLeast = off, !within
		}
	}
	if because == nil {
		return passIf(compared)
	}
	severity, way := Look, "high"
	if abs(worst) > sensorFailK {
		severity = Act
	}
	if worst < 0 {
		way = "low"
	}
	text := say.Of("flag.sensor-"+way, abs(worst))
	if atLeast {
		text = say.Of("flag.sensor-beyond-"+way, abs(worst))
	}
	return found(way, ofCase("sensor-resistance", severity, text, append(because, say.Of("because.sensor-limits", sensorPassK, sensorFailK))...))
}

// offCurve is how far a measured point is off the reference curve, and why; beyond the curve at least so far, or 0 where
// that doesn't tell.
func offCurve(curve thermistor.Curve, p thermistor.Point) (off diagram.DeltaK, why say.Text, within bool) {
	if says, err := curve.Read(p.Ohm); err == nil {
		return says.Minus(p.C), say.Of("because.ohm", p.Ohm, p.C, says), true
	}
	off, ok := curve.Beyond(p)
	if !ok {
		return 0, say.Text{}, false
	}
	return off, say.Of("because.ohm-beyond", p.Ohm, p.C, p.C+diagram.Celsius(off)), false
}

// ohms are the measured points that hold both numbers.
func ohms(t *cases.Test) []thermistor.Point {
	var out []thermistor.Point
	for _, p := range t.Points {
		if p.TempC != nil && p.Ohm != nil {
			out = append(out, thermistor.Point{C: *p.TempC, Ohm: *p.Ohm})
		}
	}
	return out
}

// reference is the sensor's curve as far as it is known.
func reference(t *cases.Test) []thermistor.Point {
	var out []thermistor.Point
	for _, p := range t.Reference {
		if p.TempC != nil && p.Ohm != nil && *p.Ohm > 0 {
			out = append(out, thermistor.Point{C: *p.TempC, Ohm: *p.Ohm})
		}
	}
	return out
}
