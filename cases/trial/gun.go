package trial

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
)

// gun is the infrared thermometer with what it is pointed at on this car.
type gun struct {
	set     float64 // its emissivity
	stated  *float64
	biasK   float64
	wallK   float64 // a hose's wall, 60 K over the air around: IR8
	ownK    map[diagram.Point]float64
	surface map[diagram.Point]cases.Surface
	loose   bool // surfaces aren't noted
}

// newGun draws the errors that stay the same on a car. Each hose has its own,
// nineteen of twenty within 1.5 to 4 K, as walls and clamps and angles differ.
func newGun(d dice, l *diagram.Loop) gun {
	g := gun{
		set: 0.95, biasK: d.normal(0.8), wallK: d.between(2, 5), loose: d.chance(0.06),
		ownK: map[diagram.Point]float64{}, surface: map[diagram.Point]cases.Surface{},
	}
	wrong := d.chance(0.05)
	if wrong {
		g.set = pick(d, 0.8, 0.85, 0.9, 1)
	}
	if d.chance(0.5) {
		g.stated = ptr(g.set)
	}
	hoseK := d.between(1.5, 4) / 2
	for _, at := range l.Points {
		g.ownK[at.Point] = d.normal(hoseK)
		g.surface[at.Point] = cases.Surface{Word: surfaceWord(d, at.Point)}
	}
	return g
}

func surfaceWord(d dice, p diagram.Point) string {
	switch p {
	case diagram.Housing:
		return pick(d, "tape", "tape", "tape", "plastic", "plastic", "plastic", "paint", "cast-iron", "aluminium-oxidised")
	case diagram.AirOn, diagram.AirOff, diagram.Vent:
		return ""
	}
	return pick(d, "rubber", "rubber", "rubber", "rubber", "rubber", "rubber", "plastic")
}

// emits is a middling emissivity of the surface.
func emits(s cases.Surface) float64 {
	switch s.Word {
	case "cast-iron":
		return 0.81
	case "aluminium-oxidised":
		return 0.3
	}
	return 0.94
}

func (g gun) noted(airC float64) cases.Gun {
	out := cases.Gun{Emissivity: g.stated}
	if g.stated != nil {
		out.ReflectedC = celsius(airC)
	}
	return out
}

// shows is what the gun reads of a point whose coolant has that temperature.
// Radiation goes with the fourth power, near enough for the gun's band.
func (g gun) shows(d dice, p diagram.Point, coolantC, aroundC, airC float64) float64 {
	if p.Air() {
		return coolantC + d.normal(1)
	}
	over := (coolantC - aroundC) / 60
	skin := coolantC + g.ownK[p]*max(0.3, math.Abs(over))
	if p != diagram.Housing {
		skin -= g.wallK * over
	}
	fourth := func(c float64) float64 { return math.Pow(c+273.15, 4) }
	e := emits(g.surface[p])
	seen := e*fourth(skin) + (1-e)*fourth(airC)
	shown := math.Pow(max(seen-(1-g.set)*fourth(airC), 1)/g.set, 0.25) - 273.15
	return shown + g.biasK + d.normal(0.6)
}

// reached are the five to nine points that are read on this car: those that a
// hand finds easily more often.
func (v *car) reached(d dice) []diagram.Point {
	ease := map[diagram.Point]float64{
		diagram.RadIn: 9, diagram.RadOut: 8, diagram.EngineOut: 7, diagram.HeaterIn: 6, diagram.HeaterOut: 6,
		diagram.PumpIn: 4, diagram.Vent: 3, diagram.Housing: 3, diagram.Bypass: 2, diagram.BottleBleed: 2,
	}
	var list []weighted
	for _, at := range v.loop.Points {
		list = append(list, weighted{string(at.Point), max(ease[at.Point], 1)})
	}
	chosen := map[string]bool{}
	for _, w := range draw(d, 5+d.Intn(5), list) {
		chosen[w] = true
	}
	var out []diagram.Point
	for _, at := range v.loop.Points {
		if chosen[string(at.Point)] {
			out = append(out, at.Point)
		}
	}
	return out
}

// readings are the round's: in 15 % of the rounds one is left out or its point
// can't be reached.
func (m *morning) readings(d dice, r running, points []diagram.Point) []cases.Reading {
	missed := -1
	if d.chance(0.15) {
		missed = d.Intn(len(points))
	}
	var out []cases.Reading
	for i, p := range points {
		shown := m.gun.shows(d, p, m.coolantC(p, r), m.aroundC(), m.airC)
		reading := cases.Reading{Point: p, ShownC: celsius(shown), Surface: m.gun.surface[p]}
		if m.gun.loose {
			reading.Surface = cases.Surface{}
		}
		if i == missed {
			if d.chance(0.5) {
				continue
			}
			reading = cases.Reading{Point: p}
		}
		out = append(out, reading)
	}
	return out
}
