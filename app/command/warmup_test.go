package command

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/logfile"
)

const (
	coldDrive  = "../../testdata/logs/cold_drive_full.csv"
	endsEarly  = "../../testdata/logs/cold_drive_ends_early.csv"
	summerTown = "../../testdata/logs/summer_town_drive.csv"
)

// warmUps calls the command and reads its lines.
func warmUps(t *testing.T, want int, args ...string) []warmUpAnswer {
	t.Helper()
	code, out, errs := call(t, "", append([]string{"warm-up"}, args...)...)
	if code != want {
		t.Fatalf("warm-up %v = %d, %q", args, code, errs)
	}
	var all []warmUpAnswer
	for dec := json.NewDecoder(strings.NewReader(out)); dec.More(); {
		var a warmUpAnswer
		if err := dec.Decode(&a); err != nil {
			t.Fatalf("not JSON: %v", err)
		}
		all = append(all, a)
	}
	return all
}

func isNear(got *float64, want, within float64) bool {
	return got != nil && math.Abs(*got-want) <= within
}

// The real logs need no mapping. What they should give was read from lists of
// their values by eye: see the test beside diagram/warmup, and the second reading
// by another hand that it names (crossings within 5 s, plateau within 0.5 K, knee
// within 3 K).
func TestWarmUpReadsRealLogs(t *testing.T) {
	all := warmUps(t, fine, coldDrive, summerTown, endsEarly, "--opens-c", "88", "--ambient-c", "5")
	if len(all) != 3 {
		t.Fatalf("%d lines", len(all))
	}
	for i, want := range []struct {
		rows                     int
		startC, to70S            float64
		kneeC, plateauC, rippleK float64
	}{{28040, 17, 491, 91.8, 89.7, 0.6}, {13917, 24, 389, 94.4, 90.1, 0.3}} {
		a := all[i]
		if a.Rows != want.rows || !a.ColdStart || !isNear(a.StartC, want.startC, 1) || !isNear(a.SecondsTo["70"], want.to70S, 5) ||
			!isNear(a.KneeC, want.kneeC, 3) || !isNear(a.PlateauC, want.plateauC, 0.5) || !isNear(a.PlateauSdK, want.rippleK, 0.3) ||
			a.ReachesRegulating == nil || !*a.ReachesRegulating {
			t.Errorf("%+v, want %+v", a, want)
		}
	}
	a := all[2]
	if a.KneeC != nil || a.KneeS != nil || a.PlateauC != nil || a.ReachesRegulating != nil || a.SecondsTo["80"] != nil || !isNear(a.SecondsTo["60"], 676, 5) {
		t.Errorf("%+v: 74 °C as the log ends, no knee", a)
	}
	if c := all[0].Columns; c["ect"].Header != "Engine Coolant Temperature [°C]" || c["ect"].Unit != "°C" || c["time"].Header != "Time" || c["speed"].Unit != "km/h" {
		t.Errorf("columns %+v", c)
	}
}

func TestWarmUpHasAllKeysAndNulls(t *testing.T) {
	_, out, _ := call(t, "", "warm-up", endsEarly)
	var line map[string]json.RawMessage
	if err := json.Unmarshal([]byte(out), &line); err != nil {
		t.Fatal(err)
	}
	keys := []string{"file", "columns", "rows", "cold_start", "start_c", "seconds_to", "knee_c", "knee_s", "plateau_c", "plateau_sd_k", "reaches_regulating", "remarks"}
	for _, key := range keys {
		if _, ok := line[key]; !ok {
			t.Errorf("no %q in %s", key, out)
		}
	}
	if len(line) != len(keys) || string(line["knee_c"]) != "null" || !strings.Contains(string(line["seconds_to"]), `"80":null`) {
		t.Errorf("%s", out)
	}
}

// A file at fault is told; the others are answered. Columns may be set by hand.
func TestWarmUpByHandAndAtFault(t *testing.T) {
	dir := t.TempDir()
	odd := filepath.Join(dir, "odd.csv")
	text := "A,\"B, left\",C\n"
	for s := 0; s <= 900; s += 5 {
		text += strconv.Itoa(s) + "," + strconv.Itoa(20+min(s/10, 69)) + ",800\n"
	}
	if err := os.WriteFile(odd, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	bad := filepath.Join(dir, "bad.csv")
	if err := os.WriteFile(bad, []byte("colour,mood\nred,good\nblue,bad\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	all := warmUps(t, wrongInput, bad, odd, "--map", `ect="B, left",time=A,rpm=C`)
	if len(all) != 1 || all[0].File != odd || all[0].Columns["ect"].Header != "B, left" || !isNear(all[0].SecondsTo["40"], 200, 5) || !isNear(all[0].PlateauC, 89, 0.5) {
		t.Errorf("%+v", all)
	}
	if _, _, errs := call(t, "", "warm-up", bad, odd, "--map", `ect="B, left",time=A`); !strings.Contains(errs, "bad.csv") {
		t.Errorf("the fault is told as %q", errs)
	}
	for _, args := range [][]string{{}, {odd, "--map", "colour=A"}, {odd, "--map", "A"}, {odd, "--opens-c", "warm"}, {odd, "--ambient-c", "4000"}} {
		if code, _, errs := call(t, "", append([]string{"warm-up"}, args...)...); code != wrongUsage || errs == "" {
			t.Errorf("warm-up %v = %d, %q", args, code, errs)
		}
	}
}

// A simulated car writes how far its thermostat is open: the knee is where it
// begins to be, far over its rating where it sticks.
func TestKneeIsWhereTheSimulatedThermostatOpens(t *testing.T) {
	for _, args := range [][]string{
		{"--layout", "outlet-thermostat"}, {"--layout", "inlet-thermostat"}, {"--layout", "outlet-thermostat", "--ambient-c", "-5"},
		{"--layout", "outlet-thermostat", "--cause", "thermostat-early"}, {"--layout", "outlet-thermostat", "--cause", "thermostat-late"},
	} {
		_, series, errs := call(t, "", append([]string{"simulate", "--csv"}, args...)...)
		openS, openC := firstLift(t, series)
		code, out, errs2 := call(t, series, "warm-up", "-")
		var a warmUpAnswer
		if err := json.Unmarshal([]byte(out), &a); err != nil || code != fine {
			t.Fatalf("%v: %d, %v, %s%s", args, code, err, errs, errs2)
		}
		if !isNear(a.KneeC, openC, 3) || !isNear(a.KneeS, openS, 60) {
			t.Errorf("%v: knee %s, opened at %g °C, %g s", args, out, openC, openS)
		}
	}
}

// firstLift is the last row of a simulated series before the thermostat leaves its
// seat: one that lets go at once has cooled the engine by the next.
func firstLift(t *testing.T, series string) (s, c float64) {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(series)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for i, next := range rows[2:] {
		if row := rows[1+i]; next[4] != "0" {
			s, err := strconv.ParseFloat(row[0], 64)
			c, err2 := strconv.ParseFloat(row[1], 64)
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			return s, c
		}
	}
	t.Fatal("the thermostat never opens")
	return 0, 0
}

// Nothing in the real logs asks for anything: the car is sound.
func TestRealLogsRaiseNoFlag(t *testing.T) {
	analyst, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{coldDrive, summerTown, endsEarly} {
		read, err := readLog(context.Background(), Console{}, file, logfile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		found := analyst.Analyse(&cases.Case{ID: "real", Logs: []cases.Log{read.Log}})
		if len(found.WarmUps) != 1 {
			t.Fatalf("%s: %d warm-ups", file, len(found.WarmUps))
		}
		for _, f := range found.Flags {
			if f.Severity != evidence.Note {
				t.Errorf("%s: %+v", file, f)
			}
		}
	}
}
