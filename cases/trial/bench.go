package trial

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/thermistor"
)

// heatedWater is a thermostat in a pan: it says little of a rating near
// boiling, and a bad one passes in twelve of a hundred.
func (v *car) heatedWater(d dice, t *cases.Test) {
	opens, least, most := v.opensC, 0.0, 1.0
	if !d.chance(0.12) {
		opens += v.fault.shiftK + v.fault.sticksK
		least, most = v.fault.openLeast, v.fault.openMost
	}
	lift := d.between(8, 10) // TH3
	for c := v.ratedC - 14; c <= min(v.ratedC+18, 99); c += 4 {
		x := min(max(clamp((c-opens)/v.spanK), least), most)
		water := c + d.normal(0.7)
		t.Points = append(t.Points, cases.BenchPoint{
			WaterC: celsius(water), LiftMM: ptr(math.Round(lift*x*10) / 10), Heating: ptr(true),
		})
	}
	t.RatedOpensC, t.RatedFullC, t.RatedLiftMM = celsius(v.ratedC), celsius(v.ratedC+13), ptr(8.0)
}

// resistance: a fault in the wiring leaves the sensor itself well.
func (v *car) resistance(d dice, t *cases.Test) {
	scale := 1 + d.normal(0.015)
	for _, c := range []float64{20, 50, 80, 95}[d.Intn(2):] {
		told := c
		if !v.fault.wiring && !d.chance(0.03) {
			told += v.fault.sensorK + v.fault.sensorSlope*(c-20)
			if stuck := v.fault.sensorStuckC; !math.IsNaN(stuck) {
				told = stuck
			}
		}
		t.Points = append(t.Points, cases.BenchPoint{TempC: celsius(c), Ohm: ptr(math.Round(scale * thermistor.CommonOhm(diagram.Celsius(told))))})
		t.Reference = append(t.Reference, cases.OhmPoint{TempC: celsius(c), Ohm: ptr(math.Round(thermistor.CommonOhm(diagram.Celsius(c))))})
	}
}

// coreScan is the radiator's face, hot side on the left, cold patches where
// tubes are blocked.
func (v *car) coreScan(d dice, t *cases.Test) {
	const rows, columns = 4, 5
	hot := min(v.ratedC+d.between(-2, 4), 105)
	drop := d.between(6, 20)
	if v.fault.openMost < 0.04 { // stuck shut: the face stays cold
		hot, drop = v.airC+d.between(3, 12), 2
	}
	patches := v.fault.tubes < 1 && !d.chance(0.1)
	for i := 0; i < rows; i++ {
		cold := 0.0
		if patches && (i == rows-1 || d.chance(1-v.fault.face)) {
			cold = d.between(8, 30)
		}
		row := make([]float64, columns)
		for j := range row {
			at := float64(j+1) / columns
			row[j] = math.Round(hot - drop*at - cold*at + d.normal(1.2))
		}
		t.ShownC = append(t.ShownC, row)
	}
}
