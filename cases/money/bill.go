// Package money sums what a repair costs, in integers: amounts in the smallest
// unit of the currency, quantities in thousandths.
//
// A line is its quantity times the price of one, rounded to the smallest unit,
// half away from zero. Tax is taken once, on the sum of the lines, and rounded
// the same way. What doesn't fit is refused, never cut.
package money

import (
	"errors"
	"fmt"

	"loopbook/cases"
)

// Errors of a bill, wrapped with the place in the case.
var (
	ErrTooLarge = errors.New("too large for a bill")
	ErrCurrency = errors.New("must be a code of ISO 4217, as EUR or USD")
)

// Bill is what a repair costs.
type Bill struct {
	Currency   Currency
	Parts      []Line // as the case has them
	Labour     *Line  // nil: hours or their price aren't noted; the quantity is hours
	Subtotal   Amount // without tax
	TaxPercent *Thousandths
	Tax        Amount
	Total      Amount
	Unpriced   int  // parts without a price, which no sum holds
	NoRate     bool // hours are noted without their price, and no sum holds them
}

// Line is one line of a bill.
type Line struct {
	Name     string
	Quantity Thousandths
	Each     *Amount // nil: no price is noted
	Sum      Amount
}

// Of is the bill of a repair. A part whose quantity isn't noted is one piece.
func Of(r cases.Repair) (Bill, error) {
	currency, err := ParseCurrency(r.Currency)
	if err != nil {
		return Bill{}, fmt.Errorf("repair.currency: %w", err)
	}
	b := Bill{Currency: currency, NoRate: r.LabourHours != nil && *r.LabourHours > 0 && r.LabourPricePerHour == nil}
	for i, p := range r.Parts {
		l, err := currency.line(p.Name, p.Quantity, p.Price)
		if err != nil {
			return Bill{}, fmt.Errorf("repair.parts[%d]: %w", i, err)
		}
		b.take(l)
	}
	if r.LabourHours != nil && r.LabourPricePerHour != nil {
		l, err := currency.line("", r.LabourHours, r.LabourPricePerHour)
		if err != nil {
			return Bill{}, fmt.Errorf("repair.labour_hours: %w", err)
		}
		b.Labour = &l
		b.Subtotal += l.Sum
	}
	return b.taxed(r.TaxPercent)
}

func (c Currency) line(name string, quantity, price *float64) (Line, error) {
	l := Line{Name: name, Quantity: 1000}
	var err error
	if quantity != nil {
		if l.Quantity, err = inThousandths(*quantity); err != nil {
			return l, err
		}
	}
	if price == nil {
		return l, nil
	}
	each, err := c.FromMajor(*price)
	if err != nil {
		return l, err
	}
	sum, err := times(int64(l.Quantity), int64(each), 1000)
	l.Each, l.Sum = &each, Amount(sum)
	return l, err
}

func (b *Bill) take(l Line) {
	b.Parts = append(b.Parts, l)
	b.Subtotal += l.Sum
	if l.Each == nil {
		b.Unpriced++
	}
}

// wholePercent is a hundred percent in thousandths.
const wholePercent = 100 * 1000

func (b Bill) taxed(percent *float64) (Bill, error) {
	b.Total = b.Subtotal
	if percent == nil {
		return b, nil
	}
	rate, err := inThousandths(*percent)
	if err != nil {
		return Bill{}, fmt.Errorf("repair.tax_percent: %w", err)
	}
	tax, err := times(int64(b.Subtotal), int64(rate), wholePercent)
	if err != nil {
		return Bill{}, fmt.Errorf("tax on the sum: %w", err)
	}
	b.TaxPercent, b.Tax, b.Total = &rate, Amount(tax), b.Subtotal+Amount(tax)
	return b, nil
}

// Empty reports whether no line of the bill has a price.
func (b Bill) Empty() bool { return b.Labour == nil && b.Unpriced == len(b.Parts) }
