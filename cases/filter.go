package cases

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"
)

// Field is what a condition asks of.
type Field string

// The fields. Year, Km, Opened and Sure are asked by a range, the others by words.
const (
	ByCause   Field = "cause"
	ByLayout  Field = "layout"
	ByStage   Field = "stage" // open, closed, before-repair, after-repair
	ByCode    Field = "code"
	BySymptom Field = "symptom"
	ByTag     Field = "tag"
	ByMake    Field = "make"
	ByModel   Field = "model"
	ByEngine  Field = "engine"
	ByMotive  Field = "motive"
	ByYear    Field = "year" // of the vehicle
	ByKm      Field = "km"
	ByOpened  Field = "opened"
	ByMonth   Field = "month" // in which it was opened, 1 to 12, UTC
	ByGuess   Field = "guess" // what the program held likeliest before the verdict; right, wrong
	BySure    Field = "sure"  // how sure it was of it, in percent
)

// The words of ByGuess besides the causes.
const (
	GuessRight = "right"
	GuessWrong = "wrong"
)

// The words of ByStage besides those of Stage.
const (
	StageOpen   = "open"
	StageClosed = "closed"
)

// Condition is one filter. Several conditions must all hold; of one condition's
// words one must.
type Condition struct {
	Field     Field
	Not       bool
	Words     []string // whole; of codes, makes, models and engines the beginning
	Low, High float64  // of a range, ends included; of ByOpened in Unix seconds, High not included
}

// Meets reports whether the case that d is of meets the condition.
func (c Condition) Meets(d *Digest) bool { return c.holds(d) != c.Not }

func (c Condition) holds(d *Digest) bool {
	switch c.Field {
	case ByYear:
		return d.Year != 0 && c.within(float64(d.Year))
	case BySure:
		return d.Guess.First != "" && c.within(100*d.Guess.FirstP)
	case ByKm:
		return !math.IsNaN(d.OdometerKm) && c.within(d.OdometerKm)
	case ByOpened:
		at := float64(d.Opened.UnixMicro()) / 1e6
		return !d.Opened.IsZero() && at >= c.Low && at < c.High
	}
	return slices.ContainsFunc(c.Words, func(w string) bool { return c.word(d, w) })
}

func (c Condition) within(v float64) bool { return v >= c.Low && v <= c.High }

func (c Condition) word(d *Digest, w string) bool {
	switch c.Field {
	case ByCause:
		return string(d.Cause) == w
	case ByLayout:
		return d.Layout == w
	case ByMotive:
		return string(d.Motive) == w
	case ByStage:
		return isAt(d, w)
	case BySymptom:
		return slices.Contains(d.Symptoms, Symptom(w))
	case ByTag:
		return slices.ContainsFunc(d.Tags, func(tag string) bool { return strings.EqualFold(tag, w) })
	case ByCode:
		return slices.ContainsFunc(d.Codes, func(code string) bool { return begins(code, w) })
	case ByMonth:
		return !d.Opened.IsZero() && strconv.Itoa(int(d.Opened.Month())) == w
	case ByGuess:
		return guessed(d, w)
	case ByMake:
		return begins(d.Make, w)
	case ByModel:
		return begins(d.Model, w)
	case ByEngine:
		return begins(d.Engine, w)
	}
	return false
}

func isAt(d *Digest, stage string) bool {
	switch stage {
	case StageOpen:
		return d.Cause == ""
	case StageClosed:
		return d.Cause != ""
	case string(BeforeRepair):
		return d.Before
	case string(AfterRepair):
		return d.After
	}
	return false
}

func guessed(d *Digest, w string) bool {
	switch {
	case d.Guess.First == "":
		return false
	case w == GuessRight:
		return d.Guess.First == d.Cause
	case w == GuessWrong:
		return d.Guess.First != d.Cause
	}
	return string(d.Guess.First) == w
}

func begins(text, w string) bool { return len(text) >= len(w) && strings.EqualFold(text[:len(w)], w) }

// Between is the condition that a case was opened at or after from and before to; a
// zero time is any.
func Between(from, to time.Time) Condition {
	c := Condition{Field: ByOpened, Low: math.Inf(-1), High: math.Inf(1)}
	if !from.IsZero() {
		c.Low = float64(from.UnixMicro()) / 1e6
	}
	if !to.IsZero() {
		c.High = float64(to.UnixMicro()) / 1e6
	}
	return c
}
