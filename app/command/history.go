package command

import (
	"context"
	"flag"
	"fmt"
	"io"
	"strconv"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/cases/experience"
)

// printHistory prints the shop's history as a text, or as one JSON document.
func printHistory(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("history", flag.ContinueOnError)
	notebook, asJSON := notebookFlag(set), set.Bool("json", false, "one JSON document")
	if err := parseAlone(set, args); err != nil {
		return err
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	h, err := library.History(ctx, store, experience.BandKm)
	if err != nil {
		return err
	}
	if *asJSON {
		return lines(c.Out).Encode(historyDocument(h))
	}
	writeHistory(c.Out, h)
	return nil
}

// groupJSON is a group with the search that finds its cases.
type groupJSON struct {
	Word   string      `json:"word"`
	Cases  int         `json:"cases"`
	Few    bool        `json:"few,omitempty"` // too few to tell
	Search string      `json:"search"`
	Causes []countJSON `json:"causes"`
}

type countJSON struct {
	Cause cases.Cause `json:"cause"`
	Cases int         `json:"cases"`
	Low   float64     `json:"share_low"` // of the true share, 95 %
	High  float64     `json:"share_high"`
}

type historyJSON struct {
	Cases    int           `json:"cases"`
	Closed   int           `json:"closed"`
	Causes   []countJSON   `json:"causes"`
	Codes    []groupJSON   `json:"codes"`
	Engines  []groupJSON   `json:"engines"`
	Odometer []groupJSON   `json:"odometer_km"`
	Months   []groupJSON   `json:"months"`
	Minutes  []minutesJSON `json:"minutes"`
	Returned int           `json:"came_back"`
	Guesses  guessesJSON   `json:"first_guesses"`
}

type minutesJSON struct {
	Cause   cases.Cause `json:"cause,omitempty"`
	Cases   int         `json:"cases"`
	Quarter float64     `json:"quarter"`
	Half    float64     `json:"half"`
	Three   float64     `json:"three_quarters"`
}

type guessesJSON struct {
	Cases   int       `json:"cases"`
	Right   int       `json:"right"`
	LogLoss float64   `json:"log_loss"`
	Sure    []binJSON `json:"by_sureness"`
}

type binJSON struct {
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	Cases   int     `json:"cases"`
	Right   int     `json:"right"`
	Claimed float64 `json:"claimed"`
	Fits    bool    `json:"fits"`
	Search  string  `json:"search"`
}

func historyDocument(h experience.History) historyJSON {
	doc := historyJSON{
		Cases: h.Cases, Closed: h.Closed, Causes: countsOf(h.Causes, h.Closed), Returned: len(h.Returned),
		Codes: groupsOf(h.Codes), Engines: groupsOf(h.Engines), Odometer: groupsOf(h.Odometer), Months: groupsOf(h.Months),
		Guesses: guessesJSON{Cases: h.Guesses.N, Right: h.Guesses.Right, LogLoss: h.Guesses.LogLoss},
	}
	for _, m := range h.Minutes {
		doc.Minutes = append(doc.Minutes, minutesJSON{m.Cause, m.N, m.Quarter, m.Half, m.Three})
	}
	for _, b := range h.Guesses.Bins {
		doc.Guesses.Sure = append(doc.Guesses.Sure, binJSON{b.Low, b.High, b.N, b.Right, b.MeanP, b.Fits(), library.SearchFor(b.Where)})
	}
	return doc
}

func countsOf(list []experience.CauseCount, of int) []countJSON {
	out := make([]countJSON, len(list))
	for i, c := range list {
		low, high := experience.Share(c.N, of)
		out[i] = countJSON{c.Cause, c.N, low, high}
	}
	return out
}

func groupsOf(list []experience.Group) []groupJSON {
	out := make([]groupJSON, len(list))
	for i, g := range list {
		out[i] = groupJSON{g.Word, g.N, g.N < experience.Few, library.SearchFor(g.Where), countsOf(g.Causes, g.N)}
	}
	return out
}

// writeHistory prints the main figures as text.
func writeHistory(w io.Writer, h experience.History) {
	fmt.Fprintf(w, "%d cases, %d closed\n", h.Cases, h.Closed)
	for _, part := range []struct {
		title  string
		groups []experience.Group
	}{{"by code", h.Codes}, {"by engine", h.Engines}, {"by odometer, from km", h.Odometer}, {"by month", h.Months}} {
		fmt.Fprintf(w, "\n%s\n", part.title)
		for _, g := range part.groups[:min(len(part.groups), 12)] {
			fmt.Fprintf(w, "  %s\t%s\n", g.Word, groupLine(g))
		}
	}
	if len(h.Minutes) > 0 {
		m := h.Minutes[0]
		fmt.Fprintf(w, "\nchecks to the verdict: %.0f min in half of the cases, %.0f to %.0f in the middle half\n", m.Half, m.Quarter, m.Three)
	}
	fmt.Fprintf(w, "came back within a year: %d\n", len(h.Returned))
	if h.Guesses.N > 0 {
		fmt.Fprintf(w, "first guess right: %d of %d\n", h.Guesses.Right, h.Guesses.N)
	}
}

// groupLine is what a group's cases turned out to be, the first three.
func groupLine(g experience.Group) string {
	line := strconv.Itoa(g.N)
	if g.N < experience.Few {
		line += " (too few to tell)"
	}
	for _, c := range g.Causes[:min(len(g.Causes), 3)] {
		line += fmt.Sprintf("; %s %d", c.Cause.Name(), c.N)
	}
	return line
}
