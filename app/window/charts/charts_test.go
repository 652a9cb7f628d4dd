package charts

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/report/chart"
)

// saved is what is said as a chart is saved; it is closed again.
func saved(m *benchtest.Made, c chart.Chart, name, kind string) string {
	New(m.Bench).Save(c, name, kind)
	over := m.Window.Canvas().Overlays()
	defer over.Remove(over.Top())
	return kittest.Texts(over.Top().(*widget.PopUp).Content)
}

// Every plot is written as a picture and as vectors, under the case's title.
func TestPlotsAreSaved(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	m := benchtest.New(t)
	m.OpenDemo(t, "Cold cabin on frosty mornings, P0128")
	lines := chart.Lines{X: "minutes", Y: "°C", Curves: []chart.Curve{{X: []float64{0, 1}, Y: []float64{20, 30}}}}
	for kind, begins := range map[string]string{"png": "\x89PNG", "svg": "<?xml"} {
		said := saved(m, lines, "heat: map", kind)
		found, err := filepath.Glob(filepath.Join(home, "Documents", "Loopbook", "*heat- map."+kind))
		if err != nil || len(found) != 1 || !strings.Contains(said, found[0]) {
			t.Fatalf("%s: %q, %v", kind, said, found)
		}
		if text, err := os.ReadFile(found[0]); err != nil || !strings.HasPrefix(string(text), begins) {
			t.Errorf("%s begins with %.8q, %v", kind, text, err)
		}
	}
	if said := saved(m, chart.Lines{}, "none", "svg"); !strings.Contains(said, chart.ErrEmpty.Error()) {
		t.Errorf("nothing to draw: %q", said)
	}
}
