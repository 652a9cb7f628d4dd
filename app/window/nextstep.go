package window

import (
	"loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// nextStep is what follows a verdict, and the tab where it is done; nothing follows
// where there is none yet.
func nextStep(c *cases.Case) (next causes.Next, tab int) {
	word := ""
	switch {
	case c.Verdict.Cause == "":
		return causes.Next{}, causesTab
	case c.Verdict.Cause == cases.Healthy:
		word, tab = "healthy", verdictTab
	case kit.Repaired(c):
		word, tab = "proof", proofTab
	case c.Verdict.ConfirmedBy == "":
		word, tab = "confirm", verdictTab
	default:
		word, tab = "repair", repairTab
	}
	return causes.Next{
		Title:  kit.L("window.causes.then-" + word),
		Text:   kit.L("window.causes.then-" + word + "-text"),
		Button: kit.L("window.causes.go", tabName(tab)),
	}, tab
}

func tabName(tab int) string {
	switch tab {
	case repairTab:
		return kit.L("window.repair.tab")
	case proofTab:
		return kit.L("window.proof.tab")
	}
	return kit.L("window.verdict.tab")
}
