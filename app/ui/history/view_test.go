package history

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/report/chart"
)

func links(o fyne.CanvasObject) (out []*kit.Link) {
	switch x := o.(type) {
	case *kit.Link:
		out = append(out, x)
	case *container.Scroll:
		out = links(x.Content)
	case *fyne.Container:
		for _, child := range x.Objects {
			out = append(out, links(child)...)
		}
	}
	return out
}

func TestEachNumberLeadsToItsCases(t *testing.T) {
	test.NewTempApp(t)
	v := New(func(chart.Chart, string, string) {}, func() {})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1000, 700))
	var searched, opened string
	v.OnSearch, v.OnOpen = func(s string) { searched = s }, func(id string) { opened = id }
	v.Show(Data{Head: "3 cases", Left: []Section{{
		Title: "By code", Wide: 90, Chart: chart.Bars{Names: []string{"a"}, Parts: []chart.Part{{Values: []float64{1}}}},
		Lines: []Line{{Name: Part{Text: "P0128 · 3", Search: "code:P0128"}, Parts: []Part{{Text: "pump 2", Search: "code:P0128 cause:pump-weak"}, {Text: "case", Case: "X"}, {Text: "plain"}}}},
	}}})
	tapped := 0
	for _, b := range links(v.Content()) {
		switch b.Text {
		case "pump 2", "case":
			b.OnTapped()
			tapped++
		}
	}
	if tapped != 2 || searched != "code:P0128 cause:pump-weak" || opened != "X" {
		t.Errorf("tapped %d, searched %q, opened %q", tapped, searched, opened)
	}
}
