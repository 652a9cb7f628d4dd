package cases

import (
	"slices"
	"strings"

	"loopbook/diagram/say"
)

// The vocabulary in the words of the trade: Text in the reader's language, Name
// in English, for lists and for searching. What isn't known says nothing.

// Text is the stage in the words of the trade.
func (s Stage) Text() say.Text { return wordText("stage."+string(s), s) }

// Name is Text in English.
func (s Stage) Name() string { return s.Text().String() }

// UsualRounds are the labels of a usual walk round the loop: common practice.
func UsualRounds() []say.Text {
	return []say.Text{say.Of("round.cold"), say.Of("round.warm-idle"), say.Of("round.raised-idle"), say.Of("round.hot-idle"), say.Of("round.after-road")}
}

// Title is the round's label: a usual one, which is kept in English, in the reader's language, any
// other as it is. It says nothing where there is none.
func (r *Round) Title() say.Text {
	for _, usual := range UsualRounds() {
		if strings.EqualFold(usual.String(), r.Label) {
			return usual
		}
	}
	if r.Label == "" {
		return say.Text{}
	}
	return say.Own(r.Label)
}

// HandLog is the name that a log is kept under which was written down by hand.
const HandLog = "written down"

// LogTitle is a log's name: that of one by hand in the reader's language, any other as it is. It
// says nothing where there is none.
func LogTitle(name string) say.Text {
	switch name {
	case "":
		return say.Text{}
	case HandLog:
		return say.Of("log.by-hand")
	}
	return say.Own(name)
}

// Text is the fan's state in the words of the trade.
func (s FanState) Text() say.Text { return wordText("fan-state."+string(s), s) }

// Name is Text in English.
func (s FanState) Name() string { return s.Text().String() }

// Text is the heater's setting in the words of the trade.
func (h Heater) Text() say.Text { return wordText("heater."+string(h), h) }

// Name is Text in English.
func (h Heater) Name() string { return h.Text().String() }

// Text is the gauge's place in the words of the trade.
func (g Gauge) Text() say.Text { return wordText("gauge."+string(g), g) }

// Name is Text in English.
func (g Gauge) Name() string { return g.Text().String() }

// Text is the motive power in the words of the trade.
func (m Motive) Text() say.Text { return wordText("motive."+string(m), m) }

// Name is Text in English.
func (m Motive) Name() string { return m.Text().String() }

// Text is the kind of fan in the words of the trade.
func (k FanKind) Text() say.Text { return wordText("fan-kind."+string(k), k) }

// Name is Text in English.
func (k FanKind) Name() string { return k.Text().String() }

// Text is the coolant's base in the words of the trade.
func (b Base) Text() say.Text { return wordText("base."+string(b), b) }

// Name is Text in English.
func (b Base) Name() string { return b.Text().String() }

// Text is the symptom in the words of the trade.
func (s Symptom) Text() say.Text { return wordText("symptom."+string(s), s) }

// Name is Text in English.
func (s Symptom) Name() string { return s.Text().String() }

// HighVoltage reports whether the vehicle may carry a high voltage: a hybrid does, and what is neither petrol nor
// diesel is often electric, for which the format has no word.
func (m Motive) HighVoltage() bool { return m == Hybrid || m == "other" }

// OfSensor reports whether the fault is what the coolant sensor shows: what it showed is no witness then.
func (c Cause) OfSensor() bool { return c == "sensor-reads-low" || c == "sensor-reads-high" }

// Text is the cause in the words of the trade.
func (c Cause) Text() say.Text { return wordText("cause."+string(c), c) }

// Name is Text in English.
func (c Cause) Name() string { return c.Text().String() }

// Text is the check in the words of the trade.
func (k TestKind) Text() say.Text { return wordText("test."+string(k), k) }

// Name is Text in English.
func (k TestKind) Name() string { return k.Text().String() }

// Text is the test's result in the words of the trade.
func (g GasResult) Text() say.Text { return wordText("gas."+string(g), g) }

// Name is Text in English.
func (g GasResult) Name() string { return g.Text().String() }

// Text is how the sample looks in the words of the trade.
func (l Looks) Text() say.Text { return wordText("looks."+string(l), l) }

// Name is Text in English.
func (l Looks) Name() string { return l.Text().String() }

// Text is the level in the words of the trade.
func (l LevelState) Text() say.Text { return wordText("level."+string(l), l) }

// Name is Text in English.
func (l LevelState) Name() string { return l.Text().String() }

// Text is the flow in the words of the trade.
func (f HeaterFlow) Text() say.Text { return wordText("heater-flow."+string(f), f) }

// Name is Text in English.
func (f HeaterFlow) Name() string { return f.Text().String() }

// CodeStates lists the usual states of a trouble code; a reader may have others.
func CodeStates() []string { return []string{"stored", "pending", "permanent"} }

// StateText is the code's state in words, or as the reader has it.
func (c Code) StateText() say.Text {
	switch {
	case slices.Contains(CodeStates(), c.State):
		return say.Of("code-state." + c.State)
	case c.State == "":
		return say.Text{}
	}
	return say.Own(c.State)
}

// Text is the surface in words.
func (s Surface) Text() say.Text {
	switch {
	case s.Word != "":
		return say.Of("surface." + s.Word)
	case s.Emissivity != 0:
		return say.Of("surface.stated", s.Emissivity)
	}
	return say.Text{}
}

// What a verdict can be confirmed by beside the workshop checks.
const (
	ByHoseMap = "hose-map"
	ByWarmUp  = "warm-up"
)

// Confirmation is what a verdict was confirmed by in the words of the trade: the
// hose map, the warm-up or a workshop check.
func Confirmation(word string) say.Text {
	if word == ByHoseMap || word == ByWarmUp {
		return say.Of("confirmation." + word)
	}
	return TestKind(word).Text()
}

// wordText is the catalogue's template of that name for a word of the
// vocabulary. Nothing is said of the empty word; one that isn't in the
// vocabulary is said as it stands.
func wordText[T vocabulary](key string, w T) say.Text {
	if slices.Contains(w.words(), string(w)) {
		return say.Of(key)
	}
	if w == "" {
		return say.Text{}
	}
	return say.Own(string(w))
}
