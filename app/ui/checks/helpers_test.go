package checks

import "loopbook/diagram"

func kPa(v diagram.KPa) *diagram.KPa { return &v }
