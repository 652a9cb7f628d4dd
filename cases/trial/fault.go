package trial

import (
	"math"

	"loopbook/cases"
)

// fault is what is wrong with a car. Parts are of the healthy value, 1 being
// healthy, unless a comment says otherwise.
type fault struct {
	openLeast, openMost float64 // bounds of the thermostat's opening, 0 to 1
	shiftK              float64 // of the opening temperature
	sticksK             float64 // over the rating: shut until then, once
	heaterDead          bool    // of a heated thermostat

	tubes, face, air, fan float64 // radiator: flow, working face, air; fan's air
	fanStuckOn            bool
	pump, collapse        float64 // collapse: the lower hose's flow at raised speed
	bypass                float64 // the bypass's least opening, 0 to 1

	core, coreFace, blower, flap float64 // flap: part of cold air, 0 to 1
	valve                        string  // shut: "before" or "behind" the measured supply

	trapped lock

	sensorK, sensorSlope, sensorStuckC float64 // stuck: NaN where it moves
	wiring                             bool    // the sensor itself is well

	cap, strength float64 // strength: percent of glycol, below 0 where it is well
	looks         cases.Looks
	level         cases.LevelState
	heat          float64
	drive         string // what a look at the pump's drive shows: belt, play, weep
}

// lock is trapped air: how much of each it can take away, 0 to 1, and by how
// many kelvins it moves the sensor and the upper hose's crown.
type lock struct{ heater, pump, face, sensorK, crownK float64 }

func newFault(d dice, cause cases.Cause) fault {
	f := fault{
		openMost: 1, tubes: 1, face: 1, air: 1, fan: 1, pump: 1, collapse: 1, core: 1, coreFace: 1, blower: 1,
		sensorStuckC: math.NaN(), cap: 1, strength: -1, looks: "clear", level: "full", heat: 1,
	}
	if make := forms()[cause]; make != nil {
		make(d, &f)
	}
	return f
}

// forms says how each fault comes, from clearly noticeable to bad.
func forms() map[cases.Cause]func(dice, *fault) {
	return map[cases.Cause]func(dice, *fault){
		"thermostat-stuck-open":   func(d dice, f *fault) { f.openLeast = 0.08 * math.Pow(10, d.Float64()) },
		"thermostat-stuck-closed": func(d dice, f *fault) { f.openMost = pick(d, 0, 0, d.between(0, 0.01)) },
		"thermostat-late":         late,
		"thermostat-early":        func(d dice, f *fault) { f.shiftK = -d.between(9, 25) },
		"radiator-restricted": func(d dice, f *fault) {
			f.face = d.between(0.3, 0.65)
			f.tubes = f.face * d.between(0.05, 0.2)
		},
		"radiator-airflow":    func(d dice, f *fault) { f.air = d.between(0.12, 0.4) },
		"fan-not-running":     func(d dice, f *fault) { f.fan = pick(d, 0, 0, d.between(0.1, 0.3)) },
		"pump-weak":           weakPump,
		"coolant-low-air":     trappedAir,
		"lower-hose-collapse": func(d dice, f *fault) { f.collapse = d.between(0.04, 0.2) },
		"bypass-open": func(d dice, f *fault) {
			f.bypass = d.between(1.5, 4) // the plate is off its seat or missing
			if d.chance(0.2) {           // no thermostat fitted at all
				f.openLeast = 1
			}
		},
		"heater-core-restricted": func(d dice, f *fault) { f.core, f.coreFace = d.between(0.04, 0.16), d.between(0.5, 1) },
		"heater-valve-shut": func(d dice, f *fault) {
			f.core, f.valve = pick(d, 0, 0, d.between(0, 0.02)), pick(d, "before", "behind")
		},
		"combustion-leak": combustion,
		"cap-weak":        func(d dice, f *fault) { f.cap, f.level = d.between(0, 0.5), pick[cases.LevelState](d, "full", "low") },
		"external-leak":   leak,
		"sensor-reads-low": func(d dice, f *fault) {
			sensor(d, f, -1)
			if d.chance(0.15) {
				f.sensorStuckC = pick(d, -40, d.between(20, 60))
			}
		},
		"sensor-reads-high": func(d dice, f *fault) {
			sensor(d, f, 1)
			if d.chance(0.15) {
				f.sensorStuckC = d.between(105, 140)
			}
		},
		"coolant-mix-wrong":       wrongMix,
		"fan-always-running":      func(d dice, f *fault) { f.fanStuckOn, f.fan = true, d.between(1.4, 2.2) },
		"thermostat-heater-fault": func(_ dice, f *fault) { f.heaterDead = true },
		"cap-vacuum-stuck":        func(d dice, f *fault) { f.level = pick[cases.LevelState](d, "full", "low") },
		"heater-air-side": func(d dice, f *fault) {
			if d.chance(0.2) {
				f.blower = d.between(0.1, 0.35) // filter or blower
			} else {
				f.flap = d.between(0.4, 0.95)
			}
		},
	}
}

// late either sticks until it jumps or never opens far.
func late(d dice, f *fault) {
	if d.chance(0.65) {
		f.sticksK, f.shiftK = d.between(9, 22), d.between(0, 3)
		return
	}
	f.shiftK, f.openMost = d.between(4, 12), d.between(0.05, 0.2)
}

func weakPump(d dice, f *fault) {
	f.pump = d.between(0.05, 0.22)
	f.drive = pick(d, "", "", "belt", "play", "weep")
}

// trappedAir spoils the heater, the sensor, or both, and the pump with them.
func trappedAir(d dice, f *fault) {
	f.level = pick[cases.LevelState](d, "low", "low", "low", "empty", "full") // full: shut in after a filling
	f.trapped = lock{pump: d.between(0.1, 0.6), face: d.between(0, 0.3), crownK: pick(d, 0, d.between(8, 25))}
	where := d.Intn(3)
	if where != 0 {
		f.trapped.heater = d.between(0.7, 1)
	}
	if where != 1 {
		f.trapped.sensorK = d.between(6, 16)
	}
}

// combustion gas collects as air does; a small leak moves no temperature yet.
func combustion(d dice, f *fault) {
	f.level, f.looks = pick[cases.LevelState](d, "low", "low", "full"), "clear"
	if d.chance(0.15) {
		f.looks = "oily"
	}
	if d.chance(0.6) {
		f.heat = d.between(1.05, 1.35)
		f.trapped = lock{heater: d.between(0.2, 0.95), pump: d.between(0.1, 0.5), sensorK: d.between(2, 10), crownK: pick(d, 0, d.between(6, 15))}
	}
}

// leak is found wet but full, or so low that it acts as trapped air.
func leak(d dice, f *fault) {
	f.level = pick[cases.LevelState](d, "full", "low", "low", "empty")
	if f.level != "full" && d.chance(0.5) {
		f.trapped = lock{heater: d.between(0.3, 0.9), pump: d.between(0, 0.4), sensorK: d.between(0, 6)}
	}
}

// sensor is off by the same everywhere, or more the hotter it is.
func sensor(d dice, f *fault, sign float64) {
	f.wiring = d.chance(0.25)
	if d.chance(0.65) {
		f.sensorK = sign * d.between(9, 32)
		return
	}
	f.sensorSlope = sign * d.between(0.15, 0.4)
}

// wrongMix is too strong, too weak, or sludge.
func wrongMix(d dice, f *fault) {
	switch d.Intn(3) {
	case 0:
		f.strength = d.between(68, 95)
	case 1:
		f.strength = d.between(2, 27)
	default:
		f.looks = pick[cases.Looks](d, "sludge", "sludge", "rusty", "oily")
		f.face, f.core, f.coreFace = d.between(0.5, 0.85), d.between(0.06, 0.3), d.between(0.5, 0.9)
		f.tubes = f.face * d.between(0.25, 0.6)
	}
}
