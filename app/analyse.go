package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/exchange"
	"loopbook/diagram"
)

// analyse prints an answer for each file. A file at fault is told and doesn't
// keep the others from being answered.
func analyse(_ context.Context, c console, args []string) error {
	files, err := parse(flag.NewFlagSet("analyse", flag.ContinueOnError), args)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return usagef("no file named")
	}
	analyst, err := evidence.Default()
	if err != nil {
		return err
	}
	out := json.NewEncoder(c.out)
	out.SetEscapeHTML(false)
	var faults []error
	for _, file := range files {
		b, err := readBundle(c, file)
		if err != nil {
			faults = append(faults, err)
			continue
		}
		if err := out.Encode(evidence.Document(&b.Case, analyst.Analyse(&b.Case))); err != nil {
			return err
		}
	}
	return errors.Join(faults...)
}

func readBundle(c console, file string) (cases.Bundle, error) {
	if file == "-" {
		return exchange.Read("standard input", c.in)
	}
	return exchange.ReadFile(file)
}

func listLayouts(_ context.Context, c console, args []string) error {
	if rest, err := parse(flag.NewFlagSet("layouts", flag.ContinueOnError), args); err != nil || len(rest) > 0 {
		return usagef("takes no arguments")
	}
	loops, err := diagram.Loops()
	if err != nil {
		return err
	}
	for _, l := range loops {
		fmt.Fprintf(c.out, "%s\n  %s. %s\n  points:", l.ID, l.Title, l.About)
		for _, p := range l.Points {
			fmt.Fprintf(c.out, " %s", string(p.Point))
		}
		fmt.Fprintln(c.out)
	}
	return nil
}
