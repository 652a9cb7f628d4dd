package say

import "loopbook/diagram"

// PointName is a point as a heading, or beside its number.
func PointName(p diagram.Point) Text {
	if !p.Known() {
		return Own(string(p)) // as it stands in the case
	}
	return Of("point." + string(p))
}

// Place is a point within a sentence, behind a colon or in brackets: there its
// gender and its case don't matter.
func Place(p diagram.Point) Text {
	if !p.Known() {
		return Own(string(p))
	}
	return Of("place." + string(p))
}

// LoopName is a layout's.
func LoopName(l *diagram.Loop) Text { return Of("loop." + l.ID) }

// What a heated thermostat holds at light load and under load: TH6, TH7,
// published (T2).
const (
	lightLowC, lightHighC diagram.Celsius = 100, 110
	loadLowC, loadHighC   diagram.Celsius = 82, 90
)

// LoopAbout is a sentence or two on a layout for a person who chooses.
func LoopAbout(l *diagram.Loop) Text {
	return Of("loop-about."+l.ID, lightLowC, lightHighC, loadLowC, loadHighC)
}

// DeltaName is that of a difference of the layouts.
func DeltaName(name string) Text { return Of("delta." + name) }
