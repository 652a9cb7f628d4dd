package command

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"unicode"

	"loopbook/app/library"
	"loopbook/cases/anonymous"
	"loopbook/cases/photo"
)

// exportCase writes cases of the notebook to a file.
func exportCase(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("export", flag.ContinueOnError)
	notebook, out := notebookFlag(set), set.String("o", "", "the file to write")
	hidden, hide := set.Bool("anonymous", false, "without the customer"), set.String("hide", "", "further words to hide, with commas between")
	preview, all := set.Bool("preview", false, "tell what goes and what stays, and write nothing"), set.Bool("all", false, "every case")
	found := set.String("search", "", "every case that a search finds")
	notes := set.Bool("photo-notes", false, "photos with what the camera noted of place, time and device")
	ids, err := parse(set, args)
	if err != nil {
		return err
	}
	ways := 0
	for _, named := range []bool{len(ids) > 0, *all, *found != ""} {
		if named {
			ways++
		}
	}
	table := strings.EqualFold(filepath.Ext(*out), ".csv")
	switch {
	case *preview && (len(ids) != 1 || !*hidden):
		return usagef("--preview needs one ID and --anonymous")
	case !*preview && *out == "":
		return usagef("needs -o FILE")
	case ways != 1:
		return usagef("needs either an ID, --all or --search WORDS")
	case *hide != "" && !*hidden:
		return usagef("--hide goes with --anonymous")
	case table && *hidden:
		return usagef("--anonymous is for cases: a table has their titles as they stand")
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	g := library.Giving{Anonymous: *hidden, Hide: library.Listed(*hide), Notes: *notes}
	if *preview {
		_, told, err := g.Bundle(ctx, store, ids[0])
		printPreview(c.Out, told)
		return err
	}
	q, err := parseQuery(*found)
	if err != nil {
		return err
	}
	switch {
	case table && len(ids) > 0:
		return library.WriteTableOf(ctx, store, ids, *out)
	case table:
		return library.WriteTable(ctx, store, q, *out)
	case len(ids) == 0:
		if ids, err = library.IDsOf(ctx, store, q); err != nil {
			return err
		}
	}
	switch _, err = g.Write(ctx, store, ids, *out); {
	case errors.Is(err, library.ErrNeedsZip):
		return usagef("%v", err)
	case errors.Is(err, photo.ErrNoPicture), errors.Is(err, photo.ErrCut), errors.Is(err, photo.ErrTooLarge):
		return fmt.Errorf("%w; --photo-notes gives it as it is", err)
	}
	return err
}

// printPreview tells what goes and what stays.
func printPreview(w io.Writer, p anonymous.Preview) {
	for _, l := range p.Goes {
		fmt.Fprintf(w, "goes\t%s\t%s\t%s → %s\n", l.Kind, l.Where, oneLine(l.Was), oneLine(l.Now))
	}
	for _, l := range p.Stays {
		fmt.Fprintf(w, "stays\t%s\t%s\t%s\n", l.Kind, l.Where, oneLine(l.Was))
	}
}

// oneLine is a text that stays in its place among tabs and lines, and does nothing to a terminal.
func oneLine(text string) string {
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }), " ")
}
