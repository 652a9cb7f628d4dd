package evidence

// Regime is how warm the engine is against its thermostat's rating.
type Regime string

// The regimes. Shut is a warm-up on its way; Below is an engine that had the
// time to get warm and isn't. Both are more than 11 K under the rating.
const (
	NoRegime Regime = ""
	Shut     Regime = "shut"
	Below    Regime = "below"
	AtRating Regime = "at"
	Above    Regime = "above" // by more than 8 K
)
