package warmup

// Tick is a second of the clock.
func (v *View) Tick() { v.hand.clock.show() }
