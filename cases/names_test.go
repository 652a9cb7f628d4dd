package cases_test

import (
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Each word of the format is said in every language.
func TestVocabularyHasItsWords(t *testing.T) {
	var all []say.Text
	all = append(all, texts(cases.Words[cases.Stage]()...)...)
	all = append(all, texts(cases.Words[cases.FanState]()...)...)
	all = append(all, texts(cases.Words[cases.Heater]()...)...)
	all = append(all, texts(cases.Words[cases.Gauge]()...)...)
	all = append(all, texts(cases.Words[cases.Motive]()...)...)
	all = append(all, texts(cases.Words[cases.FanKind]()...)...)
	all = append(all, texts(cases.Words[cases.Base]()...)...)
	all = append(all, texts(cases.Words[cases.Symptom]()...)...)
	all = append(all, texts(cases.Words[cases.Cause]()...)...)
	all = append(all, texts(cases.Words[cases.TestKind]()...)...)
	all = append(all, texts(cases.Words[cases.GasResult]()...)...)
	all = append(all, texts(cases.Words[cases.Looks]()...)...)
	all = append(all, texts(cases.Words[cases.LevelState]()...)...)
	all = append(all, texts(cases.Words[cases.HeaterFlow]()...)...)
	for _, w := range cases.Surfaces() {
		all = append(all, cases.Surface{Word: w}.Text())
	}
	for _, state := range cases.CodeStates() {
		all = append(all, cases.Code{State: state}.StateText())
	}
	all = append(all, cases.UsualRounds()...)
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range all {
			if words[text.Key()] == "" {
				t.Errorf("%s: %q has no words", l, text.Key())
			}
		}
	}
}

func texts[T interface {
	~string
	Text() say.Text
}](words ...T) []say.Text {
	out := make([]say.Text, len(words))
	for i, w := range words {
		out[i] = w.Text()
	}
	return out
}

func TestUnknownWordIsSaidAsItStands(t *testing.T) {
	if got := cases.Cause("gremlins").Name(); got != "gremlins" {
		t.Errorf("Name of a word that isn't known = %q", got)
	}
	if !cases.Cause("").Text().Empty() || cases.Cause("").Name() != "" {
		t.Error("a word that isn't noted says something")
	}
}

// A usual round's label, and the name of a log by hand, are kept in English and read in any language; a
// person's own stay as they are.
func TestUsualNamesAreReadInAnyLanguage(t *testing.T) {
	de, err := say.In(say.DE, units.Metric())
	if err != nil {
		t.Fatal(err)
	}
	for label, want := range map[string]string{"Warm idle": "Warmer Leerlauf", "warm idle": "Warmer Leerlauf", "warm idle, new sensor": "warm idle, new sensor", "": ""} {
		r := cases.Round{Label: label}
		if got := de.Say(r.Title()); got != want {
			t.Errorf("%q is read as %q, want %q", label, got, want)
		}
	}
	for name, want := range map[string]string{"written down": "von Hand notiert", "drive.csv": "drive.csv", "": ""} {
		if got := de.Say(cases.LogTitle(name)); got != want {
			t.Errorf("the log %q is read as %q, want %q", name, got, want)
		}
	}
}

// A loop has no fault of a part that it lacks; where it isn't known what it has, any may be.
func TestALoopHasNoFaultOfAPartThatItLacks(t *testing.T) {
	const heater, runs, rests = cases.Cause("thermostat-heater-fault"), cases.Cause("fan-always-running"), cases.Cause("fan-not-running")
	for _, tt := range []struct {
		loop  cases.Loop
		lacks []cases.Cause
	}{
		{cases.Loop{}, nil},
		{cases.Loop{Layout: "outlet-thermostat", Fan: "electric"}, []cases.Cause{heater}},
		{cases.Loop{Layout: "heated-thermostat", Fan: cases.FixedFan}, []cases.Cause{runs}},
		{cases.Loop{Layout: "heated-thermostat", Fan: cases.NoFan}, []cases.Cause{runs, rests}},
	} {
		all := tt.loop.Causes()
		for _, c := range cases.Words[cases.Cause]() {
			if want := !slices.Contains(tt.lacks, c); slices.Contains(all, c) != want {
				t.Errorf("%+v can have %s: %v", tt.loop, c, !want)
			}
		}
	}
}
