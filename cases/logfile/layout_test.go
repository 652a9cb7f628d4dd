package logfile_test

import (
	"fmt"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/logfile"
	"loopbook/diagram/say"
)

// TestLayouts has ways to arrange a table that files of the field have.
func TestLayouts(t *testing.T) {
	want := cases.Log{TimeS: line(4, 0, 1), EctC: []float64{20, 20.5, 21, 21.5}, EngineRPM: []float64{1800, 1850, 1900, 1950}}
	for name, text := range map[string]string{
		"plain":                "time,ect,rpm\n0,20,1800\n1,20.5,1850\n2,21,1900\n3,21.5,1950\n",
		"spreadsheet's hint":   "sep=;\ntime;ect;rpm\n0;20;1800\n1;20,5;1850\n2;21;1900\n3;21,5;1950\n",
		"blanks":               "time , ect, rpm\n 0, 20, 1800\n 1, 20.5, 1850\n 2, 21, 1900\n 3, 21.5, 1950\n",
		"numbered rows":        "No.;time;ect;rpm\n1;0;20;1800\n2;1;20.5;1850\n3;2;21;1900\n4;3;21.5;1950\n",
		"German thousands":     "Zeit;KMT;Kühlmittel;Drehzahl\n0,00;;20,0;1.800,0\n1,00;;20,5;1.850,0\n2,00;;21,0;1.900,0\n3,00;;21,5;1.950,0\n",
		"units above":          "time;ect;rpm\n[s];[°C];[1/min]\n\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950\n",
		"group row":            "general;engine;engine\ntime;ect;rpm\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950\n",
		"preamble of numbers":  "Date;16.02.2018;08:30\nVersion;3;1\nChannels;3\n\ntime;ect;rpm\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950\n",
		"states beside":        "time;ect;rpm;loop;gear;note;state\n0;20;1800;open;P;a;b\n1;20.5;1850;open;P;a;b\n2;21;1900;shut;D;a;b\n3;21.5;1950;shut;D;a;b\n",
		"first rows blank":     "time;ect;rpm\n;;\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950\n;;\n",
		"delimiters too many":  "time;ect;rpm\n0;20;1800;;\n1;20.5;1850;;\n2;21;1900;;\n3;21.5;1950;;\n",
		"byte-order mark":      "\uFEFFtime;ect;rpm\r\n0;20;1800\r\n1;20.5;1850\r\n2;21;1900\r\n3;21.5;1950\r\n",
		"carriage return more": "time;ect;rpm\r\r\n0;20;1800\r\r\n1;20.5;1850\r\r\n2;21;1900\r\r\n3;21.5;1950\r\r\n",
		"all quoted":           "\"time\";\"ect\";\"rpm\"\n\"0\";\"20\";\"1,800\"\n\"1\";\"20.5\";\"1,850\"\n\"2\";\"21\";\"1,900\"\n\"3\";\"21.5\";\"1,950\"\n",
		"no end of line":       "time;ect;rpm\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950",
		"powers of ten":        "time;ect;rpm\n0;2e1;1.8E+03\n1;2.05e+1;18.5e2\n2;+21;190000e-2\n3;21.5;1950\n",
		"kelvin":               "time;ect (K);rpm\n0;293.15;1800\n1;293.65;1850\n2;294.15;1900\n3;294.65;1950\n",
		"numbers of channels":  "time;ch1;ch2\n0;20;1800\n1;20.5;1850\n2;21;1900\n3;21.5;1950\n",
	} {
		t.Run(name, func(t *testing.T) {
			o := logfile.Options{}
			if name == "numbers of channels" {
				o.Map = map[string]string{"ect": "ch1", "rpm": "ch2"}
			}
			reads(t, text, o, want)
		})
	}
}

// TestThousandsWithoutADecimal: a mark that only parts thousands isn't taken for the decimal one, which would have an
// engine turn at 1.2 1/min between 800 and 950; one that only parts thousandths is.
func TestThousandsWithoutADecimal(t *testing.T) {
	turning := cases.Log{TimeS: line(4, 0, 1), EctC: line(4, 20, 1), EngineRPM: []float64{800, 1200, 2500, 950}}
	fine := cases.Log{TimeS: []float64{0, 1.001, 2.003, 3.002}, EctC: []float64{99.875, 99.125, 100.375, 100.125}}
	for name, tt := range map[string]struct {
		text string
		want cases.Log
	}{
		"commas":      {"time;ect;rpm\n0;20;800\n1;21;1,200\n2;22;2,500\n3;23;950\n", turning},
		"points":      {"Zeit;KMT;Kühlmittel;Drehzahl\n0;;20;800\n1;;21;1.200\n2;;22;2.500\n3;;23;950\n", turning},
		"blanks":      {"time;ect;rpm\n0;20,0;800,0\n1;21,0;1\u00a0200,0\n2;22,0;2\u202f500,0\n3;23,0;950,0\n", turning},
		"apostrophes": {"time;ect;rpm\n0;20.0;800\n1;21.0;1'200\n2;22.0;2’500.0\n3;23.0;950\n", turning},
		"thousandths": {"time;ect\n0;99,875\n1,001;99,125\n2,003;100,375\n3,002;100,125\n", fine},
	} {
		t.Run(name, func(t *testing.T) { reads(t, tt.text, logfile.Options{}, tt.want) })
	}
}

func reads(t *testing.T, text string, o logfile.Options, want cases.Log) {
	t.Helper()
	got, err := from(text, o)
	if err != nil {
		t.Fatal(err)
	}
	if problem := differs(got.Log, want); problem != "" {
		t.Errorf("%s; %+v, %q", problem, got.Columns, got.Remarks)
	}
}

// TestUnitsThatChange: a tool that goes on in other units is read on in them; each was a gap, and a time of seconds
// behind one of milliseconds went back. 68 to 70.7 °F are 20 to 21.5 °C (NIST SP 811, B.8).
func TestUnitsThatChange(t *testing.T) {
	want := cases.Log{TimeS: line(6, 0, 0.5), EctC: []float64{20, 20.5, 21, 21.5, 21, 20}}
	reads(t, "time;ect\n0 ms;20 °C\n500 ms;20.5 °C\n1.0 s;69.8 °F\n1.5 s;70.7 °F\n2.0 s;21 °C\n2.5 s;68 °F\n", logfile.Options{}, want)
}

// TestHeadingInTheMiddle: the same heading again is a row without a time; below another one the columns hold something else,
// which was read as if they didn't.
func TestHeadingInTheMiddle(t *testing.T) {
	const first = "time;ect (°C);iat (°C)\n0;80;20\n1;81;20\n2;82;21\n"
	for again, rows := range map[string]int{"time;ect (°C);iat (°C)": 6, "# time;ect (°C);iat (°C)": 6, "lap time;2;": 6, "Time;ECT (°F);IAT (°F)": 3, "time;iat (°C);ect (°C)": 3, "ect (°C);time;iat (°C)": 3} {
		got, err := from(first+again+"\n3;84;70\n4;84;70\n5;85;71\n", logfile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		told := strings.Contains(strings.Join(say.English().All(got.Remarks), "\n"), "line 5: another heading")
		if len(got.Log.TimeS) != rows || told != (rows == 3) {
			t.Errorf("below %q: %v, %q", again, got.Log, got.Remarks)
		}
	}
}

// TestColumnThatBeginsLate: a sensor that says nothing in the part from which
// the columns are chosen is still found by its name.
func TestColumnThatBeginsLate(t *testing.T) {
	var b strings.Builder
	b.WriteString("time;ect;rpm\n")
	const rows = 500_000
	for i := range rows {
		cell := ""
		if i > rows-1000 {
			cell = "80"
		}
		fmt.Fprintf(&b, "%d;%s;800\n", i, cell)
	}
	got, err := from(b.String(), logfile.Options{})
	if err != nil || got.Log.EctC[len(got.Log.EctC)-1] != 80 || got.Rows != rows {
		t.Errorf("From = %d rows, %v", got.Rows, err)
	}
}

func TestNoTable(t *testing.T) {
	for text, want := range map[string]string{
		"":                 "line 1: the file is empty",
		"\n \r\n":          "line 1: the file is empty",
		"time;ect\n":       "line 1",
		"time;ect\n0;20\n": `line 2, column "time"`,
		"Time (s),Coolant (C)\n0,0,20,5\n1,0,20,9\n2,0,21,4\n":                           "line 2: 4 values under 2 headings",
		"Time,RPM,ECT\n16.02.2018 08:30:10,800,0,20,5\n16.02.2018 08:30:11,810,0,20,9\n": "line 2: 5 values under 3 headings",
		"Time (s),Coolant (C),RPM\n0,20,800\n1,20,9,810\n2,21,4,805\n":                   "line 3: 4 values under 3 headings",
		"time;ect [V]\n0;3.5\n1;3.4\n":                                                   `line 1, column "ect [V]": V can't be a unit of the coolant temperature`,
		"a\nb\x01c\n":                                                                    "line 2: holds byte 0x01",
		"\x1f\x8b\x08":                                                                   "line 1: this file is compressed",
		strings.Repeat(",", 3000):                                                        "line 1: has 3001 columns",
		strings.Repeat("x", 2<<20):                                                       "line 1: is longer than 1 MB",
		"time;ect\n0;20\n1;21\n" + strings.Repeat("5;", 6<<19):                           "line 4: is longer than 1 MB",
	} {
		if _, err := from(text, logfile.Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("From(%.20q) = %v, want %q", text, err, want)
		}
	}
}

// TestStackedTables have a row for each value: the signal's name stands in a cell.
func TestStackedTables(t *testing.T) {
	want := cases.Log{TimeS: line(4, 0, 1), EctC: []float64{20, 20.5, 21, 21.5}, EngineRPM: []float64{1800, 1850, 1900, 1950}}
	for name, text := range map[string]string{
		"with units": "time;name;value;unit\n0;Coolant temperature;20;°C\n0;Engine speed;1800;rpm\n1;Coolant temperature;20.5;°C\n1;Engine speed;1850;rpm\n" +
			"2;Coolant temperature;21;°C\n2;Engine speed;1900;rpm\n3;Coolant temperature;21.5;°C\n3;Engine speed;1950;rpm\n",
		"each at its own time": "Signal,Unit,Value,Time\nrpm,1/min,1800,0\nect,°C,20,0.4\nrpm,1/min,1850,1\nect,°C,20.5,1.4\nrpm,1/min,1900,2\nect,°C,21,2.4\nrpm,1/min,1950,3\nect,°C,21.5,3.4\n",
		"German, Fahrenheit":   "Zeit\tBezeichnung\tWert\n0,0\tKühlmitteltemperatur (°F)\t68,0\n0,0\tDrehzahl\t1800\n1,0\tKühlmitteltemperatur (°F)\t68,9\n1,0\tDrehzahl\t1850\n2,0\tKühlmitteltemperatur (°F)\t69,8\n2,0\tDrehzahl\t1900\n3,0\tKühlmitteltemperatur (°F)\t70,7\n3,0\tDrehzahl\t1950\n",
		"units behind values":  "time|ecu|name|value\n0|7E8|ECT|20 °C\n0|7E8|RPM|1800 rpm\n1|7E8|ECT|20.5 °C\n1|7E8|RPM|1850 rpm\n2|7E8|ECT|21 °C\n2|7E8|RPM|1900 rpm\n3|7E8|ECT|21.5 °C\n3|7E8|RPM|1950 rpm\n",
		"delimiter in a name":  "time,name,value\n0,\"coolant temp, engine\",20\n0,rpm,1800\n1,\"coolant temp, engine\",20.5\n1,rpm,1850\n2,\"coolant temp, engine\",21\n2,rpm,1900\n3,\"coolant temp, engine\",21.5\n3,rpm,1950\n",
		"without a heading":    "0;ect;20\n0;rpm;1800\n1;ect;20.5\n1;rpm;1850\n2;ect;21\n2;rpm;1900\n3;ect;21.5\n3;rpm;1950\n",
	} {
		t.Run(name, func(t *testing.T) { reads(t, text, logfile.Options{}, want) })
	}
}

// TestStackedLines: what is told of a line is true of the file, a signal comes as often as it likes, and what begins
// below the part that the columns are chosen from is told of.
func TestStackedLines(t *testing.T) {
	var b strings.Builder
	b.WriteString("made by hand\ntime;name;value\n")
	const seconds = 150_000
	for i := range seconds {
		ect := fmt.Sprint(20 + float64(i)*60/seconds)
		if i == 2 {
			ect = "ERR" // line 3 + 2×3 + 2
		}
		fmt.Fprintf(&b, "%d;rpm;800\n%d.5;rpm;900\n%d.7;ect;%s\n", i, i, i, ect)
	}
	fmt.Fprintf(&b, "%d;iat;20\n", seconds)
	got, err := from(b.String(), logfile.Options{MaxSamples: 2 * seconds})
	if err != nil {
		t.Fatal(err)
	}
	if n := len(got.Log.TimeS); n != 2*seconds {
		t.Errorf("%d samples, want one for each of the quicker signal, %d", n, 2*seconds)
	}
	if first, then := got.Log.EctC[1], got.Log.EctC[0]; first != 20 || then == then {
		t.Errorf("the coolant's first samples are %v, %v, want none and 20", then, first)
	}
	told := fmt.Sprint(got.Remarks)
	for _, want := range []string{`2 signals named in column "name"`, fmt.Sprintf(`1 row of a signal that begins late: left out (the first in line %d, "iat")`, 3*seconds+3), `the first in line 11 ("ERR")`} {
		if !strings.Contains(told, want) {
			t.Errorf("%q isn't in %s", want, told)
		}
	}
}

// TestStatesAreNoStack: words that come again don't turn a table.
func TestStatesAreNoStack(t *testing.T) {
	got, err := from("time;warning;ect\n0;coolant temperature low;20\n1;coolant temperature low;21\n2;coolant temperature ok;22\n3;coolant temperature ok;23\n", logfile.Options{})
	if err != nil || len(got.Log.EctC) != 4 || len(got.Header) != 3 {
		t.Errorf("%v, %q: %v", got.Log, got.Header, err)
	}
}
