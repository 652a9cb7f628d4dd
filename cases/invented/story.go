package invented

import (
	"math/rand"
	"strings"

	"loopbook/cases"
)

// story is what the customer says, from the symptoms that go with the fault.
func story(r *rand.Rand, c *cases.Case) {
	var parts []string
	for _, s := range c.Complaint.Symptoms {
		if said := sayings[s]; len(said) > 0 {
			parts = append(parts, pick(r, said))
		}
	}
	if len(parts) == 0 {
		parts = append(parts, pick(r, vague))
	}
	c.Title = parts[0]
	c.Complaint.Text = strings.Join(parts, ". ") + ". " + pick(r, since) + "."
	c.Tags = nil
	for _, tag := range tags {
		if r.Intn(12) == 0 {
			c.Tags = append(c.Tags, tag)
		}
	}
}

// The words are invented; a real maker, person or shop of such a name is chance.
var (
	makers = strings.Fields(`Ostrad Velmar Kestin Brunnow Talvik Norbeck Aurenne Palisar Corvant Zelmira Hadrel Tindar`)
	models = strings.Fields(`Sorrel Lark Merrow Plover Harrier Teasel Bramble Fennel Corrie Linnet Dunlin Heron Marten Sable Yarrow Tansy`)
	first  = strings.Fields(`Dorian Malva Ruben Ilka Teo Sunniva Pavel Oriana Bastian Liv Corin Edda Jarek Noemi Anselm Vesna`)
	last   = strings.Fields(`Peckwell Varga Linde Ostrow Hallam Brandic Quill Sorensby Tamm Verrell Moncada Ashgrove Riedel Novotka Fenwick Lascar`)

	vague = []string{"Something is wrong with the cooling", "The light comes on now and then", "It was warmer than usual once"}
	since = []string{
		"Since last week", "Since the first frost", "For a month now", "Since it came back from another workshop", "Only on the motorway",
		"Coolant was topped up twice", "The thermostat was replaced before, without success", "Worse with a trailer", "It began after a long standstill",
	}
	notes = []string{ // true of any fault, and of none
		"Clear as day once all was written down.", "The measurements said so before anything was opened.", "The customer was shown the numbers.",
		"Seen by two of us.", "The last check settled it.", "Written down while it was fresh.",
	}
	confirmations = []string{"warm idle after the repair", "the part renewed", "another workshop"}
	tags          = []string{"fleet", "comeback", "teaching", "winter", "towing", "warranty", "quick", "tricky"}
)

var sayings = map[cases.Symptom][]string{
	"warning-light":             {"The warning light is on", "Light on the dash since this morning"},
	"gauge-low":                 {"The needle stays low", "The gauge never gets to the middle"},
	"gauge-swings":              {"The needle swings", "The gauge goes up and down"},
	"overheats-idle":            {"Gets hot in traffic", "Boils over at the lights"},
	"overheats-road":            {"Overheats on the motorway", "Runs hot uphill"},
	"overheats-always":          {"Overheats after ten minutes", "Always too hot"},
	"cabin-heat-poor":           {"Poor cabin heat", "Heater only lukewarm"},
	"cabin-heat-comes-and-goes": {"The heater comes and goes", "Warm air only when driving"},
	"slow-warm-up":              {"Slow to warm up", "Takes half an hour to get warm"},
	"coolant-loss":              {"Loses coolant", "The bottle is empty every week"},
	"coolant-smell":             {"A sweet smell under the bonnet", "Smells of coolant inside"},
	"white-exhaust":             {"White smoke from the exhaust", "Steam behind the car"},
	"bubbles-in-bottle":         {"Bubbles in the bottle", "The bottle gurgles"},
	"hoses-hard-cold":           {"Hoses hard in the morning", "The upper hose is hard when cold"},
	"oil-milky":                 {"Milky oil under the cap", "The oil looks like coffee"},
	"fan-always-on":             {"The fan never stops", "The fan runs with the key off"},
	"fan-never-on":              {"The fan never runs", "Nobody has heard the fan for weeks"},
	"fuel-use-up":               {"Uses more fuel", "Thirsty since autumn"},
}

// lessons are what each fault teaches, by its signs in the trade's table (testdata/trade/signatures.csv).
var lessons = map[cases.Cause][]string{
	cases.Healthy:             {"A sound loop needs no part: say so, with the numbers.", "A needle that moves is not a fault."},
	"thermostat-stuck-open":   {"A radiator hose that warms with the engine from the first minute names an open thermostat.", "A code names a circuit, not a part: read the hoses from cold."},
	"thermostat-stuck-closed": {"A cold radiator on a hot engine: look at the step over the thermostat.", "Feel both sides of the thermostat before blaming the pump."},
	"thermostat-late":         {"An overshoot on the first warm-up, then a fall: only a log from cold shows it.", "Boil it and measure: late is not shut."},
	"thermostat-early":        {"A steady low needle may be the wrong rating: read the stamp.", "What it holds, idle or road, tells early from stuck open."},
	"radiator-restricted":     {"A big drop over the radiator of an engine that is too hot: the core, not the thermostat.", "Scan the core's face before ordering a thermostat."},
	"radiator-airflow":        {"Hot all over and hardly any drop: look between the condenser and the radiator.", "A lamp behind the fins is quicker than any part."},
	"fan-not-running":         {"Hot in traffic and well on the road: command the fan first.", "The two-minute fan check comes before the hour of work."},
	"pump-weak":               {"Better or worse with engine speed: think of the flow.", "A pump may turn and not pump: compare idle with raised idle."},
	"coolant-low-air":         {"Look at the level cold before anything else.", "Bleed, then judge: air makes every hose lie."},
	"lower-hose-collapse":     {"Watch the lower hose while the engine is held at speed.", "A hose that is soft when cold may be shut at speed."},
	"bypass-open":             {"Compare the bypass with the lower hose: hot coolant may go round the radiator.", "A cool radiator is not always a shut thermostat."},
	"heater-core-restricted":  {"A hot hose in and a cool one out: the core, not the flap.", "Measure both heater hoses before the dashboard comes out."},
	"heater-valve-shut":       {"Two cool heater hoses on a hot engine: find the valve.", "Ask for heat before judging the heater."},
	"combustion-leak":         {"Test for gas before the third thermostat.", "Pressure that comes before the heat is not steam."},
	"cap-weak":                {"The cap costs least and is tested last: test it first.", "It boils sooner under a weak cap: read the pressure it opens at."},
	"external-leak":           {"Hold pressure cold and wait: drops tell where.", "Coolant that is gone went somewhere: find the place before filling up."},
	"sensor-reads-low":        {"Hold the gun against the sensor's value before believing the gauge.", "Warm hoses and a cold needle: doubt the sensor."},
	"sensor-reads-high":       {"Hold the gun against the sensor's value before believing the gauge.", "A red needle over hoses that are well: doubt the sensor."},
	"coolant-mix-wrong":       {"Measure the strength before the hoses.", "Ask what was topped up, and with what."},
	"fan-always-running":      {"Hear the fan on a cold engine: it should stand.", "Slow to warm with a fan that roars: look at its control."},
	"thermostat-heater-fault": {"A heated thermostat may be well and its heater dead: measure it with the heater on and off.", "Know which thermostat is fitted before judging what it holds."},
	"cap-vacuum-stuck":        {"Hoses sucked flat in the morning: the cap's second valve.", "A bottle that fills and is never drawn back points at the cap."},
	"heater-air-side":         {"Both heater hoses hot and the vent cold: it is the air side.", "Change the cabin filter before the core."},
}
