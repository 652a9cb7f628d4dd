package main

import (
	"context"
	"flag"
	"os"
	"strings"

	"loopbook/cases/evidence"
	"loopbook/diagram/units"
	"loopbook/report"
)

func writeReport(_ context.Context, c console, args []string) error {
	set := flag.NewFlagSet("report", flag.ContinueOnError)
	out := set.String("o", "", "the PDF to write")
	page := set.String("page", "a4", "a4 or letter")
	unit := set.String("units", "metric", "metric or us")
	files, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(files) != 1 || *out == "" {
		return usagef("needs one FILE and -o OUT.pdf")
	}
	o := report.Options{}
	switch strings.ToLower(*page) {
	case "a4":
		o.Page = "A4"
	case "letter":
		o.Page = "Letter"
	default:
		return usagef("--page %q: must be a4 or letter", *page)
	}
	switch *unit {
	case "metric":
		o.Units = units.Metric()
	case "us":
		o.Units = units.US()
	default:
		return usagef("--units %q: must be metric or us", *unit)
	}
	b, err := readBundle(c, files[0])
	if err != nil {
		return err
	}
	analyst, err := evidence.Default()
	if err != nil {
		return err
	}
	found := analyst.Analyse(&b.Case)
	return writeFile(*out, func(f *os.File) error { return report.Record(f, &b.Case, found, o) })
}
