package proof

import (
	"math"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
)

// LogPair is a warm-up log of each stage, by their places in the case; -1:
// there is none of that stage that began alike.
type LogPair struct{ Before, After int }

// startLikeK is how far apart two warm-ups may begin to be held against each
// other (judgement).
const startLikeK = 12

// pairLogs gives each log of one stage the log of the other that began most
// alike.
func pairLogs(c *cases.Case, f evidence.Findings) []LogPair {
	var out []LogPair
	taken := map[int]bool{}
	for a := range c.Logs {
		if !isAfter(c.Logs[a].Stage) {
			continue
		}
		best, nearest := -1, math.Inf(1)
		for b := range c.Logs {
			if off := startsApartK(f, b, a); !isAfter(c.Logs[b].Stage) && !taken[b] && off <= startLikeK && off < nearest {
				best, nearest = b, off
			}
		}
		taken[best] = true
		out = append(out, LogPair{best, a})
	}
	for b := range c.Logs {
		if !isAfter(c.Logs[b].Stage) && !taken[b] {
			out = append(out, LogPair{b, -1})
		}
	}
	return out
}

func startsApartK(f evidence.Findings, a, b int) float64 {
	x, y := f.WarmUps[a].Result.StartC, f.WarmUps[b].Result.StartC
	if x == nil || y == nil {
		return math.Inf(1)
	}
	return math.Abs(float64(*x - *y))
}

// TestPair is the last check of a kind in each stage, by its place in the case;
// -1: none that holds anything.
type TestPair struct {
	Kind                        cases.TestKind
	Before, After               int
	BeforeOutcome, AfterOutcome string // words of evidence.Outcome
}

// PairTests are the kinds of checks that were done, each with the last of either stage that tells anything.
func PairTests(c *cases.Case) []TestPair {
	var out []TestPair
	for _, kind := range cases.Words[cases.TestKind]() {
		p := TestPair{Kind: kind, Before: -1, After: -1}
		for i := range c.Tests {
			t := &c.Tests[i]
			word := ""
			if t.Kind == kind {
				word = evidence.Outcome(c, t)
			}
			switch {
			case word == "":
			case isAfter(t.Stage):
				p.After, p.AfterOutcome = i, word
			default:
				p.Before, p.BeforeOutcome = i, word
			}
		}
		if p.Before >= 0 || p.After >= 0 {
			out = append(out, p)
		}
	}
	return out
}

// Codes are the trouble codes of the complaint and those read after the repair.
type Codes struct {
	Before, After []string
	Read          bool     // the memory was read after the repair
	Back          []string // codes of the complaint that came back
}

func compareCodes(c *cases.Case) Codes {
	var out Codes
	for _, code := range c.Codes {
		out.Before = append(out.Before, cases.InLetters(code.Code))
	}
	for _, code := range c.Repair.CodesAfter {
		out.Read = true
		if code = cases.InLetters(code); strings.EqualFold(code, cases.NoCodes) {
			continue
		}
		out.After = append(out.After, code)
		if slices.Contains(out.Before, code) {
			out.Back = append(out.Back, code)
		}
	}
	return out
}
