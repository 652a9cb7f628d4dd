package window

import (
	"path/filepath"
	"testing"

	"loopbook/app/library"
	"loopbook/cases"
	"loopbook/diagram"
)

// The case that the open one is put beside is the one that was open last, however this one was
// opened, and is of the same notebook.
func TestTheCaseBeforeIsTheOneThatWasOpenLast(t *testing.T) {
	w, _ := shown(t)
	o, d := w.menus.opener, w.at.Desk
	begin := func(title string) string { // a blank one would be begun once
		o.begin()
		d.Edit("title", func(c *cases.Case) { c.Title = title })
		return d.Case.ID
	}
	first, second := begin("first"), begin("second")
	o.open(first)
	if o.begin(); d.Before != first {
		t.Errorf("a case is begun and the one before is %s, want %s", d.Before, first)
	}
	o.remove()
	o.open(second)
	if o.restore(); d.Before != second {
		t.Errorf("a case is restored and the one before is %s, want %s", d.Before, second)
	}
	restored := d.Case.ID
	if d.Load(first); d.Before != restored { // as what is taken in opens it
		t.Errorf("a case came in and the one before is %s, want %s", d.Before, restored)
	}
	store, err := library.Open(w.at.Ctx, filepath.Join(t.TempDir(), "other.db"))
	if err != nil {
		t.Fatal(err)
	}
	if w.use(store); d.Before != "" {
		t.Errorf("in another notebook the one before is %s", d.Before)
	}
}

// A vehicle that comes back isn't typed anew; what was measured of it then, and its odometer, are of then.
func TestAVehicleThatComesBackIsNotTypedAnew(t *testing.T) {
	w, _ := shown(t)
	o, d := w.menus.opener, w.at.Desk
	o.begin()
	first := d.Case.ID
	km, year, strength, opens := 88_000.0, 2018, 50.0, diagram.Celsius(87)
	d.Edit("vehicle", func(c *cases.Case) {
		c.Title, c.Vehicle.Make, c.Vehicle.Year, c.Vehicle.OdometerKm, c.Customer.Name = "hot", "Pellmark", &year, &km, "Dorian Peckwell"
		c.Loop.Layout, c.Loop.ThermostatOpensC, c.Loop.Coolant.VolumePercent, c.Verdict.Cause = "inlet-thermostat", &opens, &strength, "pump-weak"
	})
	o.again()
	c := &d.Case
	if c.ID == first || c.Vehicle.Make != "Pellmark" || *c.Vehicle.Year != year || c.Customer.Name != "Dorian Peckwell" || c.Loop.Layout != "inlet-thermostat" || *c.Loop.ThermostatOpensC != opens {
		t.Errorf("again it is %+v of %+v with %+v", c.Vehicle, c.Customer, c.Loop)
	}
	if c.Title != "" || c.Vehicle.OdometerKm != nil || c.Loop.Coolant.VolumePercent != nil || c.Verdict.Cause != "" || d.Before != first {
		t.Errorf("it has %q, %+v, %+v of the visit before", c.Title, c.Vehicle, c.Verdict)
	}
}

// A new case that can't be kept leaves the caret where it was: in the title of the open one, what is typed for the new case
// took the place of its own.
func TestNoCaseIsNoWayToOne(t *testing.T) {
	w, _ := shown(t)
	o, d := w.menus.opener, w.at.Desk
	o.begin()
	d.Edit("title", func(c *cases.Case) { c.Title = "hot" })
	led := 0
	o.begun = func() { led++ }
	if o.again(); led != 1 {
		t.Fatalf("a new case leads there %d times", led)
	}
	d.Edit("title", func(c *cases.Case) { c.Title = "hot again" })
	if err := d.Store.Close(); err != nil {
		t.Fatal(err)
	}
	o.again()
	o.begin()
	if o.add(cases.Case{Title: "simulated"}, "simulated car"); led != 1 {
		t.Errorf("cases that weren't kept lead there %d times", led-1)
	}
}
