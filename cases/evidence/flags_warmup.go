package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What a log's warm-up is judged by. The rating's own bounds stand in regime.go.
const (
	swingK     diagram.DeltaK = 5   // TH8, common practice: a healthy opening's overshoot
	overshootK diagram.DeltaK = 8   // TH9, common practice: late
	comesBackK diagram.DeltaK = 3   // from there to the plateau, judgement
	roadFallK  diagram.DeltaK = 4   // TH11, common practice: a healthy one's
	roadDropK  diagram.DeltaK = 8   // TH12, common practice: leaks or stands open
	kneeTrust                 = 0.6 // a knee of less is not judged by, judgement
)

// logFlags judges each log by itself and leaves with it what it finds; a flag has its
// log's stage.
func logFlags(c *cases.Case, all []WarmUp) []Flag {
	var out []Flag
	for i := range all {
		w := &all[i]
		l := logJudge{*w, ratingOf(c), airOfSide(c, w.Stage)}
		for _, f := range l.flags() {
			f.Stage = w.Stage
			f.Because = append(f.Because, l.origin())
			w.Flags = append(w.Flags, f)
		}
		out = append(out, w.Flags...)
	}
	return out
}

// logJudge is a log's warm-up with what it is held against.
type logJudge struct {
	WarmUp
	rating  rating
	ambient *diagram.Celsius
}

// flags are what the log may be asked: a sensor that is stuck, or found to be wrong, tells
// nothing of the engine.
func (l *logJudge) flags() []Flag {
	switch {
	case l.Result.Stuck != nil:
		return append(l.stuck(), l.jumps()...)
	case l.SensorLies && l.Result.StartC != nil:
		return append(l.jumps(), ofCase("log-of-wrong-sensor", Note, say.Of("flag.log-of-wrong-sensor")))
	}
	late := l.late()
	return slices.Concat(l.tooHot(late), l.below(), late, l.early(), l.noKnee(), l.jumps(), l.notCold())
}

func (l *logJudge) origin() say.Text {
	text := say.Of("because.log")
	if l.Log != "" {
		text = say.Of("because.log-named", cases.LogTitle(l.Log))
	}
	return say.List(text, l.Stage.Text())
}

// tooHot: neither the thermostat nor the fan held the engine, that time. What swings over as a late thermostat opens is
// told as that.
func (l *logJudge) tooHot(late []Flag) []Flag {
	opens, c := l.rating.opensC, l.HottestC
	if c == nil || *c < FanDueC(opens) || len(late) > 0 && *c <= *l.Result.PeakC+1 {
		return nil
	}
	return []Flag{ofCase("engine-above-rating", Act, say.Of("flag.log-too-hot", *c, c.Minus(opens)), fanStarts(opens), l.rating.text())}
}

// below: the engine doesn't get warm, or doesn't stay so on the road.
func (l *logJudge) below() []Flag {
	r := l.Result
	fell := r.DropsOnRoadK != nil && *r.DropsOnRoadK >= roadDropK
	road := func() say.Text {
		return say.Of("because.road", *r.RoadC, *r.DropsOnRoadK, roadFallK, roadDropK)
	}
	switch {
	case fell && *r.RoadC < l.rating.targetC && !l.frost():
		return []Flag{ofCase("engine-below-target", Act, say.Of("flag.log-falls-back", *r.RoadC),
			road(), l.rating.targetRule(), l.rating.text())}
	case fell && *r.RoadC < l.rating.opensC && !l.rating.heated: // over its mark it may let the road cool; a heated one is told to hold less under load
		return []Flag{ofCase("drops-on-road", Look, say.Of("flag.log-falls", *r.DropsOnRoadK), road())}
	case is(r.ReachesRegulating, false):
		return []Flag{ofCase("engine-below-target", Act, say.Of("flag.log-stays-cool", l.rating.targetC),
			l.levelText(), l.rating.targetRule(), l.rating.text())}
	}
	return nil
}

func (l *logJudge) frost() bool { return l.ambient != nil && *l.ambient < coldNoCallC }

func (l *logJudge) levelText() say.Text {
	if l.PlateauC == nil {
		return say.Of("because.no-level")
	}
	return say.Of("because.settles", *l.PlateauC)
}

// late: the thermostat opens, or lets the engine swing over, far above its
// rating, and only then comes back or holds that level.
func (l *logJudge) late() []Flag {
	k, peak, limit := l.Result.Knee, l.Result.PeakC, l.rating.opensC+diagram.Celsius(overshootK)
	if k == nil || k.Confidence < kneeTrust || peak == nil || l.PlateauC == nil {
		return nil
	}
	swings := *peak >= limit && peak.Minus(*l.PlateauC) >= comesBackK
	if !swings && k.C < limit {
		return nil
	}
	return []Flag{ofCase("thermostat-opening-late", Look,
		say.Of("flag.log-opens-late", max(*peak, k.C)),
		l.kneeText(), say.Of("because.peak", *peak, *l.PlateauC), say.Of("because.log-late", swingK, overshootK), l.rating.text())}
}

func (l *logJudge) kneeText() say.Text {
	k := l.Result.Knee
	return say.Of("because.knee", k.C, k.S/60, min(100*k.Confidence, 99)) // a curve is never surer
}

// early: a break under the target. Between there and the rating a sensor far
// from the wax may show an opening that is well.
func (l *logJudge) early() []Flag {
	k := l.Result.Knee
	if k == nil || k.Confidence < kneeTrust || k.C >= l.rating.targetC {
		return nil
	}
	return []Flag{ofCase("thermostat-passing-early", Look,
		say.Of("flag.log-opens-early", k.C),
		l.kneeText(), say.Of("because.log-early", diagram.DeltaK(opensEarlyK), targetK), l.rating.text())} // TH1
}

// noKnee: an engine that comes smoothly to too low a level had its radiator in
// the loop all along.
func (l *logJudge) noKnee() []Flag {
	if l.Result.Knee != nil || l.PlateauC == nil || !is(l.Result.ReachesRegulating, false) {
		return nil
	}
	return []Flag{ofCase("warm-up-no-knee", Look, say.Of("flag.log-no-knee"),
		l.levelText(), say.Of("because.log-no-knee"))} // F01
}

func (l *logJudge) stuck() []Flag {
	s := l.Result.Stuck
	return []Flag{ofCase("sensor-stuck", Act, say.Of("flag.log-stuck", s.C),
		say.Of("because.log-stuck", diagram.DeltaK(1), s.ForS/60), say.Of("because.log-stuck-rule", diagram.Celsius(60)))} // REG10
}

func (l *logJudge) jumps() []Flag {
	n := len(l.Result.Jumps)
	if n == 0 {
		return nil
	}
	j := l.Result.Jumps[0]
	return []Flag{ofCase("sensor-jumps", Look, say.Of("flag.log-jumps"), say.Of("because.log-jumps", n, j.FromC, j.C, j.S),
		say.Of("because.log-jumps-rule", diagram.DeltaK(10), diagram.DeltaK(2), diagram.Celsius(130)))} // SN1, SN2
}

// notCold says what a log can't tell.
func (l *logJudge) notCold() []Flag {
	r := l.Result
	switch {
	case r.StartC == nil:
		return []Flag{ofCase("log-empty", Note, say.Of("flag.log-empty"))}
	case r.ColdStart:
		return nil
	}
	return []Flag{ofCase("no-cold-start", Note, say.Of("flag.log-no-cold-start"),
		say.Of("because.log-begins", *r.StartC), say.Of("because.log-cold", diagram.Celsius(35)))} // CS2
}
