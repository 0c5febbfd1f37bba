// Package look is how Sumpter looks: a calm work-bench of paper, ink and few
// colours that mean something. It holds the theme, the sizes and spaces, and
// the small pieces every screen shares: texts in the three sizes, signs of
// severity, tags for bags.
package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Names of the colours that mean something. Ask theme.Color for them; they
// follow light and dark. None is ever the only carrier of its meaning.
const (
	Ground fyne.ThemeColorName = "sumpter ground"
	Panel  fyne.ThemeColorName = "sumpter panel"
	Line   fyne.ThemeColorName = "sumpter line"
	Ink    fyne.ThemeColorName = "sumpter ink"
	Quiet  fyne.ThemeColorName = "sumpter quiet"
	Spruce fyne.ThemeColorName = "sumpter spruce" // action, selected, fits
	Ochre  fyne.ThemeColorName = "sumpter ochre"  // look at this
	Brick  fyne.ThemeColorName = "sumpter brick"  // must not stay so
	Slate  fyne.ThemeColorName = "sumpter slate"  // second series: water, cold
	Plum   fyne.ThemeColorName = "sumpter plum"   // allergy, third series
	// Wash is the ground of a selected row or cell: spruce thinned with panel.
	Wash fyne.ThemeColorName = "sumpter wash"
	// Stripe parts rows and weekends of long tables.
	Stripe fyne.ThemeColorName = "sumpter stripe"
	// Marked is laid over what has the keyboard and lets its words through.
	Marked fyne.ThemeColorName = "sumpter marked"
	// Shade is the soft edge of what scrolls away.
	Shade fyne.ThemeColorName = "sumpter shade"
)

// pair is a colour in light and in dark.
type pair struct{ light, dark color.NRGBA }

// of gives the colour of a variant.
func (p pair) of(variant fyne.ThemeVariant) color.NRGBA {
	if variant == theme.VariantDark {
		return p.dark
	}
	return p.light
}

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 0xFF}
}

// palette holds the meaning colours. Contrast of text colours on ground and
// panel is at least 5.2 to 1 (measured by a test with the WCAG 2 formula).
var palette = map[fyne.ThemeColorName]pair{
	Ground: {rgb(0xF6F3EC), rgb(0x171C20)},
	Panel:  {rgb(0xFFFFFF), rgb(0x20272C)},
	Line:   {rgb(0xD8D1C3), rgb(0x39434A)},
	Ink:    {rgb(0x22303C), rgb(0xE9E4D8)},
	Quiet:  {rgb(0x5C6770), rgb(0xA3ADB3)},
	Spruce: {rgb(0x1F5F5B), rgb(0x6FC0B5)},
	Ochre:  {rgb(0x8A5A00), rgb(0xE0B04A)},
	Brick:  {rgb(0xA63A2B), rgb(0xF08A76)},
	Slate:  {rgb(0x3E5C86), rgb(0x8FB2E6)},
	Plum:   {rgb(0x7A3E6D), rgb(0xD79CCB)},
	Wash:   {rgb(0xDCE8E4), rgb(0x27403E)},
	Stripe: {rgb(0xFAF8F3), rgb(0x1C2226)},
	Marked: {color.NRGBA{R: 0x3E, G: 0x5C, B: 0x86, A: 0x80}, color.NRGBA{R: 0x8F, G: 0xB2, B: 0xE6, A: 0x74}},
	Shade:  {color.NRGBA{R: 0x5A, G: 0x4A, B: 0x30, A: 0x26}, color.NRGBA{A: 0x66}},
}

// toolkit maps the colours the toolkit's own widgets ask for to ours.
var toolkit = map[fyne.ThemeColorName]fyne.ThemeColorName{
	theme.ColorNameBackground:          Ground,
	theme.ColorNameForeground:          Ink,
	theme.ColorNamePrimary:             Spruce,
	theme.ColorNameFocus:               Marked,
	theme.ColorNameSelection:           Wash,
	theme.ColorNameHyperlink:           Slate,
	theme.ColorNameButton:              Panel,
	theme.ColorNameDisabledButton:      Ground,
	theme.ColorNameDisabled:            Quiet,
	theme.ColorNamePlaceHolder:         Quiet,
	theme.ColorNameInputBackground:     Panel,
	theme.ColorNameInputBorder:         Line,
	theme.ColorNameSeparator:           Line,
	theme.ColorNameShadow:              Shade,
	theme.ColorNameMenuBackground:      Panel,
	theme.ColorNameOverlayBackground:   Panel,
	theme.ColorNameHeaderBackground:    Ground,
	theme.ColorNameError:               Brick,
	theme.ColorNameWarning:             Ochre,
	theme.ColorNameSuccess:             Spruce,
	theme.ColorNameForegroundOnPrimary: Panel,
	theme.ColorNameForegroundOnError:   Panel,
	theme.ColorNameForegroundOnSuccess: Panel,
	theme.ColorNameForegroundOnWarning: Panel,
}

// words is the colour of the toolkit's own texts. The toolkit writes the keys
// in its menus in it less 5 %, and keeps only the lower byte of what that
// leaves of 16 bits: opaque in full, they would be hardly there. This much is
// opaque to the eye and leaves 255.
type words struct{ color.NRGBA }

// RGBA gives the colour as the toolkit asks for it.
func (w words) RGBA() (r, g, b, a uint32) {
	r, g, b, _ = w.NRGBA.RGBA()
	return min(r, wordsOpacity), min(g, wordsOpacity), min(b, wordsOpacity), wordsOpacity
}

const wordsOpacity = 65482
