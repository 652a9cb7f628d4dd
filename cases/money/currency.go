package money

import (
	"fmt"
	"slices"
	"strings"
)

// Currency is a currency by its ISO 4217 code. The zero Currency is one that
// isn't noted: two digits, no code.
type Currency struct {
	Code   string // as EUR; "": not noted
	Digits int    // behind the point of the major unit
}

const usualDigits = 2

// The currencies of ISO 4217, list one, in use; funds, metals and testing codes
// are left out. A number is the digits of the minor unit where it isn't two.
const codes = `AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD3 BIF0 BMD BND BOB BRL BSD BTN BWP BYN BZD
CAD CDF CHF CLP0 CNY COP CRC CUP CVE CZK DJF0 DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF0 GTQ GYD
HKD HNL HTG HUF IDR ILS INR IQD3 IRR ISK0 JMD JOD3 JPY0 KES KGS KHR KMF0 KPW KRW0 KWD3 KYD KZT LAK LBP LKR LRD LSL
LYD3 MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR3 PAB PEN PGK PHP PKR PLN
PYG0 QAR RON RSD RUB RWF0 SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND3 TOP TRY TTD
TWD TZS UAH UGX0 USD UYU UZS VED VES VND0 VUV0 WST XAF0 XCD XCG XOF0 XPF0 YER ZAR ZMW ZWG`

// ParseCurrency reads a code in either case; no code is a currency that isn't
// noted.
func ParseCurrency(code string) (Currency, error) {
	code = strings.ToUpper(strings.TrimSpace(code))
	if code == "" {
		return Currency{Digits: usualDigits}, nil
	}
	all := strings.Fields(codes)
	at := slices.IndexFunc(all, func(c string) bool { return c[:3] == code })
	if at < 0 {
		return Currency{}, fmt.Errorf("currency %q: %w", code, ErrCurrency)
	}
	c := Currency{code, usualDigits}
	if digits := all[at][3:]; digits != "" {
		c.Digits = int(digits[0] - '0')
	}
	return c, nil
}
