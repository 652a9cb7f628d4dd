package command

import (
	"context"
	"flag"
	"os"
	"slices"
	"strings"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/cases/sqlite"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report"
)

func writeReport(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("report", flag.ContinueOnError)
	out := set.String("o", "", "the PDF to write")
	paper := set.String("paper", "record", "customer, record or trainer")
	page := set.String("page", "a4", "a4 or letter")
	lang := set.String("lang", "en", "en, de or es")
	unit := set.String("units", "metric", "metric or us")
	named := set.Bool("named", false, "keep the customer's data (trainer)")
	hidden := set.Bool("without-answer", false, "leave out the page with the answer (trainer)")
	files, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(files) != 1 || *out == "" {
		return usagef("needs one FILE and -o OUT.pdf")
	}
	o := report.Options{Lang: say.Lang(*lang), WithoutAnswer: *hidden}
	if !slices.Contains(say.Langs(), o.Lang) {
		return usagef("--lang %q: must be en, de or es", *lang)
	}
	switch strings.ToLower(*page) {
	case "a4":
		o.Page = report.A4
	case "letter":
		o.Page = report.Letter
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
	kind := report.Kind(*paper)
	if !slices.Contains(report.Kinds(), kind) {
		return usagef("--paper %q: must be customer, record or trainer", *paper)
	}
	switch {
	case kind != report.Trainer && (*named || *hidden):
		return usagef("--named and --without-answer are for --paper trainer: any other names the customer and holds the answer")
	case sqlite.SameFile(files[0], *out):
		return usagef("-o %s is the case itself: choose another name", *out)
	}
	b, err := readBundle(c, files[0])
	if err != nil {
		return err
	}
	if b, err = mind.PaperBundle(b, kind, *named); err != nil {
		return err
	}
	judge, err := mind.New()
	if err != nil {
		return err
	}
	m, err := judge.Material(ctx, b) // as in the window: two papers of a case say the same
	if err != nil {
		return err
	}
	return library.WriteFile(*out, func(f *os.File) error { return report.Write(f, kind, m, o) })
}
