package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"loopbook/cases/evidence"
	"loopbook/cases/logfile"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
)

// warmUpAnswer is what the command prints for a log.
type warmUpAnswer struct {
	File              string                  `json:"file"`
	Columns           map[string]columnAnswer `json:"columns"`
	Rows              int                     `json:"rows"`
	ColdStart         bool                    `json:"cold_start"`
	StartC            *float64                `json:"start_c"`
	SecondsTo         map[string]*float64     `json:"seconds_to"`
	KneeC             *float64                `json:"knee_c"`
	KneeS             *float64                `json:"knee_s"`
	PlateauC          *float64                `json:"plateau_c"`
	PlateauSdK        *float64                `json:"plateau_sd_k"`
	ReachesRegulating *bool                   `json:"reaches_regulating"`
	Remarks           []string                `json:"remarks"`
}

type columnAnswer struct {
	Header string `json:"header"`
	Unit   string `json:"unit"`
}

// warmUp prints an answer for each log. A file at fault is told and doesn't
// keep the others from being answered.
func warmUp(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("warm-up", flag.ContinueOnError)
	var o warmup.Options
	columns := map[string]string{}
	set.Func("opens-c", "the thermostat's rating", into(&o.OpensC))
	set.Func("ambient-c", "the air outside at the start", into(&o.AmbientC))
	set.Func("map", "columns by hand, as time=\"COLUMN\"", func(text string) error { return parseColumns(columns, text) })
	files, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return usagef("no file named")
	}
	out := lines(c.Out)
	var faults []error
	for _, file := range files {
		read, err := readLog(ctx, c, file, logfile.Options{Map: columns})
		if err != nil {
			faults = append(faults, err)
			continue
		}
		if err := out.Encode(answerWarmUp(file, read, o)); err != nil {
			return err
		}
	}
	return errors.Join(faults...)
}

func readLog(ctx context.Context, c Console, file string, o logfile.Options) (logfile.Read, error) {
	if file == "-" {
		return logfile.From(ctx, "standard input", c.In, o)
	}
	return logfile.FromFile(ctx, file, o)
}

func answerWarmUp(file string, read logfile.Read, o warmup.Options) warmUpAnswer {
	l := read.Log
	r := warmup.Analyse(evidence.Series(&l), o)
	a := warmUpAnswer{
		File: file, Columns: map[string]columnAnswer{}, Rows: read.Rows,
		ColdStart: r.ColdStart, StartC: hundredths(r.StartC), SecondsTo: map[string]*float64{},
		ReachesRegulating: r.ReachesRegulating, Remarks: say.English().All(slices.Concat(read.Remarks, r.Remarks)),
	}
	for _, column := range read.Columns {
		a.Columns[column.Key] = columnAnswer{column.Header, column.Unit}
	}
	for _, level := range warmup.Levels() {
		a.SecondsTo[strconv.Itoa(level)] = nil
		if s, ok := r.SecondsTo[level]; ok {
			a.SecondsTo[strconv.Itoa(level)] = hundredths(&s)
		}
	}
	if k := r.Knee; k != nil {
		a.KneeC, a.KneeS = hundredths(&k.C), hundredths(&k.S)
	}
	if p := r.Plateau; p != nil {
		a.PlateauC, a.PlateauSdK = hundredths(&p.C), hundredths(&p.SdK)
	}
	return a
}

func hundredths[T ~float64](v *T) *float64 {
	if v == nil {
		return nil
	}
	at := math.Round(float64(*v)*100) / 100
	return &at
}

// into reads a temperature that a loop may have.
func into(to **diagram.Celsius) func(string) error {
	return func(text string) error {
		v, err := strconv.ParseFloat(text, 64)
		if c := diagram.Celsius(v); err == nil && c.Plausible() {
			*to = &c
			return nil
		}
		return fmt.Errorf("must be a temperature in °C, between %g and %g", float64(diagram.MinC), float64(diagram.MaxC))
	}
}

// parseColumns reads ect="COLUMN",time="COLUMN". The quotes may be left out; a
// column's name may hold commas.
func parseColumns(to map[string]string, text string) error {
	last := ""
	for _, part := range strings.Split(text, ",") {
		key, name, ok := strings.Cut(part, "=")
		switch {
		case ok && slices.Contains(logfile.Keys(), key):
			to[key], last = name, key
		case last == "":
			return fmt.Errorf("%q: must begin with one of %s and =", part, strings.Join(logfile.Keys(), ", "))
		default:
			to[last] += "," + part
		}
	}
	for key, name := range to {
		if n := len(name); n >= 2 && name[0] == '"' && name[n-1] == '"' {
			to[key] = name[1 : n-1]
		}
	}
	return nil
}
