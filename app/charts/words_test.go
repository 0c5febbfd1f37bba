package charts

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"sumpter/app/look"
)

func TestNamesOfLinesAreSpread(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		const top, bottom = 8, 200
		names := make([]endName, rapid.IntRange(0, 40).Draw(rt, "names"))
		for i := range names {
			names[i] = endName{y: rapid.Float32Range(-50, 300).Draw(rt, "y"), series: i}
		}
		if len(names) > 0 {
			names[rapid.IntRange(0, len(names)-1).Draw(rt, "strong")].strong = true
		}
		given := len(names)
		placed := spread(names, top, bottom)
		if room := int((bottom-top)/12) + 1; len(placed) != min(given, room) {
			rt.Fatalf("%d of %d names are placed, there is room for %d", len(placed), given, room)
		}
		for i, name := range placed {
			if name.y < top-0.01 || name.y > bottom+0.01 {
				rt.Fatalf("a name stands at %v, outside the picture", name.y)
			}
			if i > 0 && name.y-placed[i-1].y < 11.99 {
				rt.Fatalf("names stand at %v and %v", placed[i-1].y, name.y)
			}
		}
		if given > 0 && !slices.ContainsFunc(placed, func(n endName) bool { return n.strong }) {
			rt.Fatal("the chosen line has lost its name")
		}
	})
}

// Three weeks of days under narrow bars: every label that is there can be read.
func TestDaysUnderNarrowBarsAreThinnedNotCut(t *testing.T) {
	c := NewNeedChart("kcal")
	var bars []Intake
	for d := 1; d <= 40; d++ {
		bars = append(bars, Intake{Label: fmt.Sprint(d), Eaten: 2000, Need: 2100})
	}
	c.Set(bars)
	shown := texts(paint(t, &c.base, c))
	if slices.ContainsFunc(shown, func(text string) bool { return strings.Contains(text, "…") }) {
		t.Errorf("a day is cut: %v", shown)
	}
	if !slices.Contains(shown, "1") || slices.Contains(shown, "2") {
		t.Errorf("of 40 days in a narrow picture these are named: %v", shown)
	}
	c.Set(bars[:7])
	if shown = texts(paint(t, &c.base, c)); !slices.Contains(shown, "2") {
		t.Errorf("of a week these are named: %v", shown)
	}
}

func TestNamesOfChoicesStayInThePicture(t *testing.T) {
	c := NewChoiceChart("kg", "fees", short, short)
	c.Set([]Choice{
		{Name: "day 4 + 8 + 12 + 16 and back again by the lower way", Across: 500, Up: 30000, Advised: true, Chosen: true},
		{Name: "no stop", Across: 1200, Up: 0},
	})
	for _, object := range paint(t, &c.base, c) {
		if text, ok := object.(*canvas.Text); ok && (text.Position().X < 0 || text.Position().X+text.Size().Width > c.Size().Width) {
			t.Errorf("%q stands from %v to %v in a picture of %v", text.Text, text.Position().X, text.Position().X+text.Size().Width, c.Size().Width)
		}
	}
}

// The last name ends clear of the edge however wide it is, beside its point or
// on the other side of it.
func TestTheLastNameEndsClearOfTheEdge(t *testing.T) {
	c := NewChoiceChart("hand-overs", "heavier", short, short)
	drawn := 0
	paint(t, &c.base, c)
	for _, name := range []string{"i", "ii", "iii", "iiii", "fair", "fairest", "the fairest", strings.Repeat("the very fairest ", 12)} {
		for across := 40.0; across <= 60; across++ {
			c.Set([]Choice{{Name: "", Across: 10, Up: 3}, {Name: name, Across: across, Up: 1}, {Name: "", Across: 60, Up: 0}})
			for _, object := range test.WidgetRenderer(c).Objects() {
				text, ok := object.(*canvas.Text)
				if !ok || text.Text == "" || !strings.HasPrefix(name, strings.TrimSuffix(text.Text, "…")) {
					continue
				}
				ends := text.Position().X + text.Size().Width
				drawn++
				if text.Position().X < 2 || ends > c.Size().Width-2 {
					t.Fatalf("%q stands from %v to %v in a picture of %v", text.Text, text.Position().X, ends, c.Size().Width)
				}
			}
		}
	}
	if drawn < 8*21 {
		t.Fatalf("only %d names were drawn", drawn)
	}
}

// Axis titles, figures and names keep apart at every size of text.
func TestWordsOfLargeChoicesDoNotLieOnEachOther(t *testing.T) {
	c := NewChoiceChart("everybody's food on the heaviest morning", "fees", func(v float64) string { return fmt.Sprintf("%.1f kg", v) }, func(v float64) string { return fmt.Sprintf("%.2f", v) })
	paint(t, &c.base, c)
	for _, size := range []float32{1, 1.25, 1.5, 2} {
		fyne.CurrentApp().Settings().SetTheme(look.Theme{Variant: look.Light, Scale: size})
		c.Set([]Choice{{Name: "day 3 + 6", Across: 25, Up: 4300, Advised: true, Chosen: true}, {Name: "day 3", Across: 46, Up: 2850}, {Name: "no stop", Across: 65}})
		var written []*canvas.Text
		for _, object := range test.WidgetRenderer(c).Objects() {
			text, ok := object.(*canvas.Text)
			if !ok {
				continue
			}
			at, to := text.Position(), text.Position().Add(text.Size())
			if at.X < 0 || at.Y < 0 || to.X > c.Size().Width || to.Y > c.Size().Height {
				t.Errorf("size %v: %q stands from %v to %v in a picture of %v", size, text.Text, at, to, c.Size())
			}
			for _, other := range written {
				from, end := other.Position(), other.Position().Add(other.Size())
				const touch = 4 // lines have room above and below their letters
				if at.X < end.X && from.X < to.X && at.Y < end.Y-touch && from.Y < to.Y-touch {
					t.Errorf("size %v: %q and %q lie on each other", size, text.Text, other.Text)
				}
			}
			written = append(written, text)
		}
		if len(written) < 8 {
			t.Errorf("size %v: only %d words", size, len(written))
		}
	}
}

func TestACardSaysThatMoreIsToBeRead(t *testing.T) {
	c := NewWayChart("day")
	lines := []WayLine{{Text: "Hut"}}
	for i := range 40 {
		lines = append(lines, WayLine{Text: fmt.Sprintf("line %d", i)})
	}
	c.Set(5, []WayStop{{Name: "Hut", After: 2, Used: true, Lines: lines}})
	shown := texts(paint(t, &c.base, c))
	last := ""
	for _, text := range shown {
		if strings.HasPrefix(text, "line ") {
			last = text
		}
	}
	if !strings.HasSuffix(last, "…") || strings.HasPrefix(last, "line 39") {
		t.Errorf("the card ends with %q", last)
	}
}
