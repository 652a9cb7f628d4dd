package evidence

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/diagram/say"
)

// ErrCodes says that the list of trouble codes is at fault.
var ErrCodes = errors.New("list of trouble codes at fault")

// TroubleCode is what a generic code says about the loop.
type TroubleCode struct {
	Code   string
	Parts  []string // of the loop that it points at, as "radiator"
	Causes []string // words of cases.Cause, or of what lies outside of them, as "reference-sensor"
	Class  Class    // of the source
}

// Codes is a list of trouble codes by their code. Don't change it.
type Codes map[string]TroubleCode

// ShippedCodes reads the list that comes with the program.
func ShippedCodes() (Codes, error) { return ReadCodes(assets.TroubleCodes) }

// ReadCodes reads a list from CSV: code, parts and causes split by semicolons,
// class of source. An error names the line.
func ReadCodes(text []byte) (Codes, error) {
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("dtc.csv: %w: %w", ErrCodes, err)
	}
	codes := Codes{}
	for i, row := range rows {
		if i == 0 {
			continue
		}
		if len(row) != 4 || !wellFormed(row[0]) || row[1] == "" || row[2] == "" || codes[row[0]].Code != "" {
			return nil, fmt.Errorf("dtc.csv: line %d: %q: %w", i+1, row[0], ErrCodes)
		}
		codes[row[0]] = TroubleCode{row[0], strings.Split(row[1], ";"), strings.Split(row[2], ";"), Class(row[3])}
	}
	return codes, nil
}

// IsCode reports whether a word has the form of a trouble code, known or not, in letters or as
// two bytes.
func IsCode(word string) bool { return wellFormed(cases.InLetters(word)) }

func wellFormed(code string) bool {
	if len(code) != 5 || !strings.Contains("PCBU", code[:1]) || !strings.Contains("0123", code[1:2]) {
		return false
	}
	return strings.Trim(code[2:], "0123456789ABCDEF") == ""
}

// makerSpecific reports whether a maker gives the code its meaning: P1 by all
// descriptions; P30 to P33 and the other letters' 1 and 2 from memory.
func makerSpecific(code string) bool {
	if code[0] == 'P' {
		return code[1] == '1' || (code[1] == '3' && code[2] <= '3')
	}
	return code[1] == '1' || code[1] == '2'
}

// flags tell what each of the case's codes points at.
func (codes Codes) flags(c *cases.Case) []Flag {
	var out []Flag
	for _, code := range c.Codes {
		word := cases.InLetters(code.Code)
		if word == "" {
			continue
		}
		because := codes.because(word)
		if code.State != "" {
			because = append(because, say.Of("because.code-state", code.StateText()))
		}
		out = append(out, ofCase("code-points-at", Note, codes.Tell(word), append(because, frozenFrame(code.FreezeFrame)...)...))
	}
	return out
}

// CodeMeaning says in English what a trouble code means, or why that isn't known
// here.
func (a *Analyst) CodeMeaning(code string) string { return a.codes.Tell(code).String() }

// Tell says in one sentence, with the code, what Meaning says.
func (codes Codes) Tell(code string) say.Text {
	return say.Of("flag.code", cases.InLetters(code), codes.Meaning(code))
}

// Meaning says what a code means, or why that isn't known here.
func (codes Codes) Meaning(code string) say.Text {
	word := cases.InLetters(code)
	_, known := codes[word]
	switch {
	case known:
		return say.Of("code." + word)
	case !wellFormed(word):
		return say.Of("code.malformed")
	case makerSpecific(word):
		return say.Of("code.maker")
	}
	return say.Of("code.unknown")
}

// because is where a code of the list points and what it speaks for, with the
// class of its source.
func (codes Codes) because(word string) []say.Text {
	known, ok := codes[word]
	if !ok {
		return nil
	}
	names := make([]say.Text, len(known.Causes))
	for i, c := range known.Causes {
		names[i] = causeText(c)
	}
	parts := make([]say.Text, len(known.Parts))
	for i, p := range known.Parts {
		parts[i] = say.Of("code-part." + p)
	}
	return []say.Text{say.Of("because.code-parts", say.List(parts...)), say.Of("because.code-causes", say.List(names...)), known.Class.Text()}
}

// causeText is a cause's name, or of what lies outside of the causes.
func causeText(word string) say.Text {
	if c := cases.Cause(word); slices.Contains(cases.Words[cases.Cause](), c) {
		return c.Text()
	}
	return say.Of("code-cause." + word)
}

func frozenFrame(f cases.FreezeFrame) []say.Text {
	var parts []say.Text
	if f.EctC != nil {
		parts = append(parts, say.Value(*f.EctC))
	}
	if f.RPM != nil {
		parts = append(parts, say.Of("value.rpm", *f.RPM))
	}
	if f.SpeedKmh != nil {
		parts = append(parts, say.Value(say.Kmh(*f.SpeedKmh)))
	}
	if parts == nil {
		return nil
	}
	return []say.Text{say.Of("because.freeze-frame", say.List(parts...))}
}
