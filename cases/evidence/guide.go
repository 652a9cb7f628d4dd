package evidence

import "loopbook/cases"

// Guide says by what a check is judged, and what it can't tell. Sources are
// named as in testdata/trade; limits of a vehicle's maker come before them.
type Guide struct {
	Accepts   string
	NotProven string // by a pass
}

// GuideTo is the guide to a check, in °C, K and kPa.
func GuideTo(kind cases.TestKind) Guide {
	switch kind {
	case "pressure-hold":
		return Guide{
			"Nothing is lost but what cooling takes, to the needle's 2 kPa. Up to 14 kPa in 2 min is to be looked at again, more fails (PR1 to PR4, published, V6, V7, V8, M10).",
			"A leak that opens only hot, or only as the engine rocks, holds cold (V6). A drop without a wet spot is inside: heater core, cooler in the radiator, engine (V7, V8, M10).",
		}
	case "cap":
		return Guide{
			"Opens within 10 % of its rating and holds it for a minute (PR7, PR8, published, M16, T17). The vacuum valve opens by some 4 kPa below the outside (PR10, published, M14).",
			"A cap that is well on the tester may not seal on its own neck: look at the neck. A slow bleed on the tester alone is no proof of a bad cap (published, V9).",
		}
	case "combustion-gas":
		return Guide{
			"The fluid keeps its colour for one to two minutes at idle (published, M16, T23).",
			"One negative clears nothing: small leaks show only hot or loaded, so repeat it (published, T23). Exhaust in the shop's air, coolant in the fluid or old fluid change its colour too.",
		}
	case "coolant":
		return Guide{
			"40 to 60 % by volume (CO1, published, V32), 33 to 67 % at most (CO2, CO3, published, M21, T19). pH 7.5 to 11 (CO8, common practice). Under 0.1 V good, above 0.3 V to be looked into (SV5, common practice: published limits run from 0.05 to 0.4 V, T13).",
			"Strength and pH don't tell how much life is left (published, T10), and a mix of two kinds can look clear (common practice). Voltage in the coolant is often galvanic and no earth fault (T13).",
		}
	case "thermostat-bench":
		return Guide{
			"Opens within 3 K of its mark (TH1, published, M2), fully open 6 to 15 K above (TH2, published), by 8 mm at least (TH3, published, V1 to V4), shut again by 40 °C (TH4, published, V2, V3: ratings of 76 to 84 °C).",
			"A pass doesn't clear the part: the water stands still, nothing presses on the valve, slow heating hides a lazy wax, open water tells little above 95 °C (TH10), and the heater of a heated one isn't tried. A clear fail condemns it (common practice).",
		}
	case "sensor-resistance":
		return Guide{
			"Within 5 K of the maker's curve; 10 K off fails (DT15, DT16, common practice). Curves differ from maker to maker (V15, V16, V17): another one only shows that the sensor moves smoothly.",
			"A sensor that is well may hang on a bad plug or wire: unplugged the scan tool should read its coldest, below -30 °C, bridged its hottest, above 130 °C (SN1, SN2, published, V35).",
		}
	case "fan":
		return Guide{
			"Runs when told to, stands when not; starts by 93 to 98 °C (FN1, published, V23). A second speed comes at 105 to 112 °C (FN5, common practice).",
			"That it runs on command doesn't show that it is told in time, that it turns the right way or at full speed, nor that its air goes through the core: look at shroud and fins (published, M8, M15).",
		}
	case "level":
		return Guide{
			"Full to the mark, engine cold (common practice).",
			"A full bottle doesn't show that no air is trapped, nor why somebody filled it up (common practice).",
		}
	case "pump-drive":
		return Guide{
			"Belt sound and tight, no play in the shaft, weep hole dry (published, V22, T7).",
			"From outside a loose, worn or slipping impeller can't be seen: the flow tells (common practice).",
		}
	case "hose-look":
		return Guide{
			"The lower hose keeps its shape at 2500 to 3000 rpm (published, M17).",
			"A loose lining can shut a hose that looks well outside (published, M25); some close only hot or only on the road (common practice).",
		}
	case "core-scan":
		return Guide{
			"Places equally far from the inlet within 8 K; 10 K apart fails (DT14, common practice). An even change from inlet to outlet, without a cold patch, is well (published, M17, V22).",
			"Tubes that are furred up all alike look even: see how much the core cools. Cold lines may lie behind something that stands before the core. With the thermostat shut every face is cold.",
		}
	case "bubbles":
		return Guide{
			"None once the air is bled, at raised idle (published, V22, V34).",
			"Small leaks bubble only under load. Bubbles may also be air that is drawn in, or come from an air compressor or oil cooler on trucks (V34).",
		}
	case "heater-flow":
		return Guide{
			"Both hoses hot, the return slightly cooler (published, V21); up to 15 K at full blower, above 20 K is suspect (DT10, DT11, common practice).",
			"With the hoses as they should be the cabin can still stay cold: flap, filter or blower (common practice).",
		}
	}
	return Guide{}
}
