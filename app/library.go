package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/query"
	"loopbook/cases/sqlite"
)

// notebookFlag adds --notebook to a command.
func notebookFlag(set *flag.FlagSet) *string {
	return set.String("notebook", "", "the notebook's file")
}

// importFiles takes files into the notebook. A bad one is told and doesn't keep the
// others out.
func importFiles(ctx context.Context, c console, args []string) (err error) {
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
	t, err := library.Take(ctx, store, files, c.in, func(done, taken int) {
		if taken >= library.MostAtOnce {
			fmt.Fprintf(c.err, "\r%d of %d files, %d cases", done, len(files), taken)
		}
	})
	if len(t.Met) >= library.MostAtOnce {
		fmt.Fprintln(c.err) // ends the line that counted
	}
	if errors.Is(err, context.Canceled) {
		err = fmt.Errorf("stopped after %d of %d files: the cases listed are in the notebook, and the same command takes the rest", t.Files, t.Of)
	}
	if err == nil && *choice != "" {
		err = t.Settle(ctx, store, cases.Choice(*choice))
	}
	return errors.Join(err, printTakings(c, t))
}

// exportCase writes cases of the notebook to a file.
func exportCase(ctx context.Context, c console, args []string) error {
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
	switch {
	case *preview && (len(ids) != 1 || !*hidden):
		return usagef("--preview needs one ID and --anonymous")
	case !*preview && *out == "":
		return usagef("needs -o FILE")
	case len(ids) == 0 && !*all && *found == "":
		return usagef("needs an ID, --all or --search WORDS")
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	g := library.Giving{Anonymous: *hidden, Hide: library.Listed(*hide), Notes: *notes}
	if *preview {
		_, told, err := g.Bundle(ctx, store, ids[0])
		printPreview(c.out, told)
		return err
	}
	q, err := parseQuery(*found)
	if err != nil {
		return err
	}
	if strings.EqualFold(filepath.Ext(*out), ".csv") {
		return library.WriteTable(ctx, store, q, *out)
	}
	if *all || *found != "" {
		if ids, err = library.IDsOf(ctx, store, q); err != nil {
			return err
		}
	}
	if _, err = g.Write(ctx, store, ids, *out); errors.Is(err, library.ErrNeedsZip) {
		return usagef("%v", err)
	}
	return err
}

// parseQuery reads a search typed on a command line; a filter that can't be used is an
// error.
func parseQuery(text string) (cases.Query, error) {
	p := query.Parse(text, time.Local)
	if len(p.Problems) == 0 {
		return p.Query, nil
	}
	x := p.Problems[0]
	why := map[query.Why]string{
		query.NoSuchWord: "there is no such word", query.ManyWords: "it is the beginning of several", query.Empty: "a word is missing",
		query.NoRange: "write 2012, 2010..2015, 2010.. or ..2015", query.NoDate: "write 2014, 2014-03, 2014-03-12 or two of them with .. between",
	}[x.Why]
	if len(x.Near) > 0 {
		why += fmt.Sprintf("; near to it: %q", x.Near)
	}
	return cases.Query{}, usagef("%s: %s", x.Token, why)
}

func searchCases(ctx context.Context, c console, args []string) error {
	set := flag.NewFlagSet("search", flag.ContinueOnError)
	notebook := notebookFlag(set)
	var turned, others []string // a filter turned round looks like a flag
	for _, a := range args {
		if strings.HasPrefix(a, "-") && !strings.HasPrefix(a, "--") && strings.Contains(a, ":") {
			turned = append(turned, a)
			continue
		}
		others = append(others, a)
	}
	words, err := parse(set, others)
	if err != nil {
		return err
	}
	q, err := parseQuery(strings.Join(append(words, turned...), " "))
	if err != nil {
		return err
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	q.Limit = 1000
	page, err := store.Search(ctx, q)
	if err != nil {
		return err
	}
	if page.ReadAs != "" {
		fmt.Fprintf(c.err, "nothing holds these words; read as: %s\n", page.ReadAs)
	}
	for _, s := range page.Items {
		cause := "open"
		if s.Cause != "" {
			cause = s.Cause.Name()
		}
		fmt.Fprintf(c.out, "%s\t%s\t%s\t%s\n", s.ID, s.Title, s.Vehicle, cause)
	}
	if more := page.Total - len(page.Items); more > 0 {
		fmt.Fprintf(c.err, "and %d more\n", more)
	}
	return nil
}

// printTakings tells what became of each, and an error where any was refused or
// waits for a choice.
func printTakings(c console, t library.Takings) error {
	for i, m := range t.Met {
		fmt.Fprintf(c.out, "%s\t%s\t%s\n", m.ID, m.Meeting, t.Titles[i])
	}
	errs := t.Refused
	for _, m := range t.Conflicts {
		errs = append(errs, fmt.Errorf("case %s (%q): the notebook's case of that id says something else; choose with --conflicts mine, theirs or both", m.ID, m.Theirs.Case.Title))
	}
	return errors.Join(errs...)
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

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// openExisting opens a notebook to read from: one that is named must be there,
// or a slip of the pen would make an empty one.
func openExisting(ctx context.Context, path string) (*sqlite.Store, error) {
	if path != "" {
		if _, err := os.Stat(path); err != nil {
			return nil, fmt.Errorf("notebook %s: %w", path, errors.Unwrap(err))
		}
	}
	return library.Open(ctx, path)
}

// openRefreshed opens a notebook to read from, with all that its statistics need.
func openRefreshed(ctx context.Context, c console, path string) (*sqlite.Store, error) {
	store, err := openExisting(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := store.Refresh(ctx, func(left int) { fmt.Fprintf(c.err, "\rbringing the notebook up to date: %d left ", left) }); err != nil {
		store.Close()
		return nil, err
	}
	return store, nil
}
