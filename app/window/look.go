package window

import (
	"sumpter/app/look"
)

// Names under which the reader's wishes are kept.
const (
	prefVariant = "look.variant"
	prefScale   = "look.scale"
	prefRecent  = "recent"
)

func (w *Workbench) applyLook() {
	variant := look.Variant(w.app.Preferences().StringWithFallback(prefVariant, string(look.AsSystem)))
	scale := w.app.Preferences().FloatWithFallback(prefScale, 1)
	w.app.Settings().SetTheme(look.Theme{Variant: variant, Scale: float32(scale)})
}

func (w *Workbench) setVariant(variant look.Variant) {
	w.app.Preferences().SetString(prefVariant, string(variant))
	w.applyLook()
}

// Text may be from three quarters to twice the usual size.
const leastScale, mostScale, scaleStep = 0.75, 2.0, 0.125

func (w *Workbench) changeScale(by float64) {
	scale := w.app.Preferences().FloatWithFallback(prefScale, 1) + by
	w.app.Preferences().SetFloat(prefScale, min(mostScale, max(leastScale, scale)))
	w.applyLook()
	if w.document != nil && w.screens[w.shown].Commit() {
		w.rebuild() // tables take their widths and heights when they are made
	}
}
