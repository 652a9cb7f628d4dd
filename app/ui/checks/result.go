package checks

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
)

// showResult tells how the check came out, in words first.
func (s *sheet) showResult(r Result) {
	s.result.RemoveAll()
	begun := s.v.place() < len(s.v.c.Tests)
	kit.SetVisible(begun, s.result) // or what stands under it begins lower than the form
	if !begun {
		return
	}
	var body, reasons []kit.Span
	for _, told := range r.Told {
		body = append(body, kit.Span{Text: told.Text})
		for _, why := range told.Because {
			reasons = append(reasons, kit.Span{Text: kit.Capital(why) + ".", Small: true})
		}
	}
	level := severity(r)
	if r.Says == "" && len(r.Told) == 0 {
		level = "note"
	}
	s.result.Add(outcome(level, headline(r), body))
	if len(r.Sums) > 0 {
		lines := container.New(kit.Tight{})
		for _, sum := range r.Sums {
			lines.Add(sumLine(sum))
		}
		s.result.Add(lines)
	}
	if len(reasons) > 0 {
		s.result.Add(kit.Paragraphs(reasons...))
	}
}

// outcome is a card; with nothing to tell it is its head alone.
func outcome(level, word string, body []kit.Span) fyne.CanvasObject {
	if len(body) > 0 {
		return kit.Card(level, word, body...)
	}
	head := kit.Paragraphs(kit.Span{Text: word, Bold: true})
	fill, edge := kit.Grounds(level)
	return kit.On(kit.NewGround(fill, edge, 6), container.NewBorder(nil, nil, container.NewCenter(kit.Sign(level)), nil, head))
}

func sumLine(sum [2]string) fyne.CanvasObject {
	return container.New(kit.Shares{150, 140}, kit.Paragraphs(kit.Span{Text: sum[0]}), kit.Paragraphs(kit.Span{Text: sum[1], Bold: true}))
}
