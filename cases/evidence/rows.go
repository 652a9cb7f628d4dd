package evidence

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// ErrTable says that the data of expected ranges is at fault.
var ErrTable = errors.New("table of expected ranges at fault")

type tableRows struct {
	About  string     `json:"about"`
	Deltas []deltaRow `json:"deltas"`
	Points []pointRow `json:"points"`
}

type deltaRow struct {
	Name string `json:"name"`
	bounds
}

type pointRow struct {
	Point diagram.Point `json:"point"`
	From  string        `json:"from"` // what LowK and HighK are counted from
	bounds
}

type bounds struct {
	When   when            `json:"when"`
	LowK   *diagram.DeltaK `json:"low_k"`
	HighK  *diagram.DeltaK `json:"high_k"`
	Source source          `json:"source"`
	Class  Class           `json:"class"`
}

type source struct {
	ID    string `json:"id"`    // of testdata/trade, for maintainers
	Words string `json:"words"` // of the catalogue
}

func (s source) text() say.Text { return say.Of("source." + s.Words) }

// Class is how well a source is founded.
type Class string

// The classes of a range's source, as testdata/trade/numbers.csv has them, and
// of a trouble code's; Computed is a model's.
const (
	Published      Class = "published"
	CommonPractice Class = "common practice"
	FromMemory     Class = "from memory"
	Computed       Class = "computed"
	TwoLists       Class = "published lists, two agree"
	OneList        Class = "published list, one only"
)

// Text is the class in words.
func (c Class) Text() say.Text {
	switch c {
	case Published:
		return say.Of("class.published")
	case CommonPractice:
		return say.Of("class.common-practice")
	case FromMemory:
		return say.Of("class.from-memory")
	case Computed:
		return say.Of("class.computed")
	case TwoLists:
		return say.Of("class.two-lists")
	case OneList:
		return say.Of("class.one-list")
	}
	return say.Own(string(c))
}

// What a point's range may be counted from.
const (
	fromRating  = "rating"
	fromAmbient = "ambient"
	fromEngine  = "engine"
)

func readRows(text []byte) (tableRows, error) {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	var t tableRows
	err := dec.Decode(&t)
	if err == nil {
		err = t.check()
	}
	if err != nil {
		return tableRows{}, fmt.Errorf("expected.json: %w: %w", ErrTable, err)
	}
	return t, nil
}

func (t tableRows) check() error {
	var faults []error
	for i, r := range t.Deltas {
		at := fmt.Sprintf("deltas[%d]", i)
		if !knownDelta(r.Name) {
			faults = append(faults, fmt.Errorf("%s.name: no layout has a delta %q", at, r.Name))
		}
		if r.LowK == nil && r.HighK == nil {
			faults = append(faults, fmt.Errorf("%s: needs low_k or high_k", at))
		}
		faults = append(faults, r.bounds.check(at))
	}
	for i, r := range t.Points {
		at := fmt.Sprintf("points[%d]", i)
		if !r.Point.Known() {
			faults = append(faults, fmt.Errorf("%s.point: unknown point %q", at, r.Point))
		}
		if r.LowK == nil || r.HighK == nil {
			faults = append(faults, fmt.Errorf("%s: needs low_k and high_k", at))
		}
		faults = append(faults, known(at+".from", []string{r.From}, fromRating, fromAmbient, fromEngine), r.bounds.check(at))
	}
	return errors.Join(faults...)
}

func (b bounds) check(at string) error {
	var faults []error
	if b.LowK != nil && b.HighK != nil && !(*b.LowK < *b.HighK) {
		faults = append(faults, fmt.Errorf("%s.low_k: %g is not below high_k, %g", at, float64(*b.LowK), float64(*b.HighK)))
	}
	if b.Source.ID == "" || b.Source.Words == "" {
		faults = append(faults, fmt.Errorf("%s.source: needs an id and its words", at))
	}
	faults = append(faults, known(at+".class", []Class{b.Class}, Published, CommonPractice, FromMemory), b.When.check(at+".when"))
	return errors.Join(faults...)
}

func (w when) check(at string) error {
	return errors.Join(
		known(at+".side", []diagram.Side{w.Side}, "", diagram.Outlet, diagram.Inlet),
		known(at+".on", []string{w.On}, "", onSolid, onHose),
		known(at+".regime", w.Regime, Shut, Below, AtRating, Above),
		known(at+".pace", w.Pace, Idling, Raised, OnRoad, UnknownPace),
		known(at+".fan", w.Fan, cases.Words[cases.FanState]()...),
		known(at+".heater", w.Heater, cases.Words[cases.Heater]()...),
		known(at+".thermostat", w.Thermostat, seated, opening, full),
	)
}

func known[T ~string](key string, list []T, words ...T) error {
	for _, v := range list {
		if !oneOf(words, v) {
			return fmt.Errorf("%s: unknown word %q: must be one of %q", key, v, words)
		}
	}
	return nil
}

func knownDelta(name string) bool {
	loops, _ := diagram.Loops() // at fault, they have no deltas
	return slices.ContainsFunc(loops, func(l *diagram.Loop) bool {
		return slices.ContainsFunc(l.Deltas, func(d diagram.DeltaAt) bool { return d.Name == name })
	})
}
