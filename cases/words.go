package cases

import (
	"fmt"
	"slices"
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

	ViscousFan FanKind = "viscous"
	FixedFan   FanKind = "fixed"
	NoFan      FanKind = "none"

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

	PressureTest TestKind = "pressure-hold"
	CapTest      TestKind = "cap"
	GasTest      TestKind = "combustion-gas"
	CoolantTest  TestKind = "coolant"
	BenchTest    TestKind = "thermostat-bench" // in heated water
	SensorTest   TestKind = "sensor-resistance"
	FanTest      TestKind = "fan"
	LevelTest    TestKind = "level"
	PumpTest     TestKind = "pump-drive"
	HoseTest     TestKind = "hose-look"
	CoreTest     TestKind = "core-scan"
	BubblesTest  TestKind = "bubbles"
	HeaterTest   TestKind = "heater-flow"

	Healthy Cause = "none"
)

// Holds reports whether what is noted with a stage belongs to s; what isn't noted is
// before the repair.
func (s Stage) Holds(noted Stage) bool { return s.side() == noted.side() }

func (s Stage) side() Stage {
	if s == "" {
		return BeforeRepair
	}
	return s
}

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

// Asked reports whether heat is asked for, as far as the setting is known.
func (h Heater) Asked() bool {
	part, _ := h.Blower()
	return part > 0
}

// word is a value of the vocabulary: it either is in its type's list or is empty.
type word interface{ words() []string }

// vocabulary are the types of the words above.
type vocabulary interface {
	~string
	word
}

// Words lists the words of a vocabulary type in the format's order, with T as
// one of the types above: Words[Symptom]() is every symptom.
func Words[T vocabulary]() []T {
	var zero T
	list := zero.words()
	out := make([]T, len(list))
	for i, w := range list {
		out[i] = T(w)
	}
	return out
}

func (Stage) words() []string {
	return []string{"before-repair", "after-repair"}
}

func (FanState) words() []string {
	return []string{"off", "on", "unknown"}
}

func (Heater) words() []string {
	return []string{"off", "half", "full", "unknown"}
}

func (Gauge) words() []string {
	return []string{"cold", "below-middle", "middle", "above-middle", "red"}
}

func (Motive) words() []string {
	return []string{"petrol", "diesel", "hybrid", "other"}
}

// ByBelt reports whether the engine turns the fan, and no control.
func (k FanKind) ByBelt() bool { return k == ViscousFan || k == FixedFan }

func (FanKind) words() []string {
	return []string{"electric", "viscous", "fixed", "none"}
}

func (Base) words() []string {
	return []string{"ethylene-glycol", "propylene-glycol", "water"}
}

func (Symptom) words() []string {
	return []string{
		"warning-light", "gauge-low", "gauge-swings", "overheats-idle",
		"overheats-road", "overheats-always", "cabin-heat-poor", "cabin-heat-comes-and-goes",
		"slow-warm-up", "coolant-loss", "coolant-smell", "white-exhaust",
		"bubbles-in-bottle", "hoses-hard-cold", "oil-milky", "fan-always-on",
		"fan-never-on", "fuel-use-up",
	}
}

func (Cause) words() []string {
	return []string{
		"none", "thermostat-stuck-open", "thermostat-stuck-closed", "thermostat-late",
		"thermostat-early", "radiator-restricted", "radiator-airflow", "fan-not-running",
		"pump-weak", "coolant-low-air", "lower-hose-collapse", "bypass-open",
		"heater-core-restricted", "heater-valve-shut", "combustion-leak", "cap-weak",
		"external-leak", "sensor-reads-low", "sensor-reads-high", "coolant-mix-wrong",
		"fan-always-running", "thermostat-heater-fault", "cap-vacuum-stuck", "heater-air-side",
	}
}

func (TestKind) words() []string {
	return []string{
		string(PressureTest), string(CapTest), string(GasTest), string(CoolantTest),
		string(BenchTest), string(SensorTest), string(FanTest), string(LevelTest),
		string(PumpTest), string(HoseTest), string(CoreTest), string(BubblesTest),
		string(HeaterTest),
	}
}

func (GasResult) words() []string {
	return []string{"positive", "negative"}
}

func (Looks) words() []string {
	return []string{"clear", "rusty", "oily", "sludge"}
}

func (LevelState) words() []string {
	return []string{"full", "low", "empty"}
}

func (HeaterFlow) words() []string {
	return []string{"full", "weak", "none"}
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
	if slices.Contains(Surfaces(), s) {
		return Surface{Word: s}, nil
	}
	e, err := strconv.ParseFloat(s, 64)
	if err != nil || !(e > 0 && e <= 1) { // so that NaN fails too
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
