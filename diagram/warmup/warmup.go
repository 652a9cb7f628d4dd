// Package warmup reads an engine's warm-up from a record of its coolant's
// temperature: how fast it warmed, where the thermostat opened, at what level
// it regulates, and whether the sensor can be believed.
//
// Times are seconds, temperatures degrees Celsius. A record may be noisy, in
// whole kelvins, have gaps, stop and start, begin warm, end early, or hold
// several trips: what it can't tell stays nil, and a remark says why.
package warmup

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Series is a record. All columns but TimeS and EctC may be nil; the others
// are as long as TimeS. NaN is a gap. An engine speed of 0 is an engine that
// stands.
type Series struct {
	TimeS, EctC, RPM, SpeedKmh, IntakeC []float64
}

// Options are what is known beside the record; nil is not known.
type Options struct {
	OpensC   *diagram.Celsius // the thermostat's rating
	AmbientC *diagram.Celsius // the air outside at the start
}

// Result is what a record tells. Seconds count from the engine's start, or
// where that isn't in the record from the trip's first row.
type Result struct {
	ColdStart         bool
	StartS            float64 // when the seconds begin, by the record's own clock
	StartC            *diagram.Celsius
	SecondsTo         map[int]float64 // by level of Levels; none where it isn't reached or was passed before
	Knee              *Knee           // nil: the thermostat isn't seen to open
	PeakC             *diagram.Celsius
	Plateau           *Plateau // nil: the engine doesn't settle
	FanCycles         []FanCycle
	RoadC             *diagram.Celsius // what the engine holds on the road once it is warm; nil: not seen
	DropsOnRoadK      *diagram.DeltaK  // how far RoadC is under what it held before
	TargetC           diagram.Celsius  // of the regulation: 11 K under the rating
	ReachesRegulating *bool            // nil: can't be said
	Stuck             *Rest            // where the sensor doesn't move though it should
	Jumps             []Jump
	Remarks           []say.Text
}

// Levels are the temperatures, in °C, that SecondsTo counts to.
func Levels() []int { return []int{40, 60, 70, 80} }

// Knee is where the heating breaks off since the thermostat opens.
type Knee struct {
	C          diagram.Celsius
	S          float64
	Confidence float64 // 0 to 1
}

// Plateau is the level that the engine holds.
type Plateau struct {
	C           diagram.Celsius
	SdK         diagram.DeltaK // its ripple
	FromS, ForS float64        // ForS counts the engine's running only
}

// FanCycle is one tooth of the saw that a fan makes on a standing car: it
// starts at OnC and stops at OffC.
type FanCycle struct{ OnC, OffC diagram.Celsius }

// Rest is a stretch in which the sensor shows the same.
type Rest struct {
	C    diagram.Celsius
	ForS float64
}

// Jump is a step that no coolant can make.
type Jump struct {
	S        float64
	FromC, C diagram.Celsius
}

// Analyse reads the record's warm-up from cold; without one, its longest trip.
func Analyse(s Series, o Options) Result {
	r := Result{SecondsTo: map[int]float64{}}
	trips := split(s)
	if len(trips) == 0 {
		r.remark(say.Of("remark.no-coolant"))
		r.verdict(nil, o)
		return r
	}
	t := choose(trips, o)
	r.remarkTrips(t, trips)
	r.start(t, o)
	r.Jumps = t.dropJumps()
	k := t.track()
	r.secondsTo(k)
	w := k.running()
	lines := newStretches(w, float64(*r.StartC))
	r.Knee = findKnee(w, lines)
	r.Plateau = lines.findPlateau(r.Knee)
	r.PeakC = w.peak(r.Knee)
	r.FanCycles = fanCycles(k, r.Plateau)
	r.road(w, o)
	r.Stuck = findStuck(w)
	r.verdict(&w, o)
	r.remarkKnee()
	r.remarkSensor()
	return r
}

func (r *Result) remark(text say.Text) { r.Remarks = append(r.Remarks, text) }
