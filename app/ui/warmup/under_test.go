package warmup

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// The words under a chart have the lines that they need at the chart's width, and the chart has the rest.
func TestTheChartHasWhatItsWordsLeave(t *testing.T) {
	test.NewTempApp(t)
	chart := kit.NewChartView()
	words := kit.Paragraphs(kit.Span{Text: "The break in the curve is doubtful: it may come from the driving, from the heater, or from the fan that ran too soon."})
	both := container.New(under{}, chart, words)
	for _, wide := range []float32{300, 1200, 300} {
		both.Resize(fyne.NewSize(wide, 600))
		if got := chart.Size().Height + words.MinSize().Height; got != 600 || words.Position().Y != chart.Size().Height {
			t.Errorf("%v wide: the chart ends at %v, the words begin at %v and are %v high", wide, chart.Size().Height, words.Position().Y, words.MinSize().Height)
		}
	}
	words.Hide()
	both.Layout.Layout(both.Objects, both.Size())
	if chart.Size().Height != 600 {
		t.Errorf("alone the chart is %v high", chart.Size().Height)
	}
}
