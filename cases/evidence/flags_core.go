package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/facescan"
	"loopbook/diagram/say"
)

// What two places of the core's face that lie equally far from its inlet may
// differ by, to be suspected and to fail: DT14, common practice.
const (
	suspectK diagram.DeltaK = facescan.SuspectK
	patchK   diagram.DeltaK = 10
)

// coreScan looks for cold tubes, cold patches and hot ones. A hot patch has no
// outcome of its own: it is told, and weighs nothing.
func coreScan(c *cases.Case, t *cases.Test) judgement {
	f := facescan.Judge(t.ShownC)
	severity := Look
	if f.MostK > patchK {
		severity = Act
	}
	rule := say.Of("because.face", suspectK, patchK)
	share := say.Of("because.face-cold", 100*f.ColdShare)
	switch f.Pattern {
	case facescan.Tubes:
		return found("patch", ofCase("core-patch", severity, say.Of("flag.core-tubes", f.MostK), rule, share))
	case facescan.Cold:
		return found("patch", ofCase("core-patch", severity, say.Of("flag.core-cold", f.MostK), rule, share))
	case facescan.Hot:
		return found("hot-patch", ofCase("core-fins", Look, say.Of("flag.core-fins", f.MostK), rule))
	}
	return wholeFace(airOfSide(c, t.Stage), f)
}

// A face that is hot all through: F06, common practice.
const (
	hotFaceC = 70
	hotFaceK = 6
)

// wholeFace judges a core's face without a patch against the air outside (nil: not known). Hot or cold all over is no
// fault of the core and raises no flag, but it speaks for causes elsewhere.
func wholeFace(outside *diagram.Celsius, f facescan.Face) judgement {
	switch {
	case f.Pattern == facescan.TooFew:
		return judgement{} // no neighbours to compare
	case outside != nil && f.Hottest <= *outside+diagram.Celsius(coldHoseK):
		return judgement{outcome: "cold-through"}
	case f.LostK <= hotFaceK && f.Coldest >= hotFaceC:
		return judgement{outcome: "hot-through"}
	}
	return judgement{outcome: Pass}
}
