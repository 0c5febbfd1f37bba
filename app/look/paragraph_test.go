package look

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"pgregory.net/rapid"
)

// No line is wider than there is room unless it is a single letter, nothing but
// spaces is lost, and no line could have taken the next word as well.
func TestWrappedLinesAreFullAndFit(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	words := []string{"oats", "Größe", "a", "12,5 kg", "—", "Rhabarbergrützenpulver", "day", "of", "evening:", "饭", "W"}
	rapid.Check(t, func(rt *rapid.T) {
		content := strings.Join(rapid.SliceOf(rapid.SampledFrom(append(words, "", "\n"))).Draw(rt, "words"), " ")
		width, style := float32(rapid.IntRange(12, 300).Draw(rt, "width")), fyne.TextStyle{Bold: rapid.Bool().Draw(rt, "bold")}
		lines := Wrap(content, 14, style, width)
		bare := func(s string) string { return strings.NewReplacer(" ", "", "\n", "").Replace(s) }
		if got := strings.Join(lines, ""); bare(got) != bare(content) {
			rt.Fatalf("%q became %q", content, got)
		}
		if strings.Contains(content, "\n") {
			return
		}
		for i, line := range lines {
			if wide := fyne.MeasureText(line, 14, style).Width; wide > width+1 && len([]rune(strings.TrimSpace(line))) > 1 {
				rt.Fatalf("line %d %q is %v of %v wide", i, line, wide, width)
			}
			if i+1 == len(lines) {
				continue
			}
			next, _, _ := strings.Cut(lines[i+1], " ")
			if wide := fyne.MeasureText(line+" "+next, 14, style).Width; wide < width-1 {
				rt.Fatalf("line %d %q has room for %q: %v of %v", i, line, next, wide, width)
			}
		}
	})
}

func TestALineBreakOfTheTextStays(t *testing.T) {
	test.NewTempApp(t)
	for content, want := range map[string]string{"": "", "a": "a", "a\n\nb": "a||b", "  in\nb ": "  in|b"} {
		if got := strings.Join(Wrap(content, 14, fyne.TextStyle{}, 500), "|"); got != want {
			t.Errorf("%q became %q", content, got)
		}
	}
}

// A paragraph stands where a label would.
func TestAParagraphIsLaidOutAsALabel(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	text := "Evening of day 3: 12.4 kg left, 2.1 days of food; eaters: 12; days back: 2.\nOwn dishes reach least far for Ida."
	p, label := NewParagraph(text, Caption, Quiet), widget.NewLabel(text)
	label.Wrapping, label.SizeName = fyne.TextWrapWord, theme.SizeNameCaptionText
	for _, width := range []float32{0, 90, 210, 800, 210} {
		for _, o := range []fyne.CanvasObject{p, label} {
			o.Resize(fyne.NewSize(width, 100))
		}
		if p.MinSize().Height != label.MinSize().Height {
			t.Errorf("at %v it is %v high, a label %v", width, p.MinSize(), label.MinSize())
		}
		objects := test.WidgetRenderer(p).Objects()
		last := objects[len(objects)-1].(*canvas.Text)
		if bottom := last.Position().Y + last.Size().Height + theme.InnerPadding(); bottom != p.MinSize().Height {
			t.Errorf("at %v the lines end at %v of %v", width, bottom, p.MinSize().Height)
		}
		if last.Color != theme.Color(Quiet) || last.TextSize != Caption.Points() {
			t.Errorf("the text is %v of size %v", last.Color, last.TextSize)
		}
	}
	p.SetContent("short")
	if lines := test.WidgetRenderer(p).Objects(); len(lines) != 1 || lines[0].(*canvas.Text).Text != "short" {
		t.Errorf("shows %d lines after its text became short", len(lines))
	}
}

// BenchmarkParagraph wraps a long text at a new width, as when a divider moves.
func BenchmarkParagraph(b *testing.B) {
	test.NewApp().Settings().SetTheme(Theme{Variant: Light})
	p := NewParagraph(strings.Repeat("For 60 eaters there are 12.5 kg of food in the packs on the evening of day 12, for 1.5 days. ", 15), Body, Ink)
	for i := 0; b.Loop(); i++ {
		p.Resize(fyne.NewSize(float32(300+i%200), 400))
	}
}
