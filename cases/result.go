package cases

import (
	"fmt"
	"strings"
	"time"
	"unicode"
)

// Result is how somebody practised on a case.
type Result struct {
	Trainee     string    `json:"trainee"`
	Class       string    `json:"class"` // empty: alone
	CaseID      string    `json:"case"`
	Title       string    `json:"title"` // of the case, should it be gone one day
	Finished    time.Time `json:"finished"`
	Named       Cause     `json:"named"` // empty: it was given up
	Truth       Cause     `json:"truth"`
	Confidence  float64   `json:"confidence"` // 0 to 1
	Bits        float64   `json:"score_bits"`
	Minutes     float64   `json:"minutes"`
	BestMinutes float64   `json:"best_minutes"` // of the program's own way; 0: not known
	Bought      []string  `json:"bought"`       // in their order
}

// Class is a list of cases for an evening.
type Class struct {
	Name   string
	Cases  []string // ids in their order
	Sealed bool     // in a file: each case stays shut until it was answered
}

// mostInClassName is how many letters a class set's name may have: it heads a list and names a file.
const mostInClassName = 100

// ClassName is a class set's name as it is kept and handed over: in one line, without signs that nobody sees. One that is
// too long is an error.
func ClassName(text string) (string, error) {
	shown := func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}
	name := strings.Join(strings.Fields(strings.Map(shown, text)), " ")
	if n := len([]rune(name)); n > mostInClassName {
		return "", fmt.Errorf("a class set's name may have %d letters, and this one has %d: make the set under a shorter one", mostInClassName, n)
	}
	return name, nil
}
