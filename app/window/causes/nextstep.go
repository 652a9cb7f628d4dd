package causes

import (
	view "loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// Step is what a case is about once its verdict is given, by the screen where it is done.
type Step int

// The steps after the causes.
const (
	None Step = iota
	Verdict
	Repair
	Proof
)

// nextStep is what follows a verdict, and where it is done; nothing follows where
// there is none yet.
func nextStep(c *cases.Case) (next view.Next, step Step) {
	word := ""
	switch {
	case c.Verdict.Cause == "":
		return view.Next{}, None
	case c.Verdict.Cause == cases.Healthy:
		word, step = "healthy", Verdict
	case c.HasStage(cases.AfterRepair):
		word, step = "proved", Proof
	case kit.Repaired(c):
		word, step = "proof", Proof
	case c.Verdict.ConfirmedBy == "":
		word, step = "confirm", Verdict
	default:
		word, step = "repair", Repair
	}
	return view.Next{
		Title:  kit.L("window.causes.then-" + word),
		Text:   kit.L("window.causes.then-" + word + "-text"),
		Button: kit.L("window.causes.go", screenOf(step)),
	}, step
}

func screenOf(s Step) string {
	switch s {
	case Repair:
		return kit.L("window.repair.tab")
	case Proof:
		return kit.L("window.proof.tab")
	}
	return kit.L("window.verdict.tab")
}
