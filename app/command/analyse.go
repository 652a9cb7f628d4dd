package command

import (
	"context"
	"errors"
	"flag"
	"fmt"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/exchange"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// analyseDraws is how many cars of each cause are simulated unless told: half of the window's, for
// many files in a row. Chances come out within some hundredths of it.
const analyseDraws = 100

// analyse prints an answer for each file. A file at fault is told and doesn't
// keep the others from being answered.
func analyse(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("analyse", flag.ContinueOnError)
	priorName := set.String("prior", "workshop", "workshop: causes as often as they are met; flat: all alike")
	draws := set.Int("draws", analyseDraws, "cars simulated of each cause")
	files, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return usagef("no file named")
	}
	if *draws < 20 || *draws > 2000 {
		return usagef("--draws %d: must be 20 to 2000", *draws)
	}
	prior, err := diagnosis.ParsePrior(*priorName)
	if err != nil {
		return usagef("--%v", err)
	}
	m, err := mind.New()
	if err != nil {
		return err
	}
	m.Crowds.Draws = *draws
	out := lines(c.Out)
	var faults []error
	for _, file := range files {
		b, err := readBundle(c, file)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		if err := m.Gather(ctx, &b.Case, m.Asked(&b.Case), nil); ctx.Err() != nil {
			return ctx.Err()
		} else if err != nil { // answered without temperatures
			faults = append(faults, fmt.Errorf("%s: %w", file, err))
		}
		t := m.Think(&b.Case, prior)
		answer := evidence.Document(&b.Case, t.Found)
		diagnosis.Fill(&answer, t.Ranking, t.Next, t.Beside)
		if err := out.Encode(answer); err != nil {
			return err
		}
	}
	return errors.Join(faults...)
}

func readBundle(c Console, file string) (cases.Bundle, error) {
	if file == "-" {
		return exchange.Read("standard input", c.In)
	}
	return exchange.ReadFile(file)
}

func listLayouts(_ context.Context, c Console, args []string) error {
	if rest, err := parse(flag.NewFlagSet("layouts", flag.ContinueOnError), args); err != nil || len(rest) > 0 {
		return usagef("takes no arguments")
	}
	loops, err := diagram.Loops()
	if err != nil {
		return err
	}
	for _, l := range loops {
		fmt.Fprintf(c.Out, "%s\n  %s. %s\n  points:", l.ID, say.LoopName(l), say.LoopAbout(l))
		for _, p := range l.Points {
			fmt.Fprintf(c.Out, " %s", string(p.Point))
		}
		fmt.Fprintln(c.Out)
	}
	return nil
}
