package repair

import (
	"strings"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/repair"
	"loopbook/cases"
	"loopbook/cases/money"
	"loopbook/diagram/say"
)

// billWords is the bill of a repair; what can't be summed is told in its place.
func billWords(r cases.Repair) view.Bill {
	b, err := money.Of(r)
	if err != nil {
		return view.Bill{Remark: err.Error()}
	}
	write := func(a money.Amount) string { return b.Currency.Write(a, say.EN) }
	out := view.Bill{Parts: make([]string, len(b.Parts))}
	for i, l := range b.Parts {
		if l.Each != nil {
			out.Parts[i] = write(l.Sum)
		}
	}
	if b.Labour != nil {
		out.Labour = write(b.Labour.Sum)
	}
	if !b.Empty() {
		out.Subtotal, out.Total = write(b.Subtotal), write(b.Total)
	}
	if b.TaxPercent != nil && !b.Empty() {
		out.Tax = write(b.Tax)
	}
	out.Remark = missing(b)
	return out
}

// missing is what no sum holds, where there is one.
func missing(b money.Bill) string {
	if b.Empty() {
		return ""
	}
	var out []string
	if b.Unpriced > 0 {
		out = append(out, kit.L("window.repair.unpriced", b.Unpriced))
	}
	if b.NoRate {
		out = append(out, kit.L("window.repair.no-rate"))
	}
	return strings.Join(out, " ")
}
