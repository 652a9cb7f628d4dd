package proof

import (
	"strings"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/proof"
	"loopbook/app/window/words"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// checks tell how each check came out in either stage, and which are to be done again.
func (s *Screen) checks(p proof.Proof, to *view.Data) {
	d := s.at.Desk
	says := func(at int) string {
		switch {
		case at < 0 && p.Verdict == proof.NoRepair:
			return "" // a sound loop has no after
		case at < 0:
			return kit.L("window.proof.not-done")
		}
		return words.CheckResult(&d.Case, &d.Case.Tests[at], d.Units).Says
	}
	for _, t := range p.Tests {
		to.Checks = append(to.Checks, view.Row{Name: kit.Capital(t.Kind.Name()), Before: says(t.Before), After: says(t.After)})
	}
	for _, t := range p.Owed() {
		to.Owed = append(to.Owed, view.Check{Kind: t.Kind, Name: kit.Capital(t.Kind.Name()), Again: true})
	}
	if p.Telling != "" {
		to.Owed = append(to.Owed, view.Check{Kind: p.Telling, Name: kit.Capital(p.Telling.Name())})
	}
}

// noCodes names what has not the form of a trouble code.
func noCodes(words []string) string {
	var none []string
	for _, w := range words {
		if !evidence.IsCode(w) {
			none = append(none, w)
		}
	}
	if len(none) == 0 {
		return ""
	}
	return kit.L("window.proof.malformed", strings.Join(none, ", "), say.Of("code.malformed"))
}

func codesTold(c proof.Codes) string {
	var out []string
	if len(c.Before) > 0 {
		out = append(out, kit.L("window.proof.codes-before", strings.Join(c.Before, ", ")))
	} else {
		out = append(out, kit.L("window.proof.codes-none"))
	}
	switch {
	case !c.Read:
		out = append(out, kit.L("window.proof.codes-unread"))
	case len(c.After) == 0:
		out = append(out, kit.L("window.proof.codes-clear"))
	default:
		out = append(out, kit.L("window.proof.codes-now", strings.Join(c.After, ", ")))
	}
	if len(c.Back) > 0 {
		out = append(out, kit.L("window.proof.codes-back", strings.Join(c.Back, ", ")))
	}
	return strings.Join(out, " ")
}
