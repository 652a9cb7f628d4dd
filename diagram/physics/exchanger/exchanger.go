// Package exchanger says how much of the heat that could pass between two
// streams does pass: effectiveness against the number of transfer units.
//
// NTU is UA/Cmin and Cr is Cmin/Cmax, with C the heat capacity rate of a stream
// in W/K; effectiveness is the heat that passes by the heat that would pass in
// an endless counter-flow exchanger. All three are without unit. The formulas are
// those of Kays and London, Compact Heat Exchangers.
package exchanger

import "math"

// Arrangement is how the two streams pass each other.
type Arrangement int

// The arrangements. A mixed stream has one temperature across its passage, an
// unmixed one is kept in its own channels.
const (
	Counter       Arrangement = iota
	Parallel                  // both the same way
	CrossUnmixed              // both unmixed: a finned radiator with many tubes
	CrossMaxMixed             // the stream of the greater rate mixed
	CrossMinMixed             // the stream of the lesser rate mixed
)

// Effectiveness is the arrangement's, from 0 to 1. NTU is from 0 up and Cr
// from 0 to 1; values beyond are taken for the nearest end, NaN gives NaN.
//
// A Cr of 0, one stream boiling or condensing, is alike in all: 1 − exp(−NTU).
func (a Arrangement) Effectiveness(ntu, cr float64) float64 {
	ntu, cr = max(ntu, 0), min(max(cr, 0), 1)
	if cr < 1e-9 {
		return -math.Expm1(-ntu)
	}
	if ntu > endless { // no arrangement gains after that, and exp(ntu) overflows
		ntu = endless
	}
	switch a {
	case Counter:
		return counter(ntu, cr)
	case Parallel:
		return -math.Expm1(-ntu*(1+cr)) / (1 + cr)
	case CrossMaxMixed:
		return -math.Expm1(cr*math.Expm1(-ntu)) / cr
	case CrossMinMixed:
		return -math.Expm1(math.Expm1(-cr*ntu) / cr)
	}
	return unmixed(ntu, cr)
}

const endless = 200

func counter(ntu, cr float64) float64 {
	if 1-cr < 1e-9 { // the limit of the quotient below
		return ntu / (1 + ntu)
	}
	e := math.Exp(-ntu * (1 - cr))
	return (1 - e) / (1 - cr*e)
}

// HeatW is the heat that passes from the hot stream to the cold, in watts,
// for streams of capacity rates hot and cold in W/K that come in delta kelvins
// apart, with the conductance ua in W/K. A stream that stands still takes none.
func (a Arrangement) HeatW(ua, hot, cold, delta float64) float64 {
	least, most := min(hot, cold), max(hot, cold)
	if !(least > 0) || !(ua > 0) {
		return 0
	}
	return a.Effectiveness(ua/least, least/most) * least * delta
}
