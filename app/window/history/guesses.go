package history

import (
	"fmt"
	"math"

	"loopbook/app/library"
	view "loopbook/app/ui/history"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/experience"
	"loopbook/cases/query"
	"loopbook/report/chart"
)

// guessSection holds what the program claimed against what came of it.
func guessSection(g experience.Guesses) view.Section {
	s := view.Section{Title: kit.L("window.history.guesses"), About: kit.L("window.history.no-guesses"), Wide: 110}
	if g.N == 0 {
		return s
	}
	low, high := experience.Share(g.Right, g.N)
	s.About = kit.L("window.history.guesses-text", g.Right, g.N, math.Round(100*low), math.Round(100*high))
	band := chart.Band{Name: kit.L("window.history.allowed")}
	dots := chart.Curve{Name: kit.L("window.history.right"), Kind: chart.Dots}
	for _, b := range g.Bins {
		if b.N == 0 {
			continue
		}
		l, h := experience.Share(b.Right, b.N)
		band.X, band.Low, band.High = append(band.X, 100*b.MeanP), append(band.Low, 100*l), append(band.High, 100*h)
		dots.X, dots.Y = append(dots.X, 100*b.MeanP), append(dots.Y, 100*float64(b.Right)/float64(b.N))
		s.Lines = append(s.Lines, binLine(b))
	}
	s.Chart = chart.Lines{
		X: kit.L("window.history.claimed"), Y: kit.L("window.history.was-right"), Bands: []chart.Band{band},
		Curves: []chart.Curve{{Name: kit.L("window.history.just"), X: []float64{0, 100}, Y: []float64{0, 100}, Kind: chart.Second}, dots},
	}
	return s
}

func binLine(b experience.Bin) view.Line {
	l := view.Line{Name: view.Part{Text: fmt.Sprintf("%.0f–%.0f %%", 100*b.Low, 100*b.High), Search: library.SearchFor(b.Where)}}
	right := cases.Condition{Field: cases.ByGuess, Words: []string{cases.GuessRight}}
	l.Parts = []view.Part{{Text: kit.L("window.history.bin", b.Right, b.N, diagnosis.Chance(b.MeanP)), Search: library.SearchFor(append(b.Where[:1:1], right))}}
	switch {
	case b.N < experience.Few:
		l.Note = kit.L("window.history.few")
	case !b.Fits() && b.MeanP > float64(b.Right)/float64(b.N):
		l.Note = kit.L("window.history.too-sure")
	case !b.Fits():
		l.Note = kit.L("window.history.too-modest")
	}
	return l
}

func wrongSection(g experience.Guesses) view.Section {
	s := view.Section{Title: kit.L("window.history.wrong"), About: kit.L("window.history.wrong-text"), Lines: wrongLines(g)}
	if len(s.Lines) == 0 {
		s.About = kit.L("window.history.none-wrong")
	}
	return s
}

func wrongLines(g experience.Guesses) []view.Line {
	var out []view.Line
	for _, x := range g.Wrong[:min(len(g.Wrong), mostLines)] {
		out = append(out, view.Line{Name: view.Part{Text: kit.L("window.history.mistook", x.First.Name(), x.Truth.Name(), x.N), Search: query.Write(x.Where)}})
	}
	return out
}

func minutesSection(list []experience.Time) view.Section {
	s := view.Section{Title: kit.L("window.history.minutes"), About: kit.L("window.history.no-minutes"), Wide: 230}
	if len(list) == 0 {
		return s
	}
	s.About = kit.L("window.history.minutes-text", math.Round(list[0].Half), math.Round(list[0].Quarter), math.Round(list[0].Three), list[0].N)
	if list[0].N == 1 {
		s.About = kit.L("window.history.minutes-one", math.Round(list[0].Half))
	}
	bars := chart.Bars{Y: kit.L("window.history.minutes-axis"), Parts: []chart.Part{{Name: kit.L("window.history.half")}}}
	for _, m := range list[1:min(len(list), mostLines)] {
		bars.Names = append(bars.Names, m.Cause.Name())
		bars.Parts[0].Values = append(bars.Parts[0].Values, math.Round(m.Half))
		where := cases.Condition{Field: cases.ByCause, Words: []string{string(m.Cause)}}
		l := view.Line{
			Name:  view.Part{Text: kit.L("window.history.group", m.Cause.Name(), m.N), Search: library.SearchFor([]cases.Condition{where})},
			Parts: []view.Part{{Text: kit.L("window.history.took", math.Round(m.Half), math.Round(m.Quarter), math.Round(m.Three))}},
		}
		if m.N == 1 {
			l.Parts[0].Text = kit.L("window.history.took-one", math.Round(m.Half))
		}
		if m.N < experience.Few {
			l.Note = kit.L("window.history.few")
		}
		s.Lines = append(s.Lines, l)
	}
	s.Chart, s.Over = bars, kit.Capital(kit.L("window.history.half"))
	return s
}
