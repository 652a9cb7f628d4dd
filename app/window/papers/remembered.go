package papers

import (
	"encoding/base64"

	"fyne.io/fyne/v2"

	view "loopbook/app/ui/papers"
	"loopbook/diagram/say"
	"loopbook/report"
)

// remembered is what was chosen for the papers, for those to come.
type remembered struct{ fyne.Preferences }

// choice is what was chosen for the last paper.
func (p remembered) choice() view.Choice {
	return view.Choice{
		Kind: report.Kind(p.StringWithFallback("paper", string(report.Customer))), Lang: say.Lang(p.StringWithFallback("paper-language", string(say.EN))),
		Page: report.Page(p.StringWithFallback("paper-size", string(report.A4))), Answer: p.BoolWithFallback("paper-answer", true),
		Name: p.String("shop"), Address: p.String("shop-address"), HasLogo: p.String("shop-logo") != "",
	}
}

// keep keeps all but whether a sheet names its customer: that is to be asked
// for each time.
func (p remembered) keep(c view.Choice) {
	p.SetString("paper", string(c.Kind))
	p.SetString("paper-language", string(c.Lang))
	p.SetString("paper-size", string(c.Page))
	p.SetBool("paper-answer", c.Answer)
	p.SetString("shop", c.Name)
	p.SetString("shop-address", c.Address)
}

// logo is the picture of the shop's head; nil: there is none.
func (p remembered) logo() []byte {
	raw, err := base64.StdEncoding.DecodeString(p.String("shop-logo"))
	if err != nil {
		return nil
	}
	return raw
}

func (p remembered) setLogo(raw []byte) {
	p.SetString("shop-logo", base64.StdEncoding.EncodeToString(raw))
}
