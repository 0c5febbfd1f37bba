package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/domain/findings"
)

// The signs differ in shape, so that they can be told apart without colour.
var (
	triangle = fyne.NewStaticResource("must-fix.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="#000000" d="M12 3 L22 21 L2 21 Z"/></svg>`))
	diamond  = fyne.NewStaticResource("look-at.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="#000000" fill-rule="evenodd" d="M12 2 L22 12 L12 22 L2 12 Z M12 6 L6 12 L12 18 L18 12 Z"/></svg>`))
	dot      = fyne.NewStaticResource("note.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><circle fill="#000000" cx="12" cy="12" r="5"/></svg>`))
	tick     = fyne.NewStaticResource("fits.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="#000000" d="M9 19 L3 13 L5.5 10.5 L9 14 L18.5 4.5 L21 7 Z"/></svg>`))
)

// ToneOf gives the colour that goes with a severity, beside its sign and word.
func ToneOf(severity findings.Severity) fyne.ThemeColorName {
	switch severity {
	case findings.MustFix:
		return Brick
	case findings.LookAt:
		return Ochre
	case findings.Note:
		return Quiet
	default:
		return Spruce
	}
}

// SignOf gives the sign of a severity: a filled triangle, an open diamond, a
// small dot; a tick for none.
func SignOf(severity findings.Severity) fyne.Resource {
	shape := tick
	switch severity {
	case findings.MustFix:
		shape = triangle
	case findings.LookAt:
		shape = diamond
	case findings.Note:
		shape = dot
	}
	return theme.NewColoredResource(shape, ToneOf(severity))
}

// NewSign makes the sign of a severity.
func NewSign(severity findings.Severity) *widget.Icon { return widget.NewIcon(SignOf(severity)) }
