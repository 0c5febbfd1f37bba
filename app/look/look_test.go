package look

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// luminance and contrast follow WCAG 2.2, "relative luminance" and "contrast
// ratio" (W3C Recommendation, formulas from memory).
func luminance(c color.NRGBA) float64 {
	linear := func(channel uint8) float64 {
		s := float64(channel) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func TestContrastFormula(t *testing.T) {
	if got := contrast(rgb(0xFFFFFF), rgb(0x000000)); math.Abs(got-21) > 1e-9 {
		t.Errorf("white on black has contrast %v, the standard says 21", got)
	}
}

func TestColoursCanBeRead(t *testing.T) {
	for _, name := range []fyne.ThemeColorName{Ink, Quiet, Spruce, Ochre, Brick, Slate, Plum} {
		for _, ground := range []fyne.ThemeColorName{Ground, Panel, Stripe} {
			if got := contrast(palette[name].light, palette[ground].light); got < 5.2 {
				t.Errorf("%s on %s, light: contrast %.2f is below 5.2", name, ground, got)
			}
			if got := contrast(palette[name].dark, palette[ground].dark); got < 5.2 {
				t.Errorf("%s on %s, dark: contrast %.2f is below 5.2", name, ground, got)
			}
		}
		// A selected row must still be readable at the standard's AA level.
		if got := contrast(palette[name].light, palette[Wash].light); got < 4.5 {
			t.Errorf("%s on a selected row, light: contrast %.2f is below 4.5", name, got)
		}
	}
}

// over lays a colour over another.
func over(front, back color.NRGBA) color.NRGBA {
	mix := func(f, b uint8) uint8 { return uint8((int(f)*int(front.A) + int(b)*(255-int(front.A))) / 255) }
	return color.NRGBA{R: mix(front.R, back.R), G: mix(front.G, back.G), B: mix(front.B, back.B), A: 255}
}

// What has the keyboard is marked so that it is seen, and can still be read.
func TestWhatHasTheKeyboardIsSeenAndRead(t *testing.T) {
	for _, variant := range []fyne.ThemeVariant{theme.VariantLight, theme.VariantDark} {
		of := func(name fyne.ThemeColorName) color.NRGBA { return palette[name].of(variant) }
		button, action := over(of(Marked), of(Panel)), over(of(Marked), of(Spruce))
		for _, c := range []struct {
			what  string
			a, b  color.NRGBA
			least float64
		}{
			{"words on a button", of(Ink), button, 4.5},
			{"words on the action of a screen", of(Panel), action, 4.5},
			{"a button beside others", button, of(Panel), 2},
			{"a button on the ground", button, of(Ground), 2},
		} {
			if got := contrast(c.a, c.b); got < c.least {
				t.Errorf("%s, variant %d: contrast %.2f is below %v", c.what, variant, got, c.least)
			}
		}
	}
}

func TestThemeAnswersOurNamesAndTheToolkits(t *testing.T) {
	dark := Theme{Variant: Dark}
	if got := dark.Color(Ink, theme.VariantLight); got != palette[Ink].dark {
		t.Errorf("dark ink is %v", got)
	}
	got := color.NRGBAModel.Convert(dark.Color(theme.ColorNameForeground, theme.VariantLight)).(color.NRGBA)
	if ink := palette[Ink].dark; got.A != 255 || contrast(got, ink) > 1.02 {
		t.Errorf("the toolkit's foreground is %v, ours %v", got, ink)
	}
	// So the toolkit dims the keys in its menus: what is left must be seen.
	_, _, _, a := dark.Color(theme.ColorNameForeground, theme.VariantLight).RGBA()
	if left := uint8(uint32(float32(a) * 0.95)); left < 240 {
		t.Errorf("keys in menus have an opacity of %d of 255", left)
	}
	if got := (Theme{Scale: 1.5}).Size(theme.SizeNameText); got != 21 {
		t.Errorf("text at one and a half is %v", got)
	}
}

func TestTextFollowsItsContent(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	text := NewText("short", Body, "")
	test.NewTempWindow(t, text)
	narrow := text.MinSize().Width
	text.SetContent("much longer than before")
	if text.MinSize().Width <= narrow {
		t.Error("longer text asks for no more room")
	}
	text.SetTone(Brick)
	if text.text.Color != palette[Brick].light {
		t.Errorf("tone is %v", text.text.Color)
	}
}
