package library

import (
	"slices"
	"strings"
	"unicode"

	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// tells reports whether a case's title has a word of what was at fault, by the cause's name in any language or by a part that
// was renewed, that the customer's own complaint hasn't. One that has it by chance tells too: a plain title costs nobody anything.
func tells(c *cases.Case) bool {
	if c.Verdict.Cause == "" {
		return false
	}
	var answer, complaint []string
	for _, l := range say.Langs() {
		by, err := say.In(l, units.Metric())
		if err != nil {
			continue
		}
		answer = append(answer, wordsOf(by.Say(c.Verdict.Cause.Text()))...)
		for _, s := range c.Complaint.Symptoms {
			complaint = append(complaint, wordsOf(by.Say(s.Text()))...)
		}
	}
	for _, p := range c.Repair.Parts {
		answer = append(answer, wordsOf(p.Name)...)
	}
	return slices.ContainsFunc(wordsOf(c.Title), func(w string) bool {
		begins := func(with string) bool { return strings.HasPrefix(w, with) } // thermostats, Thermostatgehäuse
		return slices.ContainsFunc(answer, begins) && !slices.ContainsFunc(complaint, begins)
	})
}

// wordsOf are a text's words that mean something by themselves.
func wordsOf(text string) []string {
	const least = 3 // letters, as fan, cap and gas have
	list := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) })
	return slices.DeleteFunc(list, func(w string) bool {
		return len([]rune(w)) < least || slices.Contains(strings.Fields("the and not new der die das und nicht los las por del que"), w)
	})
}

// plainTitle is what is known of a case before anything is measured: what the customer feels, and which codes are stored.
func plainTitle(c *cases.Case) string {
	var all []string
	for _, s := range c.Complaint.Symptoms {
		all = append(all, s.Name())
	}
	for _, code := range c.Codes {
		if code.Code != "" {
			all = append(all, code.Code)
		}
	}
	if len(all) == 0 {
		return say.English().Of("window.practice.which")
	}
	return say.English().Fill("{0^}", strings.Join(all, ", "))
}
