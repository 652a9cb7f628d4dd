package evidence

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/warmup"
)

// WarmUp is what one of the case's logs tells, as the document has it; Result
// is all of it. KneeS counts from the engine's start.
type WarmUp struct {
	Log               string           `json:"log"`
	KneeC             *diagram.Celsius `json:"knee_c"`
	KneeS             *float64         `json:"knee_s"`
	PlateauC          *diagram.Celsius `json:"plateau_c"`
	ReachesRegulating *bool            `json:"reaches_regulating"`
	Stage             cases.Stage      `json:"-"`
	HottestC          *diagram.Celsius `json:"-"` // HeldC of the log; nil: without a value, or none is believed
	SensorLies        bool             `json:"-"` // by the gun or by its resistance: the log's temperatures aren't the engine's
	Result            warmup.Result    `json:"-"`
	Flags             []Flag           `json:"-"` // what the log is found to say by itself; Findings.Flags holds them too
}

// warmUps are the case's logs, each analysed.
func (a *Analyst) warmUps(c *cases.Case, all []*moment) []WarmUp {
	var out []WarmUp
	for i := range c.Logs {
		w := a.warmUp(c, &c.Logs[i])
		w.SensorLies = sensorLies(c, all, w.Stage)
		if held, ok := HeldC(&c.Logs[i]); ok && !sensorTooHigh(all, w.Stage) {
			w.HottestC = &held
		}
		out = append(out, w)
	}
	return out
}

// TooHotToRun reports whether the log holds an engine that has to be switched off.
func (w WarmUp) TooHotToRun() bool { return w.HottestC != nil && *w.HottestC >= stopHotC }

// Series is a log as the analysis of warm-ups reads it.
func Series(l *cases.Log) warmup.Series {
	return warmup.Series{TimeS: l.TimeS, EctC: l.EctC, RPM: l.EngineRPM, SpeedKmh: l.SpeedKmh, IntakeC: l.IntakeC}
}

func (a *Analyst) warmUp(c *cases.Case, l *cases.Log) WarmUp {
	aim := ratingOf(c).targetC + diagram.Celsius(targetK)
	r := a.memory.analyse(
		Series(l),
		warmup.Options{OpensC: &aim, AmbientC: airOfSide(c, l.Stage)},
	)
	w := WarmUp{Log: l.Name, ReachesRegulating: r.ReachesRegulating, Stage: l.Stage, Result: r}
	if k := r.Knee; k != nil {
		w.KneeC, w.KneeS = &k.C, &k.S
	}
	if p := r.Plateau; p != nil {
		w.PlateauC = &p.C
	}
	return w
}

// rounded is the warm-up to 0.01 °C and a second.
func (w WarmUp) rounded() WarmUp {
	w.KneeC, w.PlateauC = rounded(w.KneeC), rounded(w.PlateauC)
	if w.KneeS != nil {
		s := math.Round(*w.KneeS)
		w.KneeS = &s
	}
	return w
}
