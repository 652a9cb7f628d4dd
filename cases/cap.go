package cases

import "loopbook/diagram"

// What a cap can be marked with, in the widest sense (judgement; the usual ones open from 28 to 200 kPa, from memory). A mark
// of 1.1 bar or 15 psi is easily typed where kilopascals are asked for. A case may hold another, as a file of somebody else's
// does; who types one is held to these.
const (
	CapLeastKPa diagram.KPa = 20
	CapMostKPa  diagram.KPa = 250
)

// CanBeCap reports whether p can be a cap's mark; 0 is an open loop.
func CanBeCap(p diagram.KPa) bool { return p == 0 || p >= CapLeastKPa && p <= CapMostKPa }
