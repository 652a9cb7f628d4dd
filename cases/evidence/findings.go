// Package evidence goes from a case to its findings: the readings corrected
// for what the gun saw, the differences against what this loop would show here
// and now, and flags that say in one sentence what is out and why.
//
// What a loop would show comes from an Expecter: a table of the trade's rules,
// or a model. Temperatures are degrees Celsius, differences kelvins. Nothing
// here fails on a case that is merely incomplete: what isn't known isn't
// judged.
package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Findings is what a case's measurements say.
type Findings struct {
	Rounds  []Round   // as the case's rounds
	Deltas  []Delta   // round by round, in the layout's order
	Flags   []Flag    // what can hurt, then by severity, then by round
	WarmUps []WarmUp  // as the case's logs
	Boiling []Boiling // before the repair and after it, where cap, coolant and temperature are known
}

// Round is what a round's measurements say, or nothing where there is no such round.
func (f Findings) Round(i int) Round {
	if i < 0 || i >= len(f.Rounds) {
		return Round{}
	}
	return f.Rounds[i]
}

// Round holds one round's readings by their point, the last one of each.
type Round struct {
	Readings map[diagram.Point]Reading
	Expected map[diagram.Point]Range // of every point, read or not
	EngineC  *diagram.Celsius        // the engine's temperature as judged by; nil: not known
	EngineBy say.Text                // what EngineC was taken from
	Regime   Regime
	CapShut  bool // the engine is hot, or was and hasn't been shown cold since
}

// Out is how many readings are out of their range.
func (r Round) Out() int {
	n := 0
	for _, x := range r.Readings {
		if x.State.Out() {
			n++
		}
	}
	return n
}

// Reading is one reading after correction. TrueC is the temperature of the
// surface: rubber stands a few kelvins under the coolant within.
type Reading struct {
	Point         diagram.Point
	ShownC, TrueC diagram.Celsius
	Surface       cases.Surface
	CorrectionK   diagram.DeltaK // TrueC − ShownC
	UncertainK    diagram.DeltaK // either way, from the surface's emissivity
	Doubtful      bool           // too uncertain to judge by; takes no part
	Impossible    bool           // contradicts its neighbour; takes no part
	Why           say.Text       // of Doubtful or Impossible
	Expected      *Range         // nil: no rule for here and now
	State         State
}

// Usable reports whether the reading may be judged by.
func (r Reading) Usable() bool { return !r.Doubtful && !r.Impossible }

// Range is what a point would show on a healthy loop, here and now.
type Range struct {
	LowC, HighC diagram.Celsius
	Source      say.Text
	Class       Class
}

// OffK is by how much a temperature is out of the range; 0 within it.
func (r Range) OffK(t diagram.Celsius) diagram.DeltaK {
	return max(0, r.LowC.Minus(t), t.Minus(r.HighC))
}

// Delta is a difference of the layout, From minus To. To and From are words
// of points; the sensor's From is "ect".
type Delta struct {
	Name          string          `json:"name"`
	Round         int             `json:"round"`
	From          string          `json:"from"`
	To            string          `json:"to"`
	ValueK        diagram.DeltaK  `json:"value_k"`
	ExpectedLowK  *diagram.DeltaK `json:"expected_low_k"`
	ExpectedHighK *diagram.DeltaK `json:"expected_high_k"`
	State         State           `json:"state"`
	Source        say.Text        `json:"-"`
	Class         Class           `json:"-"`
}

// Sensor is the From of the delta whose minuend is the scan tool's value.
const Sensor = "ect"

// State says how a value stands against its range.
type State string

// The states. A reading that takes no part is Unknown.
const (
	Low     State = "low"
	InRange State = "in-range"
	High    State = "high"
	Unknown State = "unknown"
)

// Out reports whether the value is out of its range.
func (s State) Out() bool { return s == Low || s == High }

// OutOfRange reports whether a reading or a difference of a round is out of its range, which need not speak
// of a fault.
func (f Findings) OutOfRange(round int) bool {
	return f.Round(round).Out() > 0 || slices.ContainsFunc(f.Deltas, func(d Delta) bool { return d.Round == round && d.State.Out() })
}

// Flag is one thing that stands out. Because holds the numbers, the rule and
// where the rule comes from.
type Flag struct {
	ID       string
	Round    int // WholeCase: of no one round
	Severity Severity
	Text     say.Text
	Because  []say.Text
	Points   []diagram.Point // where it happens
	Stage    cases.Stage     // of the workshop test, the log or the hottest coolant it comes from; "": of none, or not noted
}

// WholeCase is the Round of a flag that belongs to no one round.
const WholeCase = -1

// Severity says what a flag asks for.
type Severity string

// The severities: a finding to act on, one to look into, and a remark.
const (
	Act  Severity = "act"
	Look Severity = "look"
	Note Severity = "note"
)

// Boiling is how far the hottest coolant that one side of the repair tells of is from boiling.
type Boiling struct {
	PointC   diagram.Celsius `json:"point_c"`
	HottestC diagram.Celsius `json:"hottest_c"`
	MarginK  diagram.DeltaK  `json:"margin_k"`
	Where    say.Text        `json:"-"` // HottestC was: in a round, a freeze frame or a log
	Stage    cases.Stage     `json:"-"` // of that side
}

// Hottest is the boiling of the side that was hotter; nil: neither is known.
func (f Findings) Hottest() *Boiling {
	var most *Boiling
	for i := range f.Boiling {
		if b := &f.Boiling[i]; most == nil || b.HottestC > most.HottestC {
			most = b
		}
	}
	return most
}

// BoilingOf is the boiling of the side that a round's stage is of; nil: not known.
func (f Findings) BoilingOf(noted cases.Stage) *Boiling {
	for i := range f.Boiling {
		if b := &f.Boiling[i]; b.Stage.Holds(noted) {
			return b
		}
	}
	return nil
}
