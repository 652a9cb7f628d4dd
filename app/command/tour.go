package command

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"

	"loopbook/app/library"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report"
	"loopbook/report/picture"
)

// tour shows the main job without a window: the demo's first case with its
// readings, what they mean, and its PDF.
func tour(_ context.Context, c Console, args []string) error {
	if rest, err := parse(flag.NewFlagSet("tour", flag.ContinueOnError), args); err != nil || len(rest) > 0 {
		return usagef("takes no arguments")
	}
	demo, err := library.DemoCases()
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
	fmt.Fprintf(c.Out, "%s\n%s\n", k.Title, k.Complaint.Text)
	l, err := diagram.LoopByID(k.Loop.Layout)
	if err != nil {
		return err
	}
	for i, r := range k.Rounds {
		fmt.Fprintf(c.Out, "\n%s\n", r.Label)
		tellRound(c.Out, l, picture.State(l, &k, found, i, say.English()))
	}
	fmt.Fprintln(c.Out, "\nWhat it means")
	for _, f := range found.Flags {
		fmt.Fprintf(c.Out, "  %-4s  %s\n", f.Severity, f.Text)
	}
	const path = "Loopbook-demo.pdf"
	err = library.WriteFile(path, func(f *os.File) error {
		return report.Write(f, report.Record, report.Material{Case: &k, Found: found}, report.Options{Units: u})
	})
	if err != nil {
		return err
	}
	fmt.Fprintf(c.Out, "\nIts record is written to %s\n", path)
	return nil
}

// tellRound writes what the drawing of a round would show.
func tellRound(out io.Writer, l *diagram.Loop, s drawing.State) {
	line := func(name, value, expected, note string) {
		if expected != "" {
			expected = "expected " + expected
		}
		fmt.Fprintf(out, "  %-21s %9s  %-21s %s\n", name, value, expected, note)
	}
	for _, at := range l.Points {
		p := s.Points[at.Point]
		if p.Mark == drawing.CantReach {
			line(say.PointName(at.Point).String(), "", "", "can't reach")
		} else if p.Text != "" {
			line(say.PointName(at.Point).String(), p.Text+" "+s.Unit, p.Range, p.Note)
		}
	}
	for _, at := range l.Deltas {
		if d, ok := s.Deltas[at.Name]; ok {
			note := ""
			if d.Mark == drawing.OutOfRange {
				note = "out of range"
			}
			line(say.DeltaName(at.Name).String(), d.Text, d.Range, note)
		}
	}
}
