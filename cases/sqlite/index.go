package sqlite

import (
	"context"
	"database/sql"
	"strconv"
	"strings"
	"time"

	"loopbook/cases"
)

// show makes revision number, which holds c, the one that lists, filters and
// searches see.
func (s *Store) show(ctx context.Context, tx *sql.Tx, key int64, number int, c cases.Case) error {
	var opened any // NULL: not known
	if !c.Opened.IsZero() {
		opened = micro(c.Opened)
	}
	content, err := contentOf(c)
	if err != nil {
		return err
	}
	changed := s.now()
	_, err = tx.ExecContext(ctx, `UPDATE cases SET revision = ?, title = ?, vehicle = ?, layout = ?, cause = ?,
		before_repair = ?, after_repair = ?, opened = ?, changed = ?, deleted = NULL, content = ?, stale = 0 WHERE key = ?`,
		number, c.Title, vehicleLine(c.Vehicle), c.Loop.Layout, string(c.Verdict.Cause),
		c.HasStage(cases.BeforeRepair), c.HasStage(cases.AfterRepair), opened, micro(changed), content, key)
	if err != nil {
		return err
	}
	return s.describe(ctx, tx, key, c, changed)
}

// describe makes what searches and filters ask of a living case.
func (s *Store) describe(ctx context.Context, tx *sql.Tx, key int64, c cases.Case, changed time.Time) error {
	body := bodyText(c)
	_, err := tx.ExecContext(ctx, `INSERT OR REPLACE INTO search (rowid, title, body) VALUES (?, ?, ?)`, key, c.Title, body)
	if err != nil {
		return err
	}
	if err := s.learn(ctx, tx, c.Title+"\n"+body); err != nil {
		return err
	}
	return s.writeDigest(ctx, tx, key, c, changed)
}

// vehicleLine is what is known of make, model, engine and year.
func vehicleLine(v cases.Vehicle) string {
	parts := []string{v.Make, v.Model, v.Engine, yearText(v)}
	return strings.Join(strings.Fields(strings.Join(parts, " ")), " ")
}

func yearText(v cases.Vehicle) string {
	if v.Year == nil {
		return ""
	}
	return strconv.Itoa(*v.Year)
}

// bodyText is every text of c besides its title. Words of the format stand there
// both in the words of the trade, which a snippet then shows, and as they are. The
// layout doesn't: it is named after its thermostat, and who looks for that part wants
// the cases that tell of it. It has a filter of its own.
func bodyText(c cases.Case) string {
	v, named := c.Vehicle, func(w interface{ Name() string }, word string) []string {
		return []string{w.Name(), word}
	}
	words := []string{
		c.ID, v.Make, v.Model, v.Engine, yearText(v), v.VIN, v.Motive.Name(),
		c.Customer.Name, c.Customer.Contact, c.Complaint.Text,
		cases.Confirmation(c.Verdict.ConfirmedBy).String(), c.Verdict.ConfirmedBy, c.Verdict.Note, c.Repair.AccessNote, c.Lesson,
	}
	words = append(words, c.Tags...)
	words = append(words, named(c.Verdict.Cause, string(c.Verdict.Cause))...)
	for _, s := range c.Complaint.Symptoms {
		words = append(words, named(s, string(s))...)
	}
	for _, code := range c.Codes {
		words = append(words, cases.InLetters(code.Code), code.Code, code.State)
	}
	for _, r := range c.Rounds {
		words = append(words, r.Label)
	}
	for _, l := range c.Logs {
		words = append(words, l.Name)
	}
	for _, t := range c.Tests {
		words = append(words, named(t.Kind, string(t.Kind))...)
	}
	for _, p := range c.Repair.Parts {
		words = append(words, p.Name)
	}
	for _, p := range c.Photos {
		words = append(words, p.Caption)
	}
	return strings.Join(words, "\n")
}
