// Package whatif is the screen of a simulated loop that a person drives: the
// weather, the engine, the road and a fault by sliders, and the loop's drawing
// with its temperatures moving.
package whatif

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/drawing"
	"loopbook/diagram/units"
)

// Settings are what the sliders stand at.
type Settings struct {
	AmbientC float64
	RPM      float64
	SpeedKmh float64
	Load     float64 // times the heat of a level road
	Blower   float64 // of the heater, 0 to 1
	Cause    cases.Cause
	Severity float64 // 0 to 1
}

// Idle are the settings of a healthy car that idles in mild weather.
func Idle() Settings {
	return Settings{AmbientC: float64(evidence.UsualAmbientC), RPM: idleRPM, Load: 1, Blower: 1, Cause: cases.Healthy, Severity: 0.7}
}

const idleRPM, raisedRPM = 800, 2500

// Shown is the loop at a moment, ready to be read.
type Shown struct {
	Picture drawing.Picture
	Facts   []Fact
	Boils   bool
}

// Fact is a value with its name.
type Fact struct{ Name, Value string }

// View is the screen. Its callbacks must all be set before it is used.
type View struct {
	OnChange func(Settings)
	OnPause  func(bool)
	OnCold   func() // starts from cold
	OnWarm   func() // jumps to where the car comes to rest
	OnCase   func() // makes a case of a car with this fault in this weather

	set     Settings
	units   units.Set
	sliders []*slider
	cause   *kit.Choice[cases.Cause]
	pause   *kit.Button
	paused  bool
	facts   *fyne.Container
	boils   fyne.CanvasObject
	loop    *kit.Picture
	content fyne.CanvasObject
}

// New makes the screen.
func New() *View {
	v := &View{set: Idle(), units: units.Metric(), loop: kit.NewVignette(drawing.Picture{}), facts: container.NewGridWithRows(1)}
	v.boils = kit.Card("act", kit.L("window.whatif.boils"))
	v.boils.Hide()
	note := kit.Paragraphs(kit.Span{
		Text:  kit.L("window.whatif.note"),
		Small: true, Color: theme.ColorNamePlaceHolder,
	})
	left := container.NewVScroll(container.NewPadded(container.NewVBox(v.controls(), v.buttons(), note))) // the bar stands beside them
	right := container.NewBorder(container.NewVBox(v.facts, v.boils), nil, nil, nil, v.loop)
	v.content = kit.Framed(nil, nil, kit.Wide(270, left), nil, kit.On(kit.NewGround(drawing.Card, drawing.Rule, 6), right))
	v.Put(Idle(), cases.Words[cases.Cause](), units.Metric())
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// First is the first of the sliders.
func (v *View) First() fyne.Focusable { return v.sliders[0].bar }

// Put sets the sliders without telling, and lets one of those causes be chosen.
func (v *View) Put(s Settings, causes []cases.Cause, u units.Set) {
	v.set, v.units = s, u
	for _, one := range v.sliders {
		one.put()
	}
	v.cause.Offer(causes, cases.Cause.Name)
	v.cause.Put(s.Cause)
	v.enable()
}

// Show paints the loop as it is now. Call it on the Fyne goroutine.
func (v *View) Show(s Shown) {
	v.loop.Draw(s.Picture)
	if len(v.facts.Objects) != len(s.Facts) {
		v.facts.RemoveAll()
		for range s.Facts {
			value := widget.NewLabel("")
			value.TextStyle.Bold, value.Truncation = true, fyne.TextTruncateEllipsis
			v.facts.Add(container.New(kit.Tight{More: 4}, kit.Small(""), value))
		}
	}
	for i, f := range s.Facts {
		pair := v.facts.Objects[i].(*fyne.Container).Objects
		write(pair[0].(*widget.Label), f.Name)
		write(pair[1].(*widget.Label), f.Value)
	}
	if s.Boils != v.boils.Visible() {
		if v.boils.Hide(); s.Boils {
			v.boils.Show()
		}
	}
}

// write spares the painting of a text that stands there already.
func write(l *widget.Label, text string) {
	if l.Text != text {
		l.SetText(text)
	}
}

func (v *View) buttons() fyne.CanvasObject {
	v.pause = kit.NewButtonWithIcon(kit.L("window.whatif.pause"), theme.MediaPauseIcon(), func() {
		v.SetPaused(!v.paused)
		v.OnPause(v.paused)
	})
	cold := kit.NewButton(kit.L("window.whatif.cold"), func() { v.OnCold() })
	warm := kit.NewButton(kit.L("window.whatif.warm"), func() { v.OnWarm() })
	keep := kit.NewButtonWithIcon(kit.L("window.whatif.case"), theme.DocumentCreateIcon(), func() { v.OnCase() })
	told := kit.Aside(kit.L("window.whatif.case-note"))
	return container.NewVBox(v.pause, container.NewGridWithColumns(2, cold, warm), keep, told)
}

// SetPaused shows whether the car stands still in time.
func (v *View) SetPaused(on bool) {
	v.paused = on
	v.pause.SetText(kit.L("window.whatif.pause"))
	v.pause.SetIcon(theme.MediaPauseIcon())
	if on {
		v.pause.SetText(kit.L("window.whatif.go-on"))
		v.pause.SetIcon(theme.MediaPlayIcon())
	}
}
