package main

import (
	"context"
	"flag"
	"fmt"
	"os"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/units"
	"loopbook/report"
)

// tour shows the main job without a window: the demo's first case with its
// readings, what they mean, and its PDF.
func tour(_ context.Context, c console, args []string) error {
	set := flag.NewFlagSet("tour", flag.ContinueOnError)
	if _, err := parse(set, args); err != nil {
		return err
	}
	demo, err := demoCases()
	if err != nil {
		return err
	}
	analyst, err := evidence.Default()
	if err != nil {
		return err
	}
	k := demo[0].Case
	found := analyst.Analyse(&k)
	u := units.Metric()
	fmt.Fprintf(c.out, "%s\n%s\n", k.Title, k.Complaint.Text)
	for i, r := range k.Rounds {
		fmt.Fprintf(c.out, "\n%s\n", r.Label)
		for _, p := range diagram.Points() {
			if reading, ok := found.Rounds[i].Readings[p]; ok {
				fmt.Fprintf(c.out, "  %-22s %6s °C\n", p, u.Temp(reading.TrueC))
			}
		}
		for _, d := range found.Deltas {
			if d.Round == i {
				fmt.Fprintf(c.out, "  %-22s %6s  %s\n", d.Name, u.Delta(d.ValueK), d.State)
			}
		}
	}
	fmt.Fprintln(c.out, "\nWhat it means")
	for _, f := range found.Flags {
		fmt.Fprintf(c.out, "  %-4s  %s\n", f.Severity, f.Text)
	}
	const path = "Loopbook-demo.pdf"
	err = writeFile(path, func(f *os.File) error { return report.Record(f, &k, found, report.Options{Units: u}) })
	if err != nil {
		return err
	}
	fmt.Fprintf(c.out, "\nIts record is written to %s\n", path)
	return nil
}
