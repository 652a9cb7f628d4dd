package command

import (
	"context"
	"flag"
	"fmt"
	"strings"
	"time"

	"loopbook/cases"
	"loopbook/cases/query"
)

// parseQuery reads a search typed on a command line; a filter that can't be used is an
// error.
func parseQuery(text string) (cases.Query, error) {
	p := query.Parse(text, time.Local)
	if len(p.Problems) == 0 {
		return p.Query, nil
	}
	x := p.Problems[0]
	why := map[query.Why]string{
		query.NoField: "there is no such filter", query.NoSuchWord: "there is no such word", query.ManyWords: "it is the beginning of several", query.Empty: "a word is missing",
		query.NoRange: "write 2012, 2010..2015, 2010.. or ..2015", query.NoDate: "write 2014, 2014-03, 2014-03-12 or two of them with .. between",
	}[x.Why]
	if len(x.Near) > 0 {
		why += fmt.Sprintf("; near to it: %q", x.Near)
	}
	return cases.Query{}, usagef("%s: %s", x.Token, why)
}

func searchCases(ctx context.Context, c Console, args []string) error {
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
		fmt.Fprintf(c.Err, "nothing holds these words; read as: %s\n", page.ReadAs)
	}
	for _, s := range page.Items {
		cause := "open"
		if s.Cause != "" {
			cause = s.Cause.Name()
		}
		fmt.Fprintf(c.Out, "%s\t%s\t%s\t%s\n", s.ID, oneLine(s.Title), oneLine(s.Vehicle), cause)
	}
	if more := page.Total - len(page.Items); more > 0 {
		fmt.Fprintf(c.Err, "and %d more\n", more)
	}
	return nil
}
