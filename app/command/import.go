package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"slices"

	"loopbook/app/library"
	"loopbook/cases"
)

// importFiles takes files into the notebook. A bad one is told and doesn't keep the
// others out.
func importFiles(ctx context.Context, c Console, args []string) (err error) {
	set := flag.NewFlagSet("import", flag.ContinueOnError)
	notebook, choice := notebookFlag(set), set.String("conflicts", "", "mine, theirs or both")
	names, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(names) == 0 {
		return usagef("no file named")
	}
	if !slices.Contains([]cases.Choice{"", cases.KeepMine, cases.TakeTheirs, cases.KeepBoth}, cases.Choice(*choice)) {
		return usagef("--conflicts %q: must be mine, theirs or both", *choice)
	}
	files, err := library.Importable(names)
	if err != nil {
		return err
	}
	store, err := library.Open(ctx, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	t, err := library.Take(ctx, store, files, c.In, func(done, taken int) {
		if taken >= library.MostAtOnce {
			fmt.Fprintf(c.Err, "\r%d of %d files, %d cases", done, len(files), taken)
		}
	})
	if len(t.Met) >= library.MostAtOnce {
		fmt.Fprintln(c.Err) // ends the line that counted
	}
	if errors.Is(err, context.Canceled) {
		err = fmt.Errorf("stopped after %d of %d files: the cases listed are in the notebook, and the same command takes the rest", t.Files, t.Of)
	}
	if err == nil && *choice != "" {
		err = t.Settle(ctx, store, cases.Choice(*choice))
	}
	for _, class := range t.Classes {
		fmt.Fprintf(c.Err, "class set %q: %d cases\n", class.Name, len(class.Cases))
	}
	if t.Sealed > 0 {
		fmt.Fprintf(c.Err, "%d of them sealed: each is listed once it was answered in practice\n", t.Sealed)
	}
	return errors.Join(err, printTakings(c, t))
}

// printTakings tells what became of each, and an error where any was refused or
// waits for a choice.
func printTakings(c Console, t library.Takings) error {
	for i, m := range t.Met {
		fmt.Fprintf(c.Out, "%s\t%s\t%s\n", m.ID, m.Meeting, oneLine(t.Titles[i]))
	}
	errs := t.Refused
	for _, m := range t.Conflicts {
		errs = append(errs, fmt.Errorf("case %s (%q): the notebook's case of that id says something else; choose with --conflicts mine, theirs or both", m.ID, m.Theirs.Case.Title))
	}
	return errors.Join(errs...)
}
