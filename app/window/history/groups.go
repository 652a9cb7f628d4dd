package history

import (
	"math"
	"slices"
	"strconv"
	"time"

	"loopbook/app/library"
	view "loopbook/app/ui/history"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/experience"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

// mostLines of a table are shown; the command prints all.
const mostLines = 12

func dataOf(h experience.History, lines map[int64]cases.Summary, u units.Set) view.Data {
	d := view.Data{Head: kit.L("window.history.head", h.Cases, h.Closed)}
	if h.Closed == 0 {
		d.Left = []view.Section{{Title: kit.L("window.history.empty"), About: kit.L("window.history.empty-text")}}
		return d
	}
	same := func(word string) string { return word }
	d.Left = []view.Section{
		{Title: kit.L("window.history.codes"), About: kit.L("window.history.codes-text"), Lines: groupLines(h.Codes, same), Wide: 110},
		{Title: kit.L("window.history.engines"), Lines: groupLines(h.Engines, same), Wide: 150},
		{Title: kit.L("window.history.km"), Chart: groupBars(h.Odometer, h.Causes, bandName(u)), Lines: groupLines(h.Odometer, bandName(u)), Wide: 165},
		{Title: kit.L("window.history.back-title"), About: kit.L("window.history.back-text", len(h.Returned)), Lines: returnLines(h, lines)},
	}
	for i, none := range []string{"window.history.no-codes", "window.history.no-engines", "window.history.no-km"} {
		if s := &d.Left[i]; len(s.Lines) == 0 {
			s.About = kit.L(none)
		}
	}
	d.Right = []view.Section{
		guessSection(h.Guesses),
		wrongSection(h.Guesses),
		minutesSection(h.Minutes),
		{Title: kit.L("window.history.months"), Chart: groupBars(h.Months, h.Causes, monthName), Lines: groupLines(h.Months, monthName), Wide: 110},
	}
	for _, side := range [][]view.Section{d.Left, d.Right} {
		for i := range side {
			side[i].Note = noteOfAll(side[i].Lines)
		}
	}
	return d
}

// noteOfAll says once of several lines what each of them would: that they tell too little.
func noteOfAll(lines []view.Line) string {
	few := kit.L("window.history.few")
	if len(lines) < 2 || slices.ContainsFunc(lines, func(l view.Line) bool { return l.Note != few }) {
		return ""
	}
	return kit.L("window.history.all-few")
}

func groupLines(groups []experience.Group, name func(string) string) []view.Line {
	var out []view.Line
	for _, g := range groups[:min(len(groups), mostLines)] {
		l := view.Line{Name: view.Part{Text: kit.L("window.history.group", name(g.Word), g.N), Search: library.SearchFor(g.Where)}}
		l.Parts = causeParts(g)
		if g.N < experience.Few {
			l.Note = kit.L("window.history.few")
		}
		out = append(out, l)
	}
	return out
}

// causeParts are the group's most frequent causes and, so that the counts add up, the rest.
func causeParts(g experience.Group) []view.Part {
	var out []view.Part
	rest, others := g.N, g.Where[:len(g.Where):len(g.Where)]
	for _, c := range g.Causes[:min(len(g.Causes), 3)] {
		is := cases.Condition{Field: cases.ByCause, Words: []string{string(c.Cause)}}
		where := append(g.Where[:len(g.Where):len(g.Where)], is)
		out = append(out, view.Part{Text: shareWords(c.Cause.Name(), c.N, g.N), Search: library.SearchFor(where)})
		is.Not = true
		rest, others = rest-c.N, append(others, is)
	}
	if rest > 0 {
		out = append(out, view.Part{Text: kit.L("window.history.rest", rest), Search: library.SearchFor(others)})
	}
	return out
}

// shareWords are how many of a group are one thing, and between which shares the truth lies.
func shareWords(name string, k, n int) string {
	low, high := experience.Share(k, n)
	return kit.L("window.history.share", name, k, math.Round(100*low), math.Round(100*high))
}

// bandOf is how wide a band of the odometer is, in the unit that it is read in.
func bandOf(u units.Set) float64 {
	if u.Distance == units.Miles {
		return 30_000
	}
	return experience.BandKm
}

func bandKm(u units.Set) float64 { return bandOf(u) / u.FromKm(1) }

// bandName names a band by its round ends.
func bandName(u units.Set) func(string) string {
	return func(low string) string {
		km, _ := strconv.Atoi(low) // written by the history itself
		from := math.Round(float64(km)/bandKm(u)) * bandOf(u)
		return kit.L("window.history.band", units.Thousands(from), units.Thousands(from+bandOf(u))+" "+u.DistanceUnit())
	}
}

func monthName(word string) string {
	m, _ := strconv.Atoi(word)
	return time.Month(m).String()[:3]
}

// groupBars are a group's cases by the three most frequent causes and the rest.
func groupBars(groups []experience.Group, causes []experience.CauseCount, name func(string) string) chart.Chart {
	if len(groups) == 0 {
		return nil
	}
	const main = 3
	b := chart.Bars{Y: kit.L("window.history.cases")}
	for _, c := range causes[:min(len(causes), main)] {
		b.Parts = append(b.Parts, chart.Part{Name: c.Cause.Name()})
	}
	b.Parts = append(b.Parts, chart.Part{Name: kit.L("window.history.others")})
	for _, g := range groups {
		b.Names = append(b.Names, name(g.Word))
		rest := g.N
		for i, c := range causes[:min(len(causes), main)] {
			n := 0
			for _, x := range g.Causes {
				if x.Cause == c.Cause {
					n = x.N
				}
			}
			b.Parts[i].Values = append(b.Parts[i].Values, float64(n))
			rest -= n
		}
		last := len(b.Parts) - 1
		b.Parts[last].Values = append(b.Parts[last].Values, float64(rest))
	}
	return b
}

func returnLines(h experience.History, lines map[int64]cases.Summary) []view.Line {
	var out []view.Line
	for _, r := range h.Returned[:min(len(h.Returned), mostLines)] {
		a, b := lines[r.First], lines[r.Second]
		again := kit.L("window.history.still-open")
		if r.Again != "" {
			again = r.Again.Name()
		}
		out = append(out, view.Line{
			Name: view.Part{Text: kit.L("window.history.days", r.Days, a.Vehicle)},
			Parts: []view.Part{
				{Text: kit.L("window.history.first", r.Cause.Name()), Case: a.ID},
				{Text: kit.L("window.history.then", again), Case: b.ID},
			},
		})
	}
	return out
}
