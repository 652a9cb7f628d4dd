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
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// View is the screen.
type View struct {
	form    *kit.Form
	codes   *codes
	say     Words
	coolant *widget.Label
	number  *widget.Label // warns of the vehicle's number
	content fyne.CanvasObject
}

// Words tell what the screen itself doesn't know.
type Words struct {
	Code    func(code string) string           // what a trouble code means
	Coolant func(cases.Case, units.Set) string // when the filling freezes and boils
	VIN     func(cases.Vehicle) string         // what is odd about the vehicle's number; "": nothing
}

// New makes the screen; edit changes the case.
func New(edit func(what string, change func(*cases.Case)), say Words) *View {
	f := kit.NewForm(edit)
	v := &View{form: f, say: say, coolant: kit.Small(""), number: widget.NewLabel(""), codes: newCodes(edit, say.Code)}
	v.number.Importance, v.number.Wrapping = widget.WarningImportance, fyne.TextWrapWord
	v.number.SizeName = theme.SizeNameCaptionText
	left := container.NewVBox(
		kit.Section("What the customer feels",
			f.Text("Title", "the complaint in a few words", func(c *cases.Case) *string { return &c.Title }),
			f.Area("In their words", "since when, when does it happen, what was done before", 3, func(c *cases.Case) *string { return &c.Complaint.Text }),
		),
		kit.Section("Trouble codes", v.codes.content),
		kit.Section("Symptoms",
			kit.Ticks(f, "Symptoms", cases.Words[cases.Symptom](), cases.Symptom.Name, func(c *cases.Case) *[]cases.Symptom { return &c.Complaint.Symptoms }),
		),
	)
	right := container.NewVBox(vehicle(f, v.number), loop(f, v.coolant), site(f), tags(f))
	v.content = container.NewVScroll(container.NewPadded(container.New(kit.Shares{460, 540}, left, container.NewPadded(right))))
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show paints a case.
func (v *View) Show(c cases.Case, u units.Set) {
	v.form.Show(c, u)
	v.codes.show(c, u)
	v.coolant.SetText(v.say.Coolant(c, u))
	v.number.SetText(v.say.VIN(c.Vehicle))
	v.number.Hidden = v.number.Text == ""
}

// First is the field where a new case begins: its title.
func (v *View) First() fyne.Focusable { return v.form.First() }

// Leave keeps what is being typed.
func (v *View) Leave() {
	v.form.Leave()
	v.codes.leave()
}

func vehicle(f *kit.Form, number fyne.CanvasObject) fyne.CanvasObject {
	return kit.Section("Vehicle",
		container.NewGridWithColumns(3,
			f.Text("Make", "", func(c *cases.Case) *string { return &c.Vehicle.Make }),
			f.Text("Model", "", func(c *cases.Case) *string { return &c.Vehicle.Model }),
			f.Quantity(func(units.Set) string { return "Year" }, readYear, writeYear),
			f.Text("Engine", "1.6, code", func(c *cases.Case) *string { return &c.Vehicle.Engine }),
			kit.Pick(f, "Driven by", cases.Words[cases.Motive](), cases.Motive.Name, func(c *cases.Case) *cases.Motive { return &c.Vehicle.Motive }),
			f.Dist("Odometer", func(c *cases.Case) **float64 { return &c.Vehicle.OdometerKm }),
			f.Text("VIN", "", func(c *cases.Case) *string { return &c.Vehicle.VIN }),
			f.Text("Customer", "", func(c *cases.Case) *string { return &c.Customer.Name }),
			f.Text("Contact", "", func(c *cases.Case) *string { return &c.Customer.Contact }),
		),
		number,
		hybridCaution(f),
	)
}

// hybridCaution stands under the vehicle where it is one with high voltage.
func hybridCaution(f *kit.Form) fyne.CanvasObject {
	card := kit.Card("act", "High voltage", kit.Span{Text: "Only trained people may work on it. Its battery or inverter loop may share the radiator pack, and pumps and fans may start with the ignition off.", Small: true})
	f.Bound(func(c cases.Case) {
		if c.Vehicle.Motive == cases.Hybrid {
			card.Show()
		} else {
			card.Hide()
		}
	})
	return card
}

func loop(f *kit.Form, coolant fyne.CanvasObject) fyne.CanvasObject {
	return kit.Section("Cooling loop, as fitted",
		kit.Pick(f, "Layout", kit.LayoutIDs(), kit.LayoutTitle, func(c *cases.Case) *string { return &c.Loop.Layout }),
		container.NewGridWithColumns(3,
			f.Temp("Opens at", func(c *cases.Case) **diagram.Celsius { return &c.Loop.ThermostatOpensC }),
			f.Temp("Full open at", func(c *cases.Case) **diagram.Celsius { return &c.Loop.ThermostatFullC }),
			f.Press("Cap", func(c *cases.Case) **diagram.KPa { return &c.Loop.CapKPa }),
			kit.Pick(f, "Coolant", cases.Words[cases.Base](), cases.Base.Name, func(c *cases.Case) *cases.Base { return &c.Loop.Coolant.Base }),
			kit.Number(f, "Strength, volume %", 0, 100, func(c *cases.Case) **float64 { return &c.Loop.Coolant.VolumePercent }),
			kit.Number(f, "Capacity, litres", 0, 1000, func(c *cases.Case) **float64 { return &c.Loop.CapacityL }),
			kit.Pick(f, "Fan", cases.Words[cases.FanKind](), cases.FanKind.Name, func(c *cases.Case) *cases.FanKind { return &c.Loop.Fan }),
		),
		coolant,
		kit.Card("act", "Cap, fan, belt",
			kit.Span{Text: "Never open a hot loop: below 50 °C only, cloth over the cap, face away. The fan may start by itself, key off included. Stop the engine before a hand goes near the belt. Coolant is toxic to people and pets. Never run the engine indoors without extraction.", Small: true}),
	)
}

func site(f *kit.Form) fyne.CanvasObject {
	return kit.Section("Where it was measured",
		container.NewGridWithColumns(3,
			f.Temp("Outside", func(c *cases.Case) **diagram.Celsius { return &c.Site.AmbientC }),
			kit.Number(f, "Altitude, m", -500, 9000, func(c *cases.Case) **diagram.Metre { return &c.Site.AltitudeM }),
		),
	)
}

func tags(f *kit.Form) fyne.CanvasObject {
	return f.Quantity(
		func(units.Set) string { return "Tags, with commas between" },
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
