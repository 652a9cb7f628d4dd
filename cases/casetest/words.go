package casetest

import (
	"math/rand"
	"strings"
)

var (
	nouns = strings.Fields(`thermostat radiator hose pump cap heater core valve fan sensor housing gasket bypass bottle belt
		clutch connector relay shroud coolant bleed screw clamp flange manifold bulkhead gauge cabin matrix duct flap impeller
		seal weep drain plug tank neck spring wax jacket head block sleeve elbow tee clip bracket mount loom earth`)
	adjectives = strings.Fields(`cold hot lukewarm stuck blocked corroded swollen soft hard cracked loose tight dry wet oily rusty
		new worn brittle leaking noisy silent slow quick partial full empty upper lower inner outer left right rear front`)
	verbs = strings.Fields(`replaced flushed bled tested cleaned tightened checked measured found refilled warmed cooled held
		dropped climbed swung stayed opened closed leaked smelled dripped turned stopped hissed bubbled`)
	joins = strings.Fields(`after before while until since because without with near under over at the and but then again`)
	tags  = strings.Fields(`comeback fleet quick tricky teaching winter summer towing mountain warranty`)
)

func title(r *rand.Rand) string {
	return pick(r, "Overheats", "Slow to warm", "Poor cabin heat", "Loses coolant", "Gauge swings", "Warning light") +
		", " + pick(r, adjectives...) + " " + pick(r, nouns...)
}

func sentence(r *rand.Rand, words int) string {
	out := make([]string, words)
	for i := range out {
		out[i] = pick(r, [][]string{adjectives, nouns, verbs, joins}[i%4]...)
	}
	return strings.Join(out, " ") + "."
}

func pick[T any](r *rand.Rand, from ...T) T { return from[r.Intn(len(from))] }

// some is up to most of the list, none twice.
func some[T any](r *rand.Rand, list []T, most int) []T {
	out := make([]T, 0, most)
	for _, i := range r.Perm(len(list))[:r.Intn(most+1)] {
		out = append(out, list[i])
	}
	return out
}
