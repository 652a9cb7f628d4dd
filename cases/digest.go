package cases

import (
	"hash/fnv"
	"math"
	"slices"
	"strings"
	"time"
	"unicode"
)

// Digest is what filters, counts, likeness and the shop's history ask of a case:
// small enough that a hundred thousand of them are looked at between two
// keystrokes.
type Digest struct {
	Key        int64 // of the notebook's row
	Opened     time.Time
	Changed    time.Time
	Layout     string
	Motive     Motive
	Make       string
	Model      string
	Engine     string
	Year       int     // 0: not known
	OdometerKm float64 // NaN: not known
	Car        uint64  // the same for the same vehicle; 0: not known
	Before     bool    // has something measured before the repair
	After      bool
	Cause      Cause // empty while the case is open
	Confirmed  bool
	Symptoms   []Symptom
	Codes      []string
	Tags       []string
	Deltas     []Deviation
	Minutes    float64 // of the checks before the repair; NaN: none noted
	Guess      Guess
}

// TaughtTag marks a case that is taught from: a copy, whose car is another case's, or a simulated car. What a shop has
// met is counted without it.
const TaughtTag = "taught"

// Taught reports whether the case is one that is taught from.
func (d *Digest) Taught() bool { return slices.Contains(d.Tags, TaughtTag) }

// Deviation is how far a difference of the loop is out of what a healthy one shows
// here and now: 0 within the range, ±1 one range's width beyond its end.
type Deviation struct {
	Name string
	Z    float64
}

// Guess is what the program held likeliest before the verdict, and how likely it
// held the verdict.
type Guess struct {
	First  Cause // empty: it wasn't asked
	FirstP float64
	TruthP float64 // of the verdict
}

// DigestOf takes what stands in the case itself. Deviations, minutes and the guess
// need more than that.
func DigestOf(c *Case) Digest {
	d := Digest{
		Opened: c.Opened, Layout: c.Loop.Layout, Motive: c.Vehicle.Motive,
		Make: strings.TrimSpace(c.Vehicle.Make), Model: strings.TrimSpace(c.Vehicle.Model), Engine: strings.TrimSpace(c.Vehicle.Engine),
		OdometerKm: math.NaN(), Minutes: math.NaN(), Car: carOf(c),
		Before: c.HasStage(BeforeRepair), After: c.HasStage(AfterRepair),
		Cause: c.Verdict.Cause, Confirmed: strings.TrimSpace(c.Verdict.ConfirmedBy) != "",
		Symptoms: c.Complaint.Symptoms, Tags: c.Tags,
	}
	if c.Vehicle.Year != nil {
		d.Year = *c.Vehicle.Year
	}
	if c.Vehicle.OdometerKm != nil {
		d.OdometerKm = *c.Vehicle.OdometerKm
	}
	for _, code := range c.Codes {
		if word := InLetters(code.Code); word != "" {
			d.Codes = append(d.Codes, word)
		}
	}
	return d
}

// carOf tells vehicles apart: by their number, or else by owner, make and model.
func carOf(c *Case) uint64 {
	v := c.Vehicle
	text := number(v.VIN)
	if text == "" {
		if c.Customer.Name == "" || v.Make+v.Model == "" {
			return 0
		}
		text = c.Customer.Name + "\n" + v.Make + "\n" + v.Model
	}
	h := fnv.New64a()
	h.Write([]byte(strings.ToLower(strings.Join(strings.Fields(text), " "))))
	return max(h.Sum64(), 1)
}

// number is a vehicle's number as signs alone, however they are grouped; "" where there is no figure in it, as in "unknown".
func number(vin string) string {
	if !strings.ContainsFunc(vin, unicode.IsNumber) {
		return ""
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsNumber(r) {
			return r
		}
		return -1
	}, vin)
}

// HasStage reports whether a round, a log or a test is of the stage; what isn't noted is before the repair.
func (c *Case) HasStage(stage Stage) bool {
	return slices.ContainsFunc(c.Rounds, func(r Round) bool { return stage.Holds(r.Stage) }) ||
		slices.ContainsFunc(c.Logs, func(l Log) bool { return stage.Holds(l.Stage) }) ||
		slices.ContainsFunc(c.Tests, func(t Test) bool { return stage.Holds(t.Stage) })
}
