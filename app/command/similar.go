package command

import (
	"context"
	"flag"
	"fmt"
	"math"

	"loopbook/app/library"
)

// similarCases prints the cases most like one.
func similarCases(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("similar", flag.ContinueOnError)
	notebook := notebookFlag(set)
	ids, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(ids) != 1 {
		return usagef("needs one ID")
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	list, err := library.Alike(ctx, store, ids[0])
	if err != nil {
		return err
	}
	for _, a := range list {
		fmt.Fprintf(c.Out, "%s\t%.2f\t%s\t%s\t%s\n", a.ID, math.Round(a.Distance*100)/100, oneLine(a.Title), oneLine(a.Vehicle), a.Told())
	}
	return nil
}
