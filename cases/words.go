package cases

import (
	"fmt"
	"math"
	"strconv"
)

// The words with a fixed meaning. The empty word is "not known".
type (
	Stage      string // before-repair, after-repair
	FanState   string // off, on, unknown
	Heater     string // off, half, full, unknown
	Gauge      string // where the dash gauge stood
	Motive     string // what drives the vehicle
	FanKind    string // what drives the fan
	Base       string // what the coolant is made of
	Symptom    string // what the customer feels
	Cause      string // what can be at fault
	TestKind   string // a workshop check
	GasResult  string // of the combustion-gas test
	Looks      string // of a coolant sample
	LevelState string // of the coolant, engine cold
	HeaterFlow string // through the heater core
)

// Words that code asks for by name. The others stand in the vocabulary only.
const (
	BeforeRepair Stage = "before-repair"
	AfterRepair  Stage = "after-repair"

	FanOff     FanState = "off"
	FanOn      FanState = "on"
	FanUnknown FanState = "unknown"

	HeaterOff     Heater = "off"
	HeaterHalf    Heater = "half"
	HeaterFull    Heater = "full"
	HeaterUnknown Heater = "unknown"

	GaugeRed         Gauge = "red"
	GaugeAboveMiddle Gauge = "above-middle"

	EthyleneGlycol  Base = "ethylene-glycol"
	PropyleneGlycol Base = "propylene-glycol"
	Water           Base = "water"

	Hybrid Motive = "hybrid"

	Healthy Cause = "none"
)

// Blower is the part of the cabin's fan at a setting; it is false where the
// setting isn't known.
func (h Heater) Blower() (part float64, known bool) {
	switch h {
	case HeaterOff:
		return 0, true
	case HeaterHalf:
		return 0.5, true
	case HeaterFull:
		return 1, true
	}
	return 0, false
}

// word is a type of the vocabulary: a value either is in its list or is empty.
type word interface{ words() []wordName }

// wordName is a word of the format with the words of the trade for it.
type wordName struct{ word, name string }

// Name is the stage in the words of the trade.
func (s Stage) Name() string { return nameIn(s, string(s)) }

// Name is the fan's state in the words of the trade.
func (s FanState) Name() string { return nameIn(s, string(s)) }

// Name is the heater's setting in the words of the trade.
func (h Heater) Name() string { return nameIn(h, string(h)) }

// Name is the gauge's place in the words of the trade.
func (g Gauge) Name() string { return nameIn(g, string(g)) }

// Name is the motive power in the words of the trade.
func (m Motive) Name() string { return nameIn(m, string(m)) }

// Name is the kind of fan in the words of the trade.
func (k FanKind) Name() string { return nameIn(k, string(k)) }

// Name is the coolant's base in the words of the trade.
func (b Base) Name() string { return nameIn(b, string(b)) }

// Name is the symptom in the words of the trade.
func (s Symptom) Name() string { return nameIn(s, string(s)) }

// Name is the cause in the words of the trade.
func (c Cause) Name() string { return nameIn(c, string(c)) }

// Name is the check in the words of the trade.
func (k TestKind) Name() string { return nameIn(k, string(k)) }

// Words lists the words of a vocabulary type in the format's order, with T as
// one of the types above: Words[Symptom]() is every symptom.
func Words[T interface {
	~string
	word
}]() []T {
	var zero T
	list := zero.words()
	out := make([]T, len(list))
	for i, w := range list {
		out[i] = T(w.word)
	}
	return out
}

func nameIn(w word, s string) string {
	for _, n := range w.words() {
		if n.word == s {
			return n.name
		}
	}
	return s
}

func (Stage) words() []wordName {
	return []wordName{{"before-repair", "before repair"}, {"after-repair", "after repair"}}
}

func (FanState) words() []wordName {
	return []wordName{{"off", "off"}, {"on", "on"}, {"unknown", "not known"}}
}

func (Heater) words() []wordName {
	return []wordName{{"off", "off"}, {"half", "half"}, {"full", "full"}, {"unknown", "not known"}}
}

func (Gauge) words() []wordName {
	return []wordName{
		{"cold", "cold"},
		{"below-middle", "below middle"},
		{"middle", "middle"},
		{"above-middle", "above middle"},
		{"red", "red"},
	}
}

func (Motive) words() []wordName {
	return []wordName{{"petrol", "petrol"}, {"diesel", "diesel"}, {"hybrid", "hybrid"}, {"other", "other"}}
}

func (FanKind) words() []wordName {
	return []wordName{
		{"electric", "electric fan"},
		{"viscous", "viscous clutch"},
		{"fixed", "belt-driven, fixed"},
		{"none", "no fan"},
	}
}

func (Base) words() []wordName {
	return []wordName{
		{"ethylene-glycol", "ethylene glycol"},
		{"propylene-glycol", "propylene glycol"},
		{"water", "water"},
	}
}

func (Symptom) words() []wordName {
	return []wordName{
		{"warning-light", "warning light"},
		{"gauge-low", "gauge stays low"},
		{"gauge-swings", "gauge swings"},
		{"overheats-idle", "overheats standing"},
		{"overheats-road", "overheats on the road"},
		{"overheats-always", "overheats always"},
		{"cabin-heat-poor", "poor cabin heat"},
		{"cabin-heat-comes-and-goes", "cabin heat comes and goes"},
		{"slow-warm-up", "slow to warm up"},
		{"coolant-loss", "loses coolant"},
		{"coolant-smell", "smell of coolant"},
		{"white-exhaust", "white exhaust"},
		{"bubbles-in-bottle", "bubbles in the bottle"},
		{"hoses-hard-cold", "hoses hard when cold"},
		{"oil-milky", "milky oil"},
		{"fan-always-on", "fan always on"},
		{"fan-never-on", "fan never on"},
		{"fuel-use-up", "uses more fuel"},
	}
}

func (Cause) words() []wordName {
	return []wordName{
		{"none", "loop healthy"},
		{"thermostat-stuck-open", "thermostat stuck open"},
		{"thermostat-stuck-closed", "thermostat stuck closed"},
		{"thermostat-late", "thermostat opens late"},
		{"thermostat-early", "thermostat opens early"},
		{"radiator-restricted", "radiator restricted inside"},
		{"radiator-airflow", "radiator short of air"},
		{"fan-not-running", "fan not running"},
		{"pump-weak", "coolant pump weak"},
		{"coolant-low-air", "coolant low or air trapped"},
		{"lower-hose-collapse", "lower hose collapses"},
		{"bypass-open", "bypass stays open"},
		{"heater-core-restricted", "heater core restricted"},
		{"heater-valve-shut", "heater valve shut"},
		{"combustion-leak", "combustion gas in coolant"},
		{"cap-weak", "pressure cap weak"},
		{"external-leak", "leak to the outside"},
		{"sensor-reads-low", "temperature sensor reads low"},
		{"sensor-reads-high", "temperature sensor reads high"},
		{"coolant-mix-wrong", "coolant mix wrong"},
		{"fan-always-running", "fan always running"},
		{"thermostat-heater-fault", "thermostat's heater faulty"},
		{"cap-vacuum-stuck", "cap's vacuum valve stuck"},
		{"heater-air-side", "heater fault on the air side"},
	}
}

func (TestKind) words() []wordName {
	return []wordName{
		{"pressure-hold", "pressure hold"},
		{"cap", "cap test"},
		{"combustion-gas", "combustion-gas test"},
		{"coolant", "coolant strength and looks"},
		{"thermostat-bench", "thermostat in heated water"},
		{"sensor-resistance", "sensor resistance"},
		{"fan", "fan command"},
		{"level", "coolant level"},
		{"pump-drive", "pump drive"},
		{"hose-look", "hose look"},
		{"core-scan", "face scan of the core"},
		{"bubbles", "bubbles after bleeding"},
		{"heater-flow", "heater flow"},
	}
}

func (GasResult) words() []wordName {
	return []wordName{{"positive", "gas found"}, {"negative", "no gas found"}}
}

func (Looks) words() []wordName {
	return []wordName{{"clear", "clear"}, {"rusty", "rusty"}, {"oily", "oily"}, {"sludge", "sludge"}}
}

func (LevelState) words() []wordName {
	return []wordName{{"full", "full"}, {"low", "low"}, {"empty", "empty"}}
}

func (HeaterFlow) words() []wordName {
	return []wordName{{"full", "full"}, {"weak", "weak"}, {"none", "none"}}
}

// Surface is what the gun was pointed at: a word of the format, or the
// emissivity itself. The zero value is "not known".
type Surface struct {
	Word       string
	Emissivity float64 // 0 where Word is used; otherwise above 0, up to 1
}

// Surfaces lists the words for a surface, best targets first.
func Surfaces() []string {
	return []string{
		"rubber", "plastic", "paint", "tape", "cast-iron",
		"aluminium-bare", "aluminium-oxidised", "brass", "steel-oxidised",
	}
}

// ParseSurface reads a word or a number. Empty text is "not known".
func ParseSurface(s string) (Surface, error) {
	if s == "" {
		return Surface{}, nil
	}
	for _, w := range Surfaces() {
		if s == w {
			return Surface{Word: w}, nil
		}
	}
	e, err := strconv.ParseFloat(s, 64)
	if err != nil || !(e > 0 && e <= 1) || math.IsNaN(e) {
		return Surface{}, fmt.Errorf("surface %q: %w", s, errSurface)
	}
	return Surface{Emissivity: e}, nil
}

// String is the word, or the emissivity as a number, or "".
func (s Surface) String() string {
	if s.Word != "" || s.Emissivity == 0 {
		return s.Word
	}
	return strconv.FormatFloat(s.Emissivity, 'g', -1, 64)
}
