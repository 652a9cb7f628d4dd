package sqlite

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"strings"

	"loopbook/cases"
)

// SavedSearch is a search that a person has given a name.
type SavedSearch struct{ Name, Query string }

// SaveSearch keeps a search under a name, in the place of any of that name; an empty
// query forgets it.
func (s *Store) SaveSearch(ctx context.Context, name, query string) error {
	name = strings.TrimSpace(name)
	return s.edit(ctx, "keeping the search", func(tx *sql.Tx) error {
		if query == "" {
			_, err := tx.ExecContext(ctx, `DELETE FROM searches WHERE name = ?`, name)
			return err
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO searches (name, query) VALUES (?, ?) ON CONFLICT DO UPDATE SET query = excluded.query`, name, query)
		return err
	})
}

// SavedSearches lists them by name.
func (s *Store) SavedSearches(ctx context.Context) (out []SavedSearch, err error) {
	err = s.rows(ctx, "reading the saved searches", `SELECT name, query FROM searches ORDER BY name COLLATE NOCASE`, func(scan func(...any) error) error {
		var one SavedSearch
		err := scan(&one.Name, &one.Query)
		out = append(out, one)
		return err
	})
	return out, err
}

// Retire takes a case out of practice, or back into it.
func (s *Store) Retire(ctx context.Context, caseID string, retired bool) error {
	statement := `DELETE FROM retired WHERE case_id = ?`
	if retired {
		statement = `INSERT OR IGNORE INTO retired (case_id) VALUES (?)`
	}
	return s.edit(ctx, "retiring the case", func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, statement, caseID)
		return err
	})
}

// Retired tells which cases are out of practice.
func (s *Store) Retired(ctx context.Context) (map[string]bool, error) {
	out := map[string]bool{}
	err := s.rows(ctx, "reading what is retired", `SELECT case_id FROM retired`, func(scan func(...any) error) error {
		var id string
		err := scan(&id)
		out[id] = true
		return err
	})
	return out, err
}

// SaveClass keeps a class's list of cases, in the place of any of that name; without
// cases it is forgotten. Results stay.
func (s *Store) SaveClass(ctx context.Context, c cases.Class) error {
	list, err := json.Marshal(c.Cases)
	if err != nil {
		return err
	}
	return s.edit(ctx, "keeping the class", func(tx *sql.Tx) error {
		if len(c.Cases) == 0 {
			_, err := tx.ExecContext(ctx, `DELETE FROM classes WHERE name = ?`, c.Name)
			return err
		}
		_, err := tx.ExecContext(ctx, `INSERT INTO classes (name, cases) VALUES (?, ?) ON CONFLICT DO UPDATE SET cases = excluded.cases`, strings.TrimSpace(c.Name), string(list))
		return err
	})
}

// Classes lists them by name.
func (s *Store) Classes(ctx context.Context) (out []cases.Class, err error) {
	err = s.rows(ctx, "reading the classes", `SELECT name, cases FROM classes ORDER BY name COLLATE NOCASE`, func(scan func(...any) error) error {
		var c cases.Class
		var list string
		if err := scan(&c.Name, &list); err != nil {
			return err
		}
		out = append(out, c)
		return json.Unmarshal([]byte(list), &out[len(out)-1].Cases)
	})
	return out, err
}

// AddResult keeps how somebody practised.
func (s *Store) AddResult(ctx context.Context, r cases.Result) error {
	return s.AddResults(ctx, []cases.Result{r})
}

// AddResults keeps how people practised: all of it, or on an error none.
func (s *Store) AddResults(ctx context.Context, results []cases.Result) error {
	return s.edit(ctx, "keeping the results", func(tx *sql.Tx) error {
		for _, r := range results {
			text, err := json.Marshal(r)
			if err != nil {
				return err
			}
			_, err = tx.ExecContext(ctx, `INSERT INTO results (finished, trainee, class, case_id, result) VALUES (?, ?, ?, ?, ?)`,
				micro(r.Finished), r.Trainee, r.Class, r.CaseID, string(text))
			if err != nil {
				return err
			}
		}
		return nil
	})
}

// Results are those of a class, or of all where the name is empty, the latest last.
func (s *Store) Results(ctx context.Context, class string) (out []cases.Result, err error) {
	err = s.rows(ctx, "reading the results", `SELECT result FROM results WHERE ?1 = '' OR class = ?1 ORDER BY finished, key`, func(scan func(...any) error) error {
		var text string
		if err := scan(&text); err != nil {
			return err
		}
		var r cases.Result
		err := json.Unmarshal([]byte(text), &r)
		out = append(out, r)
		return err
	}, class)
	return out, err
}

// rows reads every row of a query.
func (s *Store) rows(ctx context.Context, what, query string, take func(scan func(...any) error) error, args ...any) error {
	err := s.view(ctx, func(tx *sql.Tx) error { return eachRow(ctx, tx, query, take, args...) })
	if err != nil {
		return fmt.Errorf("%s: %w", what, err)
	}
	return nil
}
