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
	notes = []string{
		"Found on the bench, clear as day.", "Both hoses said the same before anything was opened.", "The second round settled it.",
		"Seen with the cap off, engine cold.", "The old part lies on the shelf.", "Proved after the repair with the same walk.",
	}
	confirmations = []string{"warm idle after the repair", "the part renewed", "another workshop"}
	lessons       = []string{
		"Read the lower hose before ordering parts.", "A code names a circuit, not a part.", "The cheap check came last again.",
		"Ask what was done before.", "Every range hangs on the air outside: write it down.", "Measure twice, order once.", "Never trust a gun on bare aluminium.",
	}
	tags = []string{"fleet", "comeback", "teaching", "winter", "towing", "warranty", "quick", "tricky"}
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
