package report

import "loopbook/cases"

// Deferral says what goes before anything that this program shows.
const Deferral = "The figures here are general. The vehicle maker's procedure, the law of the place and qualified judgement come first."

// Cautions are the dangers of the work on this case, the gravest first, in a
// sentence or two each. Deferral closes them.
//
// The limit for the cap is the strictest that an owner's manual sets (SF1 of
// testdata/trade/numbers.csv, published). Pressure climbs fast under a tester
// by service texts (V6 to V8 of sources.md); fan by T6, fan drive by V20,
// glycol by T20, exhaust by R7. The rest is common practice.
func Cautions(c *cases.Case) []string {
	list := []string{
		"Scalding: never open a hot system, nor one with the engine running. Let it cool below 50 °C (122 °F), lay a thick cloth over the cap, turn it to the first stop, wait, then take it off with your face away.",
		"Pressure testing: not above the cap's rating or the maker's limit. Under a tester a running engine drives the pressure up fast. Let it off before the tester comes off.",
		"The fan may start at any moment, with the key off too: unplug it before reaching in.",
		"Belt, pulleys and a driven fan catch sleeves and hair: stop the engine before reaching near them.",
		"Coolant poisons people and pets, in small amounts too. Wipe up every spill, cover pans, keep none in a drink bottle. Once swallowed: doctor or vet at once.",
		"Exhaust in a closed room kills: run the engine outdoors or with extraction.",
	}
	if c.Vehicle.Motive == cases.Hybrid {
		list = append(list, "High voltage: trained people only. Switch it off, lock it, prove it dead before any work near orange cables; parts can stay charged.")
	}
	return append(list, Deferral)
}
