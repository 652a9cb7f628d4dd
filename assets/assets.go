// Package assets embeds the data and files that the program is built with.
//
// It imports nothing of the project, so that any floor may read its own data.
package assets

import "embed"

// Loops holds the layouts: one JSON file for each, under loops/.
//
//go:embed loops/*.json
var Loops embed.FS

// PlainLoops holds the loop as the customer's page draws it, by the side that
// the thermostat sits on, in the same form under plain/loops/.
//
//go:embed plain/loops/*.json
var PlainLoops embed.FS

// DejaVuSans and DejaVuSansBold are the fonts of the papers. They carry Latin,
// Greek and Cyrillic and the signs of the trade (≥, ≤, −, →), which the
// window's own font lacks.
var (
	//go:embed fonts/DejaVuSans.ttf
	DejaVuSans []byte
	//go:embed fonts/DejaVuSans-Bold.ttf
	DejaVuSansBold []byte
)

// Icon is the program's sign, two loops that share a side, as PNG: the desktop takes no vectors from a window.
// icon.svg beside it is what it was drawn from, and what menu.sh gives to the desktop.
//
//go:embed pictures/icon.png
var Icon []byte

// Emissivity holds the surfaces of the case format with their emissivities;
// every source has its row in testdata/reference/emissivity.csv.
//
//go:embed emissivity.json
var Emissivity []byte

// Expected holds the ranges that a healthy loop shows, by condition, each row
// with its source.
//
//go:embed expected.json
var Expected []byte

// TroubleCodes lists the generic codes that bear on a cooling loop, with our
// own words for them: code, meaning, part of the loop, causes, class of source.
//
//go:embed dtc.csv
var TroubleCodes []byte

// Demo holds the invented cases of the demo notebook.
//
//go:embed demo/*.json
var Demo embed.FS

// Access holds what stands in the way of each part of a loop, what is renewed
// with it, and the steps of filling and bleeding; the words are in Words.
//
//go:embed access.json
var Access []byte

// Physics holds the parameters of the simulated loop: each with its unit, its
// range, and the reason or the class of source for it.
//
//go:embed physics.json
var Physics []byte

// Diagnosis holds what causes are weighed by, apart from temperatures, under
// diagnosis/; each row has its reason and the class of its source. prior.json is
// how often a workshop meets each cause; symptoms.json, codes.json and tests.json
// how often a car with a cause shows a symptom, stores a code of a group, or comes
// out of a workshop check so; findings.json how often the trade's rules find what;
// frames.json how many freeze frames of a hot engine are of a car that stood;
// checks.json what each check costs.
//
//go:embed diagnosis/*.json
var Diagnosis embed.FS

// Words holds the words that a person reads: a folder for each language, a
// file for each room, a template by its name.
//
//go:embed words/*/*.json
var Words embed.FS
