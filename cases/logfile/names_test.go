package logfile_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"loopbook/cases/logfile"
	"loopbook/diagram/say"
)

// TestNames has headings of the trade in three languages, from memory.
func TestNames(t *testing.T) {
	values := map[string]string{"ect": "80", "rpm": "900", "speed": "50", "intake": "20", "load": "30"}
	for key, names := range map[string][]string{
		"ect": {
			"coolant temperature", "ECT", "Engine coolant temp.", "EngineCoolantTemp", "ENGINE_COOLANT_TEMPERATURE (°C)", "CLT", "Water temp", "ect_c", "Coolant",
			"Kühlmitteltemperatur", "Kuehlmitteltemperatur [°C]", "Kuhlmittel-Temperatur", "Motortemperatur", "Kühlwassertemperatur (Ist)",
			"Temperatura refrigerante", "Temperatura del líquido refrigerante del motor", "TEMP. REFRIGERANTE", "Temperatura del agua",
		},
		"rpm":    {"RPM", "Engine RPM [RPM]", "engine speed (1/min)", "EngineSpeed", "Drehzahl", "Motordrehzahl U/min", "U/min", "[1/min]", "Upm", "Revoluciones", "Régimen del motor", "Velocidad del motor"},
		"speed":  {"Vehicle speed", "Vehicle Speed Sensor [km/h]", "VSS", "Speed", "speed_kmh", "km/h", "Geschwindigkeit", "Fahrzeuggeschwindigkeit in km/h", "Velocidad", "Velocidad del vehículo"},
		"intake": {"IAT", "Intake Air Temperature [°C]", "intake air", "Ansauglufttemperatur", "Ansaugluft-Temp.", "Temperatura del aire de admisión", "Temp. admision"},
		"load":   {"Load", "Calculated engine load [%]", "Engine load value", "Motorlast", "Last", "Carga", "Carga calculada del motor (%)"},
	} {
		for _, name := range names {
			got, err := from(row("Zeit [s]", name, "0", values[key], "1", values[key]), logfile.Options{})
			if key != "ect" { // a log needs a coolant temperature
				got, err = from(row("Zeit [s]", "ECT;"+name, "0", "80;"+values[key], "1", "80;"+values[key]), logfile.Options{})
			}
			if err != nil {
				t.Errorf("%q: %v", name, err)
				continue
			}
			if c := got.Columns[len(got.Columns)-1]; c.Key != key || c.Header != name || c.Guessed {
				t.Errorf("%q is taken for %+v, want %s by name", name, got.Columns, key)
			}
		}
	}
}

// TestOtherNames has headings that sound like one of ours and are another's.
func TestOtherNames(t *testing.T) {
	for _, name := range []string{
		"Engine oil temperature", "Öltemperatur", "Ambient air temperature", "Desired coolant temperature", "Radiator outlet coolant temperature",
		"ECT voltage", "Fan speed", "Wheel speed FL", "Target idle RPM", "Intake manifold absolute pressure", "Turbine speed", "Injection time (ms)",
		"Coolant level", "Generator load", "Temperatura del aceite", "Lüfterdrehzahl", "Kraftstofftemperatur", "Umgebungstemperatur",
	} {
		got, err := from(row("Time", "ECT;"+name, "0", "20;80", "1", "21;81", "2", "22;80"), logfile.Options{})
		if err != nil || len(got.Columns) != 2 || got.Columns[1].Header != "ECT" {
			t.Errorf("%q: taken as %+v, %v; want only time and ECT", name, got.Columns, err)
		}
	}
}

func row(cells ...string) string {
	var b strings.Builder
	for i := 0; i+1 < len(cells); i += 2 {
		fmt.Fprintf(&b, "%s;%s\n", cells[i], cells[i+1])
	}
	return b.String()
}

// TestBetterOfTwo: where two columns have a name for it, values decide.
func TestBetterOfTwo(t *testing.T) {
	got, err := from("Time;Coolant temperature;Engine coolant temp (°C)\n0;4711;20\n1;4712;21\n2;4713;22\n", logfile.Options{})
	if err != nil || got.Log.EctC[0] != 20 || !strings.Contains(strings.Join(say.English().All(got.Remarks), "\n"), `"Coolant temperature" is named like the coolant temperature`) {
		t.Errorf("From = %v, %q, %v", got.Columns, got.Remarks, err)
	}
	got, err = from("Time;ECT [V];ECT [°C]\n0;3.5;20\n1;3.4;21\n2;3.3;22\n", logfile.Options{})
	if err != nil || got.Log.EctC[0] != 20 {
		t.Errorf("From = %v, %v; want the temperature, not its sensor's volts", got.Columns, err)
	}
	got, err = from("Run time (s);Time;ECT\n0;08:30:00.0;20\n0;08:30:00.5;21\n1;08:30:01.0;22\n1;08:30:01.5;23\n", logfile.Options{})
	if err != nil || got.Columns[0].Header != "Time" {
		t.Errorf("From = %v, %v; want the finer clock", got.Columns, err)
	}
}

// TestUnitsWrittenOut: a unit in words or with its degree behind it counts as its sign does. By NIST SP 811, B.8:
// t/°C = (t/°F − 32)/1.8, a mile is 1609.344 m.
func TestUnitsWrittenOut(t *testing.T) {
	for unit, want := range map[string]float64{"(F°)": 25, "deg.F": 25, "[degrees Fahrenheit]": 25, "(C°)": 77, "(Grados Celsius)": 77} {
		got, err := from("Time;ECT "+unit+"\n0;77\n1;77\n", logfile.Options{})
		if err != nil || math.Abs(got.Log.EctC[0]-want) > 1e-6 {
			t.Errorf("77 under %q: %v, %v; want %v °C", unit, got.Log.EctC, err, want)
		}
	}
	for unit, want := range map[string]float64{"(Meters/second)": 36, "(miles per hour)": 16.09344, "[mi/hr]": 16.09344, "(kilometers/hour)": 10} {
		got, err := from("Time;ECT;Speed "+unit+"\n0;77;10\n1;78;10\n", logfile.Options{})
		if err != nil || len(got.Log.SpeedKmh) == 0 || math.Abs(got.Log.SpeedKmh[0]-want) > 1e-6 {
			t.Errorf("10 under %q: %v, %v; want %v km/h", unit, got.Log.SpeedKmh, err, want)
		}
	}
}
