// Package complaint is the screen for what comes into the bay: the vehicle,
// its loop, what the customer feels, and the codes.
package complaint

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// View is the screen.
type View struct {
	form    *kit.Form
	codes   *codes
	words   Words
	coolant *widget.Label
	caution *kit.Prose    // in the chosen units
	odd     *widget.Label // asks after a capacity that no car has
	number  *widget.Label // warns of the vehicle's number
	content fyne.CanvasObject
}

// Words tell what the screen itself doesn't know.
type Words struct {
	Code    func(code string) string           // what a trouble code means
	IsCode  func(code string) bool             // whether it has the form of one
	Coolant func(cases.Case, units.Set) string // when the filling freezes and boils
	VIN     func(cases.Vehicle) string         // what is odd about the vehicle's number; "": nothing
}

// New makes the screen; edit changes the case.
func New(edit func(what string, change func(*cases.Case)), words Words) *View {
	f := kit.NewForm(edit)
	v := &View{form: f, words: words, coolant: kit.Small(""), caution: kit.Paragraphs(), odd: warning(), number: warning(), codes: newCodes(edit, words)}
	left := container.NewVBox(
		kit.Section(kit.L("window.complaint.feels"),
			f.Text(kit.L("window.complaint.title"), kit.L("window.complaint.title-hint"), func(c *cases.Case) *string { return &c.Title }),
			f.Area(kit.L("window.complaint.words"), kit.L("window.complaint.words-hint"), 3, func(c *cases.Case) *string { return &c.Complaint.Text }),
		),
		kit.Section(kit.L("window.complaint.codes"), v.codes.content),
		kit.Section(kit.L("window.complaint.symptoms"),
			kit.Ticks(f, kit.L("window.complaint.symptoms"), cases.Words[cases.Symptom](), cases.Symptom.Name, func(c *cases.Case) *[]cases.Symptom { return &c.Complaint.Symptoms }),
			oilCaution(f),
		),
	)
	right := container.NewVBox(vehicle(f, v.number), loop(f, v.odd, v.coolant, kit.CardOf("act", kit.L("window.complaint.caution"), v.caution)), site(f), tags(f))
	f.Chain(f.Last) // from the last one Enter goes nowhere: what is next is Undo
	v.content = container.NewVScroll(container.NewPadded(container.New(kit.Shares{432, 508}, container.NewPadded(left), container.NewPadded(right))))
	v.codes.grown = v.content.Refresh
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints a case.
func (v *View) Show(c cases.Case, u units.Set) {
	v.form.Show(c, u)
	v.codes.show(c, u)
	v.coolant.SetText(v.words.Coolant(c, u))
	kit.SetParagraphs(v.caution, caution(u))
	v.odd.SetText(capacityOdd(u))
	v.number.SetText(v.words.VIN(c.Vehicle))
	v.number.Hidden = v.number.Text == ""
}

// First is the field where a new case begins: its title.
func (v *View) First() fyne.Focusable { return v.form.First() }

// NewCode is where the next code is written.
func (v *View) NewCode() fyne.Focusable { return v.codes.next }

// Leave keeps what is being typed.
func (v *View) Leave() {
	v.form.Leave()
	v.codes.leave()
}

func vehicle(f *kit.Form, number fyne.CanvasObject) fyne.CanvasObject {
	return kit.Section(kit.L("window.complaint.vehicle"),
		kit.Explained(container.NewGridWithColumns(3,
			f.Text(kit.L("window.complaint.make"), "", func(c *cases.Case) *string { return &c.Vehicle.Make }),
			f.Text(kit.L("window.complaint.model"), "", func(c *cases.Case) *string { return &c.Vehicle.Model }),
			f.Quantity(func(units.Set) string { return kit.L("window.complaint.year") }, readYear, writeYear),
			f.Text(kit.L("window.complaint.engine"), kit.L("window.complaint.engine-hint"), func(c *cases.Case) *string { return &c.Vehicle.Engine }),
			kit.Pick(f, kit.L("window.complaint.motive"), cases.Words[cases.Motive](), cases.Motive.Name, func(c *cases.Case) *cases.Motive { return &c.Vehicle.Motive }),
			f.Dist(kit.L("window.complaint.odometer"), func(c *cases.Case) **float64 { return &c.Vehicle.OdometerKm }),
			f.Text(kit.L("window.complaint.vin"), "", func(c *cases.Case) *string { return &c.Vehicle.VIN }),
			f.Text(kit.L("window.complaint.customer"), "", func(c *cases.Case) *string { return &c.Customer.Name }),
			f.Text(kit.L("window.complaint.contact"), "", func(c *cases.Case) *string { return &c.Customer.Contact }),
		)),
		number,
		voltageCaution(f),
	)
}

// voltageCaution stands under the vehicle where it is one with high voltage.
func voltageCaution(f *kit.Form) fyne.CanvasObject {
	card := kit.Card("act", kit.L("window.complaint.high-voltage"), kit.Span{Text: kit.L("window.complaint.high-voltage-text"), Small: true})
	return shownFor(f, card, func(c cases.Case) bool { return c.Vehicle.Motive.HighVoltage() })
}

// oilCaution stands under the symptoms where the oil is one, as long as that counts: whoever ticks it may be about to start the engine.
func oilCaution(f *kit.Form) fyne.CanvasObject {
	card := kit.Card("act", kit.SeverityWord(evidence.Act), kit.Span{Text: kit.L("flag.oil-milky"), Small: true})
	return shownFor(f, card, func(c cases.Case) bool { return evidence.MilkyOil(&c) })
}

// shownFor shows a card for the cases that it is for.
func shownFor(f *kit.Form, card fyne.CanvasObject, is func(cases.Case) bool) fyne.CanvasObject {
	f.Bound(func(c cases.Case) { kit.SetVisible(is(c), card) })
	return card
}

func loop(f *kit.Form, odd, coolant, caution fyne.CanvasObject) fyne.CanvasObject {
	return kit.Section(kit.L("window.complaint.loop"),
		kit.Pick(f, kit.L("window.complaint.layout"), kit.LayoutIDs(), kit.LayoutTitle, func(c *cases.Case) *string { return &c.Loop.Layout }),
		kit.Explained(container.NewGridWithColumns(3,
			f.CoolantTemp(kit.L("window.complaint.opens"), func(c *cases.Case) **diagram.Celsius { return &c.Loop.ThermostatOpensC }),
			f.CoolantTemp(kit.L("window.complaint.full"), func(c *cases.Case) **diagram.Celsius { return &c.Loop.ThermostatFullC }),
			f.CapMark(kit.L("window.complaint.cap"), func(c *cases.Case) **diagram.KPa { return &c.Loop.CapKPa }),
			kit.Pick(f, kit.L("window.complaint.coolant"), cases.Words[cases.Base](), cases.Base.Name, func(c *cases.Case) *cases.Base { return &c.Loop.Coolant.Base }),
			kit.Number(f, kit.L("window.complaint.strength"), units.Number, 0, 100, func(c *cases.Case) **float64 { return &c.Loop.Coolant.VolumePercent }),
			f.Volume(kit.L("window.complaint.capacity"), func(c *cases.Case) **float64 { return &c.Loop.CapacityL }),
			kit.Pick(f, kit.L("window.complaint.fan"), cases.Words[cases.FanKind](), cases.FanKind.Name, func(c *cases.Case) *cases.FanKind { return &c.Loop.Fan }),
		)),
		rating(f), capacity(f, odd), coolant, caution,
	)
}

// rating warns of a thermostat that would be fully open before it opens: one of
// the two was mistyped.
func rating(f *kit.Form) fyne.CanvasObject {
	odd := warning()
	odd.SetText(kit.L("window.complaint.full-below"))
	return shownFor(f, odd, func(c cases.Case) bool {
		opens, full := c.Loop.ThermostatOpensC, c.Loop.ThermostatFullC
		return opens != nil && full != nil && *full <= *opens
	})
}

// What a car's loop holds at the least and at the most, in litres (from memory).
const leastCapacityL, mostCapacityL = 2, 30

// capacity asks after what is more, or less, than a car holds: a point is easily missed.
func capacity(f *kit.Form, odd fyne.CanvasObject) fyne.CanvasObject {
	return shownFor(f, odd, func(c cases.Case) bool {
		l := c.Loop.CapacityL
		return l != nil && (*l < leastCapacityL || *l > mostCapacityL)
	})
}

func capacityOdd(u units.Set) string {
	return say.English().With(u).Of("window.complaint.capacity-odd", diagram.Litre(leastCapacityL), diagram.Litre(mostCapacityL))
}

func warning() *widget.Label {
	l := widget.NewLabel("")
	l.Importance, l.Wrapping, l.SizeName = widget.WarningImportance, fyne.TextWrapWord, theme.SizeNameCaptionText
	return l
}

func caution(u units.Set) kit.Span {
	return kit.Span{Text: say.English().With(u).Of("window.complaint.caution-text", cases.OpenBelowC), Small: true}
}

func site(f *kit.Form) fyne.CanvasObject {
	return kit.Section(kit.L("window.complaint.site"),
		kit.Explained(container.NewGridWithColumns(3,
			f.Temp(kit.L("window.complaint.outside"), func(c *cases.Case) **diagram.Celsius { return &c.Site.AmbientC }),
			f.Height(kit.L("window.complaint.altitude"), func(c *cases.Case) **diagram.Metre { return &c.Site.AltitudeM }),
		)),
	)
}

func tags(f *kit.Form) fyne.CanvasObject {
	return f.Quantity(
		func(units.Set) string { return kit.L("window.complaint.tags") },
		func(c *cases.Case, _ units.Set) string { return strings.Join(c.Tags, ", ") },
		func(c *cases.Case, text string, _ units.Set) error {
			c.Tags = nil
			for _, t := range strings.Split(text, ",") {
				if t = strings.TrimSpace(t); t != "" {
					c.Tags = append(c.Tags, t)
				}
			}
			return nil
		},
	)
}

func readYear(c *cases.Case, _ units.Set) string {
	if c.Vehicle.Year == nil {
		return ""
	}
	return strconv.Itoa(*c.Vehicle.Year)
}

func writeYear(c *cases.Case, text string, _ units.Set) error {
	if text == "" {
		c.Vehicle.Year = nil
		return nil
	}
	y, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil || y < 1885 || y > 2100 {
		return errYear
	}
	c.Vehicle.Year = &y
	return nil
}
