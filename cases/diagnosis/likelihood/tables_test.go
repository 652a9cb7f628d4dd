package likelihood_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/published"
)

func shipped(t testing.TB) *likelihood.Tables {
	t.Helper()
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	return tables
}

func sum(v likelihood.Vector) float64 {
	total := 0.0
	for _, p := range v {
		total += p
	}
	return total
}

func TestPriorsSumToOne(t *testing.T) {
	causes := len(cases.Words[cases.Cause]())
	for name, v := range map[string]likelihood.Vector{"Prior": shipped(t).Prior(), "Flat": shipped(t).Flat()} {
		if len(v) != causes || math.Abs(sum(v)-1) > 1e-9 {
			t.Errorf("%s() has %d values that sum to %g, want %d and 1", name, len(v), sum(v), causes)
		}
	}
}

// Whoever multiplies a prior must not change the table's.
func TestPriorIsACopy(t *testing.T) {
	p := shipped(t).Prior()
	p[0] = 7
	if again := shipped(t).Prior()[0]; again == 7 {
		t.Errorf("Prior()[0] = %g after a caller changed its own", again)
	}
}

func TestSymptomsAreDraws(t *testing.T) {
	tables := shipped(t)
	words := cases.Words[cases.Symptom]()
	total := tables.Flat()
	clear(total)
	for _, f := range tables.Symptoms(words) {
		if f.Label.Empty() {
			t.Errorf("factor without words: %+v", f)
		}
		for c, log := range f.Log {
			total[c] += math.Exp(log)
		}
	}
	for c, p := range total {
		if math.Abs(p-1) > 1e-9 {
			t.Errorf("given %s the symptoms' shares sum to %g", cases.Words[cases.Cause]()[c], p)
		}
	}
}

func TestSymptomCountsOnce(t *testing.T) {
	if got := shipped(t).Symptoms([]cases.Symptom{"slow-warm-up", "gauge-low", "slow-warm-up", "no-symptom"}); len(got) != 2 || got[0].Label.String() != "symptom: slow to warm up" {
		t.Errorf("two symptoms, one of them twice, and no word: %+v", got)
	}
}

// testdata/trade/dtc.csv is the list of codes that bear on a loop. That each
// stands in one group only is the loader's to see.
func TestEachCodeHasItsGroup(t *testing.T) {
	for _, row := range published.Rows(t, "trade/dtc.csv") {
		if got := shipped(t).Codes([]cases.Code{{Code: row["code"]}}); len(got) != 1 || !strings.Contains(got[0].Label.String(), row["code"]) {
			t.Errorf("%s: factors %+v, want one", row["code"], got)
		}
	}
}

func TestCodesOfOneGroupAreOneFactor(t *testing.T) {
	codes := []cases.Code{{Code: "P0597"}, {Code: " p0598 "}, {Code: "P1234"}, {Code: "P0217"}}
	got := shipped(t).Codes(codes)
	if len(got) != 2 || !strings.HasPrefix(got[0].Label.String(), "code P0217:") || !strings.HasPrefix(got[1].Label.String(), "code P0597, P0598:") {
		t.Errorf("Codes(%v) = %+v, want one factor for P0217 and one for the heater's", codes, got)
	}
}

// That nothing stands out speaks against a cause only by rules that had something to read: with nothing
// read it says nothing, and without the heater's return it can't clear the heater's valve (F13 is told by
// the hose behind it, published).
func TestSilenceOfARuleThatReadNothing(t *testing.T) {
	against := func(cause cases.Cause, unread ...string) float64 {
		f := shipped(t).Findings(nil, func(needs []string) int {
			if slices.ContainsFunc(needs, func(n string) bool { return slices.Contains(unread, n) || unread == nil }) {
				return 0
			}
			return 2
		})
		i, none := slices.Index(cases.Words[cases.Cause](), cause), slices.Index(cases.Words[cases.Cause](), cases.Healthy)
		return f[0].Log[none] - f[0].Log[i]
	}
	const valve = "heater-valve-shut"
	if got := against(valve); got != 0 {
		t.Errorf("nothing was read, and silence speaks by %g against %s", got, valve)
	}
	all, some := against(valve, "-"), against(valve, "heater_in", "heater_out")
	if !(all > 0.4 && some < all/2) {
		t.Errorf("silence speaks against %s by %.2f with all read and by %.2f without the heater's hoses", valve, all, some)
	}
}

func TestOutcomesSumToOne(t *testing.T) {
	for _, kind := range cases.Words[cases.TestKind]() {
		total := shipped(t).Flat()
		clear(total)
		for _, o := range shipped(t).Outcomes(kind) {
			f, ok := shipped(t).Test(kind, o.Word)
			if !ok || f.Label.Empty() {
				t.Errorf("Test(%s, %s) = %+v, %v", kind, o.Word, f, ok)
			}
			for c, p := range o.P {
				total[c] += p
				if math.Abs(math.Exp(f.Log[c])-p) > 1e-12 || !(p >= 0.002 && p <= 0.99) {
					t.Errorf("%s %s: %g, its log %g", kind, o.Word, p, f.Log[c])
				}
			}
		}
		for c, p := range total {
			if math.Abs(p-1) > 1e-9 {
				t.Errorf("%s given %s sums to %g", kind, cases.Words[cases.Cause]()[c], p)
			}
		}
	}
	if f, ok := shipped(t).Test("level", "no-outcome"); ok {
		t.Errorf("an unknown outcome gives %+v", f)
	}
}

func TestEachCheckHasItsCost(t *testing.T) {
	minutes := map[string]float64{}
	for _, c := range shipped(t).Checks() {
		minutes[c.Check] = c.Minutes
	}
	for _, kind := range cases.Words[cases.TestKind]() {
		if minutes[string(kind)] == 0 {
			t.Errorf("%s has no cost", kind)
		}
	}
	for _, w := range append(likelihood.Walks(), likelihood.HosePoint) {
		if minutes[w] == 0 {
			t.Errorf("%s has no cost", w)
		}
	}
}

// A fan that stands still overheats the car in traffic, a hose that is sucked flat on the road
// (testdata/trade/signatures.csv, F07 and F10, published patterns): so do their freeze frames say.
func TestFrameTellsStandingFromDriven(t *testing.T) {
	hot, warm, shorted := diagram.Celsius(118), diagram.Celsius(97), diagram.Celsius(140)
	still, fast, crawling := 0.0, 90.0, 20.0
	frame := func(c diagram.Celsius, kmh float64) cases.FreezeFrame {
		return cases.FreezeFrame{EctC: &c, SpeedKmh: &kmh}
	}
	for _, tt := range []struct {
		name     string
		frame    cases.FreezeFrame
		symptoms []cases.Symptom
		likelier cases.Cause // than the other; "": it says nothing
	}{
		{"hot in traffic", frame(hot, still), nil, "fan-not-running"},
		{"hot on the road", frame(hot, fast), nil, "lower-hose-collapse"},
		{"hot on the road, told", frame(hot, fast), []cases.Symptom{"overheats-road"}, ""},
		{"hot on the road, told of loss", frame(hot, fast), []cases.Symptom{"coolant-loss"}, "lower-hose-collapse"},
		{"between", frame(hot, crawling), nil, ""},
		{"warm", frame(warm, still), nil, ""},
		{"shorted", frame(shorted, still), nil, ""},
		{"empty", cases.FreezeFrame{}, nil, ""},
	} {
		c := cases.Case{Codes: []cases.Code{{Code: "P0300"}, {Code: "P0217", FreezeFrame: tt.frame}}, Complaint: cases.Complaint{Symptoms: tt.symptoms}}
		f, ok := shipped(t).Frame(&c)
		if ok != (tt.likelier != "") {
			t.Errorf("%s: %v", tt.name, ok)
			continue
		}
		if ok && !strings.Contains(f.Label.String(), "P0217: 118 °C") {
			t.Errorf("%s: %q", tt.name, f.Label)
		}
		at := func(c cases.Cause) float64 { return f.Log[slices.Index(cases.Words[cases.Cause](), c)] }
		if ok && (at("fan-not-running") > at("lower-hose-collapse")) != (tt.likelier == "fan-not-running") {
			t.Errorf("%s: fan %.2f, hose %.2f", tt.name, at("fan-not-running"), at("lower-hose-collapse"))
		}
	}
}

// The only complaint is the chief one: it tells more than the same among others.
func TestOnlyComplaintTellsMore(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	alone, among := tables.Symptoms([]cases.Symptom{"fan-never-on"}), tables.Symptoms([]cases.Symptom{"fan-never-on", "warning-light", "fan-never-on"})
	if len(alone) != 1 || len(among) != 2 {
		t.Fatalf("%d and %d factors, want 1 and 2", len(alone), len(among))
	}
	for i := range alone[0].Log {
		if !(alone[0].Log[i] < among[0].Log[i] && among[0].Log[i] < 0) {
			t.Errorf("cause %d: %g alone, %g among others", i, alone[0].Log[i], among[0].Log[i])
		}
	}
}

// The ways that reading the codes comes out sum to 1 for each cause, and P0128 is the likeliest to be seen of
// a thermostat that stays open (F01, published pattern).
func TestCodesComeOutOneWay(t *testing.T) {
	all := shipped(t).CodeOutcomes()
	for i, cause := range cases.Words[cases.Cause]() {
		total, likeliest := 0.0, all[1]
		for _, o := range all {
			total += o.P[i]
			if o.Word != evidence.Pass && o.P[i] > likeliest.P[i] {
				likeliest = o
			}
		}
		if math.Abs(total-1) > 1e-9 {
			t.Errorf("%s: the outcomes sum to %g", cause, total)
		}
		if cause == "thermostat-stuck-open" && likeliest.Word != "P0128" {
			t.Errorf("%s: %s is the likeliest to be seen", cause, likeliest.Word)
		}
	}
}

// A heated thermostat holds about 105 °C (TH6 of testdata/trade/numbers.csv, published): an engine that its frame shows there is as hot
// as it should be, whether the rating is noted or not, and one at 123 °C isn't.
func TestAFrameIsHotAgainstItsThermostat(t *testing.T) {
	for _, tt := range []struct {
		layout string
		shown  diagram.Celsius
		hot    bool
	}{{"heated-thermostat", 107, false}, {"heated-thermostat", 123, true}, {"inlet-thermostat", 107, true}} {
		kmh := 80.0
		c := cases.Case{Loop: cases.Loop{Layout: tt.layout}, Codes: []cases.Code{{Code: "P0597", FreezeFrame: cases.FreezeFrame{EctC: &tt.shown, SpeedKmh: &kmh}}}}
		if f, hot := shipped(t).Frame(&c); hot != tt.hot {
			t.Errorf("%g °C on the loop %s is too hot: %v (%s)", float64(tt.shown), tt.layout, hot, f.Label)
		}
	}
}
