package physics

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"sync"

	"loopbook/assets"
)

// ErrParams says that the parameters' data is at fault.
var ErrParams = errors.New("physics data at fault")

// Row is one parameter with its range over ordinary cars.
type Row struct {
	Name    string  `json:"name"` // of the field of Params
	Unit    string  `json:"unit"`
	Low     float64 `json:"low"`
	Typical float64 `json:"typical"`
	High    float64 `json:"high"`
	Class   string  `json:"class"`  // published, common practice, sum (from sizes), from memory, judgement
	Reason  string  `json:"reason"` // why this range
}

// Table reads the shipped parameters, once. Don't change its rows.
var Table = sync.OnceValues(func() ([]Row, error) { return ParseTable(assets.Physics) })

// ParseTable reads and checks a table: one row for each field of Params, low ≤
// typical ≤ high and all above zero, with unit, class and reason.
func ParseTable(text []byte) ([]Row, error) {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	var rows []Row
	if err := dec.Decode(&rows); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrParams, err)
	}
	fields := reflect.TypeOf(Params{})
	seen := map[string]bool{}
	for i, r := range rows {
		if _, ok := fields.FieldByName(r.Name); !ok || seen[r.Name] {
			return nil, fmt.Errorf("[%d].name: %q is unknown or stands twice: %w", i, r.Name, ErrParams)
		}
		if !(0 < r.Low && r.Low <= r.Typical && r.Typical <= r.High) {
			return nil, fmt.Errorf("[%d]: %s from %g by %g to %g: %w", i, r.Name, r.Low, r.Typical, r.High, ErrParams)
		}
		if r.Unit == "" || r.Class == "" || r.Reason == "" {
			return nil, fmt.Errorf("[%d]: %s has no unit, class or reason: %w", i, r.Name, ErrParams)
		}
		seen[r.Name] = true
	}
	if len(seen) != fields.NumField() {
		return nil, fmt.Errorf("%d rows for %d parameters: %w", len(seen), fields.NumField(), ErrParams)
	}
	return rows, nil
}

// Pick makes parameters of the rows by a choice for each.
func Pick(rows []Row, choose func(Row) float64) Params {
	var p Params
	v := reflect.ValueOf(&p).Elem()
	for _, r := range rows {
		v.FieldByName(r.Name).SetFloat(choose(r))
	}
	return p
}

// Typical are the middle values of the shipped table.
func Typical() (Params, error) {
	rows, err := Table()
	return Pick(rows, func(r Row) float64 { return r.Typical }), err
}
