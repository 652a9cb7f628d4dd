package notebook

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// row is one case in the list. It is reused for many.
type row struct {
	widget.BaseWidget
	title, vehicle, state, when *widget.Label
	shown                       cases.Summary
	day                         string
}

func newRow() *row {
	r := &row{title: widget.NewLabel(""), vehicle: kit.Small(""), state: kit.Small(""), when: kit.Small("")}
	r.title.TextStyle.Bold = true
	r.title.Truncation = fyne.TextTruncateEllipsis
	r.when.Alignment = fyne.TextAlignTrailing
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer stacks the lines.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	middle := container.New(kit.Shares{146, 66}, r.vehicle, r.when)
	return widget.NewSimpleRenderer(container.New(kit.Tight{More: 3}, r.title, middle, r.state))
}

// show writes the lines, which costs far more than to see that they stand
// already.
func (r *row) show(s cases.Summary, now time.Time) {
	on := day(s.Opened, now)
	if s == r.shown && on == r.day {
		return
	}
	r.shown, r.day = s, on
	r.title.SetText(orDash(s.Title, "No title yet"))
	r.vehicle.SetText(orDash(s.Vehicle, "vehicle not known"))
	r.when.SetText(on)
	text, ink := "open", widget.HighImportance
	if s.Cause != "" {
		text, ink = s.Cause.Name(), widget.SuccessImportance
	}
	r.state.Importance = ink
	r.state.SetText(text)
}

func orDash(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// day writes a date as short as it can still be told from others.
func day(t, now time.Time) string {
	t = t.In(now.Location())
	switch {
	case t.IsZero():
		return ""
	case t.Year() == now.Year() && t.YearDay() == now.YearDay():
		return "today"
	case t.Year() == now.Year():
		return t.Format("2 Jan")
	}
	return t.Format("Jan 2006")
}
