package evidence

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"strings"

	"loopbook/assets"
	"loopbook/cases"
)

// ErrCodes says that the list of trouble codes is at fault.
var ErrCodes = errors.New("list of trouble codes at fault")

// TroubleCode is what a generic code says about the loop.
type TroubleCode struct {
	Code     string
	Meaning  string
	LoopPart string
	Causes   []string // words of cases.Cause, or plain words such as "reference sensor"
	Class    string   // of the source
}

// Codes is a list of trouble codes by their code. Don't change it.
type Codes map[string]TroubleCode

// ShippedCodes reads the list that comes with the program.
func ShippedCodes() (Codes, error) { return ReadCodes(assets.TroubleCodes) }

// ReadCodes reads a list from CSV: code, meaning, part of the loop, causes
// split by semicolons, class of source. An error names the line.
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
		if len(row) != 5 || !wellFormedCode(row[0]) || row[1] == "" || codes[row[0]].Code != "" {
			return nil, fmt.Errorf("dtc.csv: line %d: %q: %w", i+1, row[0], ErrCodes)
		}
		codes[row[0]] = TroubleCode{row[0], row[1], row[2], strings.Split(row[3], ";"), row[4]}
	}
	return codes, nil
}

// CodeFromBytes writes a code that the vehicle sends as two bytes in letters:
// the rule of SAE J2012 / ISO 15031-6, by public descriptions of it. Two zero
// bytes are padding and give "".
func CodeFromBytes(a, b byte) string {
	if a == 0 && b == 0 {
		return ""
	}
	return fmt.Sprintf("%c%d%X%02X", "PCBU"[a>>6], a>>4&3, a&15, b)
}

func wellFormedCode(code string) bool {
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
		word := strings.ToUpper(strings.TrimSpace(code.Code))
		if word == "" {
			continue
		}
		text, because := codes.tell(word)
		if code.State != "" {
			because = append(because, "state: "+code.State)
		}
		out = append(out, ofCase("code-points-at", Note, text, append(because, frozenFrame(code.FreezeFrame)...)...))
	}
	return out
}

// CodeMeaning says what a trouble code means, or why that isn't known here.
func (a *Analyst) CodeMeaning(code string) string { return a.codes.Tell(code) }

// Tell says in one sentence what a code means, or why that isn't known here.
func (codes Codes) Tell(code string) string {
	text, _ := codes.tell(strings.ToUpper(strings.TrimSpace(code)))
	return text
}

func (codes Codes) tell(word string) (text string, because []string) {
	known, ok := codes[word]
	switch {
	case ok:
		return fmt.Sprintf("%s: %s.", word, known.Meaning),
			[]string{"points at: " + known.LoopPart, "speaks for: " + causeWords(known.Causes), known.Class}
	case !wellFormedCode(word):
		return fmt.Sprintf("%q is no trouble code: a letter P, C, B or U and four digits.", word), nil
	case makerSpecific(word):
		return word + ": maker-specific, look it up in the maker's list.", nil
	}
	return word + ": not in the list of codes that bear on the cooling loop.", nil
}

func causeWords(causes []string) string {
	names := make([]string, len(causes))
	for i, c := range causes {
		names[i] = cases.Cause(c).Name()
	}
	return strings.Join(names, ", ")
}

func frozenFrame(f cases.FreezeFrame) []string {
	var parts []string
	if f.EctC != nil {
		parts = append(parts, inC(*f.EctC))
	}
	if f.RPM != nil {
		parts = append(parts, fmt.Sprintf("%.0f rpm", *f.RPM))
	}
	if f.SpeedKmh != nil {
		parts = append(parts, fmt.Sprintf("%.0f km/h", *f.SpeedKmh))
	}
	if parts == nil {
		return nil
	}
	return []string{"freeze frame: " + strings.Join(parts, ", ")}
}
