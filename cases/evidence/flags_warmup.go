package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
)

// What a log's warm-up is judged by. The rating's own bounds stand in regime.go.
const (
	overshootK diagram.DeltaK = 8   // TH9, common practice: late
	comesBackK diagram.DeltaK = 3   // from there to the plateau, judgement
	roadDropK  diagram.DeltaK = 8   // TH12, common practice: leaks or stands open
	kneeTrust                 = 0.6 // a knee of less is not judged by, judgement
)

// logFlags judges each log by itself; a flag has its log's stage.
func logFlags(c *cases.Case, all []WarmUp) []Flag {
	var out []Flag
	for _, w := range all {
		l := logJudge{w, ratingOf(c), c.Site.AmbientC}
		for _, rule := range l.rules() {
			for _, f := range rule() {
				f.Stage = w.Stage
				f.Because = append(f.Because, l.origin())
				out = append(out, f)
			}
		}
	}
	return out
}

// logJudge is a log's warm-up with what it is held against.
type logJudge struct {
	WarmUp
	rating  rating
	ambient *diagram.Celsius
}

// rules are what the log may be asked: a sensor that is stuck tells nothing of
// the engine.
func (l *logJudge) rules() []func() []Flag {
	if l.Result.Stuck != nil {
		return []func() []Flag{l.stuck, l.jumps}
	}
	return []func() []Flag{l.below, l.late, l.early, l.noKnee, l.jumps, l.notCold}
}

func (l *logJudge) origin() string {
	text := "read from a log"
	if l.Log != "" {
		text = fmt.Sprintf("read from the log %q", l.Log)
	}
	if l.Stage != "" {
		text += ", " + l.Stage.Name()
	}
	return text
}

func (l *logJudge) targetRule() string {
	return fmt.Sprintf("a warm engine stands above %s, 11 K under the rating (REG1, published, R1, R4)", inC(l.rating.targetC))
}

// below: the engine doesn't get warm, or doesn't stay so on the road.
func (l *logJudge) below() []Flag {
	r := l.Result
	fell := r.DropsOnRoadK != nil && *r.DropsOnRoadK >= roadDropK
	road := func() string {
		return fmt.Sprintf("%s on the road, %s under what it held before; a healthy one falls by up to 4 K, from 8 K on it leaks or stands open (TH11, TH12, common practice)", inC(*r.RoadC), inK(*r.DropsOnRoadK))
	}
	switch {
	case fell && *r.RoadC < l.rating.targetC && !l.frost():
		return []Flag{ofCase("engine-below-target", Act, fmt.Sprintf("In the log the engine falls back to %s on the road.", inC(*r.RoadC)),
			road(), l.targetRule(), l.rating.words())}
	case fell:
		return []Flag{ofCase("drops-on-road", Look, fmt.Sprintf("In the log the engine falls by %s on the road.", inK(*r.DropsOnRoadK)), road())}
	case is(r.ReachesRegulating, false):
		return []Flag{ofCase("engine-below-target", Act, fmt.Sprintf("In the log the engine doesn't come to %s.", inC(l.rating.targetC)),
			l.levelWords(), l.targetRule(), l.rating.words())}
	}
	return nil
}

func (l *logJudge) frost() bool { return l.ambient != nil && *l.ambient < coldNoCallC }

func (l *logJudge) levelWords() string {
	if l.PlateauC == nil {
		return "it settles at no level"
	}
	return fmt.Sprintf("it settles at %s", inC(*l.PlateauC))
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
		fmt.Sprintf("In the log the heating breaks off only at %s: the thermostat opens late.", inC(max(*peak, k.C))),
		l.kneeWords(), fmt.Sprintf("peak of %s, then %s", inC(*peak), inC(*l.PlateauC)),
		"a healthy opening swings up to 5 K over the rating, 8 K and more is late (TH8, TH9, common practice)", l.rating.words())}
}

func (l *logJudge) kneeWords() string {
	k := l.Result.Knee
	return fmt.Sprintf("knee at %s after %.0f min (confidence %.0f %%)", inC(k.C), k.S/60, 100*k.Confidence)
}

// early: a break under the target. Between there and the rating a sensor far
// from the wax may show an opening that is well.
func (l *logJudge) early() []Flag {
	k := l.Result.Knee
	if k == nil || k.Confidence < kneeTrust || k.C >= l.rating.targetC {
		return nil
	}
	return []Flag{ofCase("thermostat-passing-early", Look,
		fmt.Sprintf("In the log the heating breaks off at %s: the thermostat opens early.", inC(k.C)),
		l.kneeWords(), "a thermostat opens at its rating, ±3 K (TH1, published, M2); judged from 11 K under it, since the sensor may stand far from the wax (judgement)", l.rating.words())}
}

// noKnee: an engine that comes smoothly to too low a level had its radiator in
// the loop all along.
func (l *logJudge) noKnee() []Flag {
	if l.Result.Knee != nil || l.PlateauC == nil || !is(l.Result.ReachesRegulating, false) {
		return nil
	}
	return []Flag{ofCase("warm-up-no-knee", Look, "In the log the engine warms smoothly without a break: the thermostat isn't seen to open.",
		l.levelWords(), "a shut thermostat makes a steady rise that breaks off at the opening; a radiator that warms from the start is one that the thermostat doesn't shut off (F01, published pattern)")}
}

func (l *logJudge) stuck() []Flag {
	s := l.Result.Stuck
	if s == nil {
		return nil
	}
	return []Flag{ofCase("sensor-stuck", Act, fmt.Sprintf("In the log the sensor rests at %s while the engine runs.", inC(s.C)),
		fmt.Sprintf("no change of more than 1 K in %.0f min", s.ForS/60),
		"a sensor that stays under 60 °C on a running engine is stuck (REG10, published, R1); five driven minutes or ten standing ones are enough (judgement)")}
}

func (l *logJudge) jumps() []Flag {
	n := len(l.Result.Jumps)
	if n == 0 {
		return nil
	}
	j := l.Result.Jumps[0]
	return []Flag{ofCase("sensor-jumps", Look, "In the log the temperature jumps as no coolant does: look at the sensor, its plug and its wires.",
		fmt.Sprintf("%d jumps, the first from %s to %s after %.0f s", n, inC(j.FromC), inC(j.C), j.S),
		"10 K at once and 2 K in each second on top are more than an engine's heat makes (judgement); an open circuit shows the least, a short over 130 °C (SN1, SN2, published, V35)")}
}

// notCold says what a log can't tell.
func (l *logJudge) notCold() []Flag {
	r := l.Result
	switch {
	case r.StartC == nil:
		return []Flag{ofCase("log-empty", Note, "The log holds no coolant temperature of a running engine.")}
	case r.ColdStart:
		return nil
	}
	return []Flag{ofCase("no-cold-start", Note, "No cold start in this log: how fast the engine warms can't be told from it.",
		fmt.Sprintf("it begins at %s", inC(*r.StartC)), "a start is cold under 35 °C (judgement), or near the air's temperature, as after a night's rest (CS2, published, V18)")}
}
