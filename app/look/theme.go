package look

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Spaces come in steps of four.
const (
	SpaceSmall  float32 = 4
	Space       float32 = 8
	SpaceWide   float32 = 12
	SpaceLarge  float32 = 16
	SpaceBroad  float32 = 24
	RowHeight   float32 = 28 // a row of a table
	NightHeight float32 = 60 // a row on packing night
)

// UsualText is the size of text before the reader's own scale.
const UsualText float32 = 14

// Sizes of text, before the reader's own scale.
const (
	figureSize float32 = 20 // figures that matter
	bodySize           = UsualText
	noteSize   float32 = 12
	leadSize   float32 = 16 // what leads on from a figure
	nightSize  float32 = 28 // read across a table
	boardSize  float32 = 48 // read across a room
)

// whole rounds a size of text: between whole sizes the toolkit sets letters
// apart by uneven gaps.
func whole(size float32) float32 { return float32(math.Round(float64(size))) }

// Scale is the reader's size of text over the usual one.
func Scale() float32 { return theme.TextSize() / UsualText }

// Variant is light, dark, or as the system says.
type Variant string

// Variants of the look.
const (
	AsSystem Variant = "system"
	Light    Variant = "light"
	Dark     Variant = "dark"
)

// Theme is the look for the toolkit.
type Theme struct {
	Variant Variant
	Scale   float32 // of all text and spaces, 1 is usual; 0 counts as 1
}

// Color gives ours for ours, ours for the toolkit's names, and the toolkit's
// for the rest.
func (t Theme) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	switch t.Variant {
	case Light:
		variant = theme.VariantLight
	case Dark:
		variant = theme.VariantDark
	}
	if name == theme.ColorNameForeground {
		return words{palette[Ink].of(variant)}
	}
	if ours, ok := toolkit[name]; ok {
		name = ours
	}
	if both, ok := palette[name]; ok {
		return both.of(variant)
	}
	return theme.DefaultTheme().Color(name, variant)
}

// Font gives the toolkit's one family.
func (t Theme) Font(style fyne.TextStyle) fyne.Resource { return theme.DefaultTheme().Font(style) }

// Icon gives the toolkit's icons.
func (t Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

// Size gives our text sizes and tighter spaces than the toolkit's.
func (t Theme) Size(name fyne.ThemeSizeName) float32 {
	scale := t.Scale
	if scale == 0 {
		scale = 1
	}
	switch name {
	case theme.SizeNameText:
		return whole(bodySize * scale)
	case theme.SizeNameCaptionText, "caption": // labels ask for it by either name
		return whole(noteSize * scale)
	case theme.SizeNameSubHeadingText:
		return whole(leadSize * scale)
	case theme.SizeNameHeadingText:
		return whole(figureSize * scale)
	case theme.SizeNamePadding:
		return SpaceSmall
	case theme.SizeNameInnerPadding:
		return 6
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 3
	default:
		return theme.DefaultTheme().Size(name)
	}
}

// Tight is the theme with almost no space between the cells of a table.
type Tight struct{ fyne.Theme }

// Size narrows the padding, which a table takes for the gap between cells.
func (t Tight) Size(name fyne.ThemeSizeName) float32 {
	if name == theme.SizeNamePadding {
		return 1
	}
	return t.Theme.Size(name)
}
