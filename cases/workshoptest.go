package cases

import (
	"reflect"

	"loopbook/diagram"
)

// Test is a workshop check. Kind says which of the fields below it uses; the
// others stay unknown.
type Test struct {
	Kind  TestKind `json:"kind"`
	Stage Stage    `json:"stage"`

	// pressure-hold
	StartKPa *diagram.KPa     `json:"start_kpa"`
	EndKPa   *diagram.KPa     `json:"end_kpa"`
	Minutes  *float64         `json:"minutes"`
	StartC   *diagram.Celsius `json:"start_c"`
	EndC     *diagram.Celsius `json:"end_c"`

	// cap
	RatedKPa      *diagram.KPa `json:"rated_kpa"`
	OpensKPa      *diagram.KPa `json:"opens_kpa"`
	Holds         *bool        `json:"holds"`
	VacuumValveOK *bool        `json:"vacuum_valve_ok"`

	// combustion-gas
	Result GasResult `json:"result"`

	// coolant
	FreezeC       *diagram.Celsius `json:"freeze_c"`
	VolumePercent *float64         `json:"volume_percent"`
	PH            *float64         `json:"ph"`
	StrayV        *float64         `json:"stray_v"`
	Looks         Looks            `json:"looks"`

	// thermostat-bench and sensor-resistance
	Points      []BenchPoint     `json:"points"`
	RatedOpensC *diagram.Celsius `json:"rated_opens_c"`
	RatedFullC  *diagram.Celsius `json:"rated_full_c"`
	RatedLiftMM *float64         `json:"rated_lift_mm"`
	Reference   []OhmPoint       `json:"reference"`

	// fan
	Commanded *bool            `json:"commanded"`
	Runs      *bool            `json:"runs"`
	StartsC   *diagram.Celsius `json:"starts_c"`

	// level
	State LevelState `json:"state"`

	// pump-drive
	BeltOK *bool `json:"belt_ok"`
	Play   *bool `json:"play"`
	Weep   *bool `json:"weep"`

	// hose-look
	LowerCollapses *bool `json:"lower_collapses"`

	// core-scan: rows over the radiator's face, top first; NaN is a gap
	ShownC [][]float64 `json:"shown_c"`

	// bubbles
	Seen *bool `json:"seen"`

	// heater-flow
	Flows HeaterFlow `json:"flows"`

	Extra Extra `json:"-"`
}

// Bare reports whether nothing was noted of the check: it is named and no more.
func (t Test) Bare() bool {
	t.Kind, t.Stage = "", ""
	all := reflect.ValueOf(t)
	for i := range all.NumField() {
		f := all.Field(i)
		switch f.Kind() {
		case reflect.Slice, reflect.Map:
			if f.Len() > 0 {
				return false
			}
		default:
			if !f.IsZero() {
				return false
			}
		}
	}
	return true
}

// BenchPoint is one line of a bench record: of a thermostat in heated water
// (WaterC, LiftMM, Heating) or of a sensor (TempC, Ohm).
type BenchPoint struct {
	WaterC  *diagram.Celsius `json:"water_c"`
	LiftMM  *float64         `json:"lift_mm"`
	Heating *bool            `json:"heating"`
	TempC   *diagram.Celsius `json:"temp_c"`
	Ohm     *float64         `json:"ohm"`
	Extra   Extra            `json:"-"`
}

// WayUp tells of each point of heated water whether it was met while that was warmed. One that doesn't
// say was. Where all claim the way down and the water still got hotter from each to the next, they are
// of the way up too: nobody begins cold by cooling, and the word is also taken for a heated
// thermostat's current, which was off.
func WayUp(points []BenchPoint) func(BenchPoint) bool {
	down := func(p BenchPoint) bool { return p.Heating != nil && !*p.Heating }
	onlyWarmed := len(points) > 1
	for i, p := range points {
		hotter := p.WaterC != nil && (i == 0 || points[i-1].WaterC != nil && *p.WaterC > *points[i-1].WaterC)
		onlyWarmed = onlyWarmed && down(p) && hotter
	}
	return func(p BenchPoint) bool { return onlyWarmed || !down(p) }
}

// OhmPoint is one line of a sensor's reference curve.
type OhmPoint struct {
	TempC *diagram.Celsius `json:"temp_c"`
	Ohm   *float64         `json:"ohm"`
	Extra Extra            `json:"-"`
}
