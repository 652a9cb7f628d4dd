package physics

import "math"

// FanKind is what turns the fan, in the words of the case format.
type FanKind string

// The kinds of fans.
const (
	ElectricFan FanKind = "electric" // by the coolant's temperature; the zero value too
	ViscousFan  FanKind = "viscous"  // by belt, with a clutch that feels the air behind the radiator
	FixedFan    FanKind = "fixed"    // by belt, always
	NoFan       FanKind = "none"
)

// beltRPM is the engine speed at which a belt's fan moves what FanKgS says, and
// slip what a released clutch still drags along.
const (
	beltRPM = 2000
	slip    = 0.2
)

// turnFan switches the fan.
func (s *Sim) turnFan() {
	shown, on, span := float64(s.ECT()), s.p.FanOnC, s.p.FanSpanK
	switch {
	case s.kind == ViscousFan:
		shown = float64(s.airBehind(s.c.rad, s.radKW, s.airKgS(s.stage)))
		on, span = s.p.ClutchOnC, s.p.ClutchSpanK
	case s.switched:
		shown = s.leavingC()
	}
	switch {
	case s.f.fanOff || s.kind == NoFan:
		s.fan = false
	case s.f.fanStuck || s.kind == FixedFan || shown > on:
		s.fan = true
	case shown < on-span:
		s.fan = false
	}
}

// fanKgS is the air that the fan moves. A belt's goes with the engine's speed.
func (s *Sim) fanKgS(rpm float64) float64 {
	air := 0.0
	if s.fan {
		air = s.p.FanKgS * s.f.fanPart
	}
	switch s.kind {
	case ViscousFan:
		if !s.fan && !s.f.fanOff {
			air = slip * s.p.FanKgS
		}
		return air * rpm / beltRPM
	case FixedFan:
		return air * rpm / beltRPM
	}
	return air
}

// openAir is how many times the draught of a car blows through the radiator of an engine that was built
// without a fan: it could not idle in less (judgement).
const openAir = 2.5

// airKgS is the air through the radiator: what rises by itself, the fan's or
// the road's, whichever is most.
func (s *Sim) airKgS(st Stage) float64 {
	draught := s.p.DraughtKgS
	if s.kind == NoFan {
		draught *= openAir
	}
	air := max(draught, s.p.RamKgS*st.SpeedKmh, s.fanKgS(st.RPM))
	return math.Max(air*(1-s.f.airBlocked), 1e-3)
}
