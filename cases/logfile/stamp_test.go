package logfile_test

import (
	"fmt"
	"strings"
	"testing"

	"loopbook/cases/logfile"
	"loopbook/diagram/say"
)

// TestTimesInEveryForm reads three rows of a time column: the seconds from the
// first to the others are known.
func TestTimesInEveryForm(t *testing.T) {
	for _, tt := range []struct {
		heading, first, second, third string
		secondS, thirdS               float64
		unit                          string
	}{
		{"Time", "0", "1.5", "3", 1.5, 3, "s"},
		{"Time (ms)", "0", "1500", "3000", 1.5, 3, "ms"},
		{"time_ms", "0", "1500", "3000", 1.5, 3, "ms"},
		{"Zeit/min", "0", "0,5", "2", 30, 120, "min"},
		{"Time [h]", "0", "0.5", "1", 1800, 3600, "h"},
		{"Time", "0", "40000", "90000", 40, 90, "ms"}, // as seconds it would be a day
		{"Time", "1518769828", "1518769829", "1518769831", 1, 3, "s since 1970"},
		{"Time", "1518769828000", "1518769828500", "1518769831000", 0.5, 3, "ms since 1970"},
		{"Time", "43147.354", "43147.35401", "43147.35402", 0.864, 1.728, "days"},
		{"Uhrzeit", "08:30:28", "8:30:29.5", "8:30:31", 1.5, 3, "hh:mm:ss"},
		{"Uhrzeit", "08:30:28,118", "08:30:28,218", "08:31:00,118", 0.1, 32, "hh:mm:ss"},
		{"Time", "08:30:28:118", "08:30:28:218", "08:31:00:118", 0.1, 32, "hh:mm:ss"},
		{"Time", "11:59:59 PM", "12:00:00 AM", "12:00:01 a.m.", 1, 2, "hh:mm:ss"},
		{"Time", "14:46.4", "14:47.4", "15:00.4", 1, 14, "mm:ss"},
		{"Time", "59:59.5", "00:00.5", "00:01.5", 1, 2, "mm:ss"}, // a spreadsheet's rest of the hour
		{"Time", "00:58", "00:59", "01:00", 1, 2, "mm:ss"},
		{"Time", "08:30", "08:31", "08:32", 60, 120, "hh:mm"},
		{"Time [mm:ss]", "08:30", "08:31", "08:32", 1, 2, "mm:ss"},
		{"Time (MM:SS)", "08:30", "08:31", "08:32", 1, 2, "mm:ss"},
		{"Date/Time", "2018-02-16T08:30:28.118Z", "2018-02-16T08:30:29.118Z", "2018-02-16T08:31:28.118Z", 1, 60, "date and time"},
		{"Timestamp", "2018-02-16T23:59:59+01:00", "2018-02-17T00:00:00+01:00", "2018-02-17T00:00:01+0100", 1, 2, "date and time"},
		{"Timestamp", "2018-03-25T01:59:59+01:00", "2018-03-25T03:00:00+02:00", "2018-03-25T01:00:01Z", 1, 2, "date and time"}, // summer time begins
		{"Datum/Uhrzeit", "28.02.2018 23:59:59", "01.03.2018 00:00:00", "01.03.2018 00:00:01", 1, 2, "date and time"},
		{"Fecha hora", "13/2/2018 23:59:59", "14/2/2018 0:00:00", "14/2/2018 0:00:01", 1, 2, "date and time"},
		{"Date time", "2/13/2018 11:59:59 PM", "2/14/2018 12:00:00 AM", "2/14/2018 12:00:01 AM", 1, 2, "date and time"},
		{"Time", "23:59:59 16-Feb-2018", "00:00:00 17-Feb-2018", "00:00:01 17-feb-18", 1, 2, "date and time"},
		{"Zeit", "31-Dez-2018 23:59:59", "01-Jan-2019 00:00:00", "01-Jan-2019 00:00:01", 1, 2, "date and time"},
		{"Zeit", "28-Feb-2018 23:59:59", "01-Mrz-2018 00:00:00", "01-März-2018 00:00:01", 1, 2, "date and time"},
		{"Fecha hora", "31-ago.-2018 23:59:59", "01-sept.-2018 00:00:00", "01-sep-2018 00:00:01", 1, 2, "date and time"},
		{"Date", "01-31-2018 23:59:59", "02-01-2018 00:00:00", "02-01-2018 00:00:01", 1, 2, "date and time"},
		{"Date", "2018-02-16 08:30:28 +0100", "2018-02-16 07:30:29 +00:00", "2018-02-16 08:30:30 +01", 1, 2, "date and time"},
		{"Time", "11:59:59\u202fAM", "12:00:00\u202fPM", "12:00:01\u00a0pm", 1, 2, "hh:mm:ss"},
		{"Time", "\u00a011:59:59", "\u00a012:00:00", "\u202f12:00:01", 1, 2, "hh:mm:ss"}, // before the time too
		{"Hora", "11:59:59 a. m.", "12:00:00 p. m.", "12:00:01 p.\u00a0m.", 1, 2, "hh:mm:ss"},
		{"Time", "2018-02-16 08:30", "2018-02-16 08:31", "2018-02-16 08:32", 60, 120, "date and time"},
	} {
		t.Run(tt.heading+" "+tt.first, func(t *testing.T) {
			text := fmt.Sprintf("%s;ECT\n%s;20\n%s;21\n%s;22\n", tt.heading, tt.first, tt.second, tt.third)
			got, err := from(text, logfile.Options{})
			if err != nil {
				t.Fatal(err)
			}
			want := got.Log
			want.TimeS = []float64{0, tt.secondS, tt.thirdS}
			if problem := differs(got.Log, want); problem != "" || got.Columns[0].Unit != tt.unit {
				t.Errorf("in %s: %s; want unit %s; %q", got.Columns[0].Unit, problem, tt.unit, got.Remarks)
			}
		})
	}
}

func TestNoTimes(t *testing.T) {
	for _, cell := range []string{"8:61:00", "25 o'clock", "2018-13-45 08:30:00", "13:00:00 PM", "1:2:3:4:5", "08:30:28+x"} {
		text := "Time;ECT\n0:00:01;20\n0:00:02;20\n" + cell + ";21\n0:00:04;22\n"
		got, err := from(text, logfile.Options{})
		if err != nil || !strings.Contains(strings.Join(say.English().All(got.Remarks), "\n"), "1 row without a time, the first in line 4") {
			t.Errorf("%q: %v, remarks %q", cell, err, got.Remarks)
		}
	}
}
