package picture_test

import (
	"testing"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/picture"
)

func TestGhostsCompareWhatIsMeasured(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	at := func(c diagram.Celsius, m drawing.Mark) drawing.PointState {
		return drawing.PointState{Text: units.Metric().Temp(c), TrueC: &c, Mark: m}
	}
	s := drawing.State{Points: map[diagram.Point]drawing.PointState{
		diagram.Housing: at(95.4, drawing.Kept), diagram.EngineOut: at(60, drawing.Kept), diagram.RadIn: at(60, drawing.Repeat),
		diagram.AirOn: at(20, drawing.Kept),
	}}
	would := func(p diagram.Point) (evidence.Range, bool) {
		return evidence.Range{LowC: 80, HighC: 95}, p != diagram.AirOn
	}
	got := picture.Ghosts(l, s, would, say.English())
	for p, want := range map[diagram.Point]drawing.Ghost{
		diagram.Housing:   {Measured: "95.4", Would: "80–95", Match: drawing.Agrees}, // 95, as it is read
		diagram.EngineOut: {Measured: "60", Would: "80–95", Match: drawing.Differs},
		diagram.RadIn:     {Measured: "60", Would: "80–95"}, // to be repeated: takes no part
		diagram.AirOn:     {Measured: "20"},
		diagram.RadOut:    {Would: "80–95"},
	} {
		if got[p] != want {
			t.Errorf("%s: %+v, want %+v", p, got[p], want)
		}
	}
}
