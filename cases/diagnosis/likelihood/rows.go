package likelihood

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"

	"loopbook/cases"
)

// ErrData says that the likelihoods' data is at fault.
var ErrData = errors.New("likelihood data at fault")

// folder is where the tables lie in their files.
const folder = "diagnosis"

// Bounds of a share of cars: see the package's comment.
const (
	leastShare = 0.002
	mostShare  = 0.98
)

// The classes of a row's source.
const (
	publishedPattern = "published pattern; numbers judgement"
	commonPractice   = "common practice, no source"
	judgement        = "judgement"
)

// grounds say why a row's numbers are as they are.
type grounds struct {
	Class  string `json:"class"`
	Reason string `json:"reason"`
}

func (g grounds) check() error {
	if !slices.Contains([]string{publishedPattern, commonPractice, judgement}, g.Class) {
		return fmt.Errorf("class: unknown class %q", g.Class)
	}
	if g.Reason == "" {
		return errors.New("reason: is missing")
	}
	return nil
}

// shares are the share of cars with each cause: as given, else the same.
type shares struct {
	Else  float64                 `json:"else"`
	Given map[cases.Cause]float64 `json:"given"`
}

func (s shares) vector() (Vector, error) {
	causes := cases.Words[cases.Cause]()
	for c := range s.Given {
		if !slices.Contains(causes, c) {
			return nil, fmt.Errorf("given.%s: is no cause", c)
		}
	}
	v := newVector()
	for i, c := range causes {
		p, key := s.Else, "else"
		if given, ok := s.Given[c]; ok {
			p, key = given, "given."+string(c)
		}
		if !(p >= leastShare && p <= mostShare) {
			return nil, fmt.Errorf("%s: %g is not within %g to %g", key, p, leastShare, mostShare)
		}
		v[i] = p
	}
	return v, nil
}

// read hands each row of a file to use, whose error begins with the key.
func read[T any](files fs.FS, file string, use func(T) error) error {
	var rows []json.RawMessage
	text, err := fs.ReadFile(files, path.Join(folder, file))
	if err == nil {
		err = json.Unmarshal(text, &rows)
	}
	if err != nil {
		return fmt.Errorf("%s: %w: %w", file, ErrData, err)
	}
	for i, raw := range rows {
		dec := json.NewDecoder(bytes.NewReader(raw))
		dec.DisallowUnknownFields()
		var row T
		err := dec.Decode(&row)
		if err == nil {
			err = use(row)
		}
		if err != nil {
			return fmt.Errorf("%s: [%d].%w: %w", file, i, err, ErrData)
		}
	}
	return nil
}

// vocabulary is the words of which each has one row in a file, under that key.
type vocabulary[W ~string] struct {
	key   string
	words []W
}

// readEach is read of a file that has one row for each word of a vocabulary; of
// tells a row's.
func readEach[T any, W ~string](files fs.FS, file string, v vocabulary[W], of func(T) W, use func(T) error) error {
	seen := map[W]bool{}
	err := read(files, file, func(row T) error {
		switch w := of(row); {
		case !slices.Contains(v.words, w):
			return fmt.Errorf("%s: unknown word %q", v.key, w)
		case seen[w]:
			return fmt.Errorf("%s: %q stands twice", v.key, w)
		default:
			seen[w] = true
		}
		return use(row)
	})
	if err != nil {
		return err
	}
	for _, w := range v.words {
		if !seen[w] {
			return fmt.Errorf("%s: no row has the %s %q: %w", file, v.key, w, ErrData)
		}
	}
	return nil
}
