package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram/drawing"
)

// A label that keeps clear of its neighbours in the drawing's own size does so in a window of
// any size: its letters shrink with what is drawn.
func TestLettersShrinkWithTheDrawing(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	const width, height, text = 800, 560, "111–165"
	v := kit.NewLoopView()
	v.Draw(drawing.Picture{Width: width, Height: height, Shapes: []drawing.Shape{drawing.Label{Text: text, Size: 13}}}, nil)
	drawn := canvas.NewText(text, nil)
	drawn.TextSize = 13
	for _, scale := range []float32{0.8, 0.88, 0.946, 1, 1.04, 1.3, 1.55} {
		v.Resize(fyne.NewSize(width*scale, height*scale))
		for _, o := range test.WidgetRenderer(v).Objects() {
			if got, ok := o.(*canvas.Text); ok && got.MinSize().Width > drawn.MinSize().Width*scale+1 {
				t.Errorf("at scale %v a label is %v wide, drawn %v", scale, got.MinSize().Width, drawn.MinSize().Width*scale)
			}
		}
	}
}
