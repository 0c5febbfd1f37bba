package charts

import (
	"fmt"
	"image"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"pgregory.net/rapid"

	"sumpter/app/look"
)

func TestTicksAreRoundAndInside(t *testing.T) {
	if got := ticks(0, 4300, 5); !slices.Equal(got, []float64{0, 1000, 2000, 3000, 4000}) {
		t.Errorf("got %v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e6, 1e6).Draw(t, "low")
		high := low + rapid.Float64Range(1e-3, 1e6).Draw(t, "width")
		wanted := rapid.IntRange(1, 12).Draw(t, "wanted")
		list := ticks(low, high, wanted)
		if len(list) > 2*wanted+2 {
			t.Fatalf("%d ticks for %d wanted", len(list), wanted)
		}
		for _, value := range list {
			if margin := (high - low) * 1e-6; len(list) > 1 && (value < low-margin || value > high+margin) {
				t.Fatalf("tick %v outside %v to %v", value, low, high)
			}
		}
	})
}

// paint draws a picture without a window and gives its objects.
func paint(t *testing.T, b *base, object fyne.CanvasObject) []fyne.CanvasObject {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	window := test.NewTempWindow(t, object)
	window.Resize(fyne.NewSize(600, 300))
	return test.WidgetRenderer(object.(fyne.Widget)).Objects()
}

func texts(objects []fyne.CanvasObject) []string {
	var list []string
	for _, object := range objects {
		if text, ok := object.(*canvas.Text); ok {
			list = append(list, text.Text)
		}
	}
	return list
}

func TestNeedChartSaysShortInWords(t *testing.T) {
	c := NewNeedChart("kcal")
	tapped := ""
	c.Set([]Intake{
		{Label: "Mon", Eaten: 3000, Need: 3000, Low: 2800, High: 3300, Tapped: func() { tapped = "Mon" }},
		{Label: "Tue", Eaten: 2000, Need: 3000, Low: 2800, High: 3300, Short: true, Tapped: func() { tapped = "Tue" }},
		{Label: "Wed", Absent: true},
	})
	shown := texts(paint(t, &c.base, c))
	for _, want := range []string{"kcal", "Mon", "Tue", "Wed", "short", "0"} {
		if !slices.Contains(shown, want) {
			t.Errorf("%q is not written; shown %v", want, shown)
		}
	}
	c.Tapped(&fyne.PointEvent{Position: fyne.NewPos(c.Size().Width/2, 150)})
	if tapped != "Tue" {
		t.Errorf("a tap on the middle bar gives %q", tapped)
	}
}

func TestManyShortBarsSayItWithoutOverlap(t *testing.T) {
	c := NewNeedChart("kcal")
	bars := make([]Intake, 28)
	for i := range bars {
		bars[i] = Intake{Label: "9", Eaten: 2000, Need: 3000, Short: true}
	}
	c.Set(bars)
	end, written := float32(0), 0
	for _, object := range paint(t, &c.base, c) {
		if text, ok := object.(*canvas.Text); ok && text.Text == "short" {
			if text.Position().X < end {
				t.Errorf("a word begins at %v, the one before ends at %v", text.Position().X, end)
			}
			end, written = text.Position().X+text.Size().Width, written+1
		}
	}
	if written < 4 || written == len(bars) {
		t.Errorf("%d of %d bars are named short; too wide or too narrow for this test", written, len(bars))
	}
}

func TestLineLabelsDoNotOverlap(t *testing.T) {
	c := NewLineChart("%", nil)
	var series []Series
	for _, name := range []string{"Ana", "Ben", "Cleo", "Dov"} {
		series = append(series, Series{Name: name, Values: []float64{20, 18, 15}})
	}
	c.Set([]string{"1", "2", "3"}, series, []float64{20, 18, 15})
	var at []float32
	for _, object := range paint(t, &c.base, c) {
		if text, ok := object.(*canvas.Text); ok && slices.Contains([]string{"Ana", "Ben", "Cleo", "Dov"}, text.Text) {
			at = append(at, text.Position().Y)
		}
	}
	slices.Sort(at)
	if len(at) != 4 {
		t.Fatalf("%d names are written", len(at))
	}
	for i := 1; i < 4; i++ {
		if at[i]-at[i-1] < 11 {
			t.Errorf("names at %v overlap", at)
		}
	}
}

func TestChoiceIsTakenByTapping(t *testing.T) {
	c := NewChoiceChart("heaviest pack", "cost", short, short)
	taken := ""
	var choices []Choice
	for i, name := range []string{"no stop", "one box", "two boxes"} {
		choices = append(choices, Choice{Name: name, Across: float64(20 - 3*i), Up: float64(10 + 20*i), Chosen: i == 1, Tapped: func() { taken = name }})
	}
	c.Set(choices)
	objects := paint(t, &c.base, c)
	for _, area := range c.taps {
		c.Tapped(&fyne.PointEvent{Position: area.at.AddXY(14, 14)})
		if taken == "" {
			t.Error("the tap was not heard")
		}
		taken = ""
	}
	rings := 0
	for _, object := range objects {
		if ring, ok := object.(*canvas.Circle); ok && ring.StrokeWidth == 2 {
			rings++
		}
	}
	if rings != 1 || len(c.taps) != 3 {
		t.Errorf("%d rings and %d places to tap", rings, len(c.taps))
	}
}

func TestPicturesBearAnything(t *testing.T) {
	for _, object := range []fyne.Widget{NewNeedChart(""), NewLineChart("", nil), NewChoiceChart("", "", short, short), NewProfileChart("km", "m"), NewSpanChart()} {
		test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Dark})
		c := software.NewCanvas()
		c.SetContent(object)
		c.Resize(fyne.NewSize(40, 30))
		if c.Capture().Bounds() == (image.Rectangle{}) {
			t.Errorf("%T draws nothing at all", object)
		}
	}
}

func TestSpanChartNamesWhatRunsOut(t *testing.T) {
	c := NewSpanChart()
	c.Set([]string{"Mon", "Tue"}, []Span{{Label: "Hard cheese", From: 0, To: 2, Ends: 1.5, EndKnown: true, Lasting: RunsOut, Word: "not safe"}})
	shown := texts(paint(t, &c.base, c))
	for _, want := range []string{"Hard cheese", "not safe", "Tue"} {
		if !slices.Contains(shown, want) {
			t.Errorf("%q is not written; shown %v", want, shown)
		}
	}
}

// What nobody knows looks neither safe nor unsafe: an outline, hatched within
// its bar.
func TestSpansOfUnknownTimeLookLikeNoOther(t *testing.T) {
	c := NewSpanChart()
	for _, lasting := range []Lasting{Lasts, RunsOut, LastsUnknown} {
		c.Set([]string{"Mon", "Tue"}, []Span{{Label: "Soft cheese", From: 0.25, To: 1.75, Lasting: lasting, Word: "x"}})
		var full, outlined []*canvas.Rectangle
		slanting := 0
		objects := paint(t, &c.base, c)
		for _, object := range objects {
			if bar, ok := object.(*canvas.Rectangle); ok && bar.StrokeWidth > 0 {
				outlined = append(outlined, bar)
			} else if ok {
				full = append(full, bar)
			}
		}
		for _, object := range objects {
			line, ok := object.(*canvas.Line)
			if !ok || line.Position1.X == line.Position2.X {
				continue
			}
			slanting++
			bar := outlined[0]
			for _, at := range []fyne.Position{line.Position1, line.Position2} {
				if at.X < bar.Position().X || at.X > bar.Position().X+bar.Size().Width || at.Y < bar.Position().Y || at.Y > bar.Position().Y+bar.Size().Height {
					t.Errorf("a stroke of the hatching leaves its bar at %v", at)
				}
			}
		}
		if unknown := lasting == LastsUnknown; (len(full) == 0) != unknown || (len(outlined) == 1) != unknown || (slanting > 3) != unknown {
			t.Errorf("lasting %d: %d full bars, %d outlines, %d slanting lines", lasting, len(full), len(outlined), slanting)
		}
	}
}

func TestProfileShowsItsStops(t *testing.T) {
	c := NewProfileChart("km", "m")
	c.Set("km", "m", []Point{{0, 400}, {10, 1200}, {22, 900}}, []Stop{{10, "1", "Camp", false}, {22, "2", "Box", true}})
	shown := texts(paint(t, &c.base, c))
	for _, want := range []string{"1", "Camp", "2", "Box", "m", "0 km"} {
		if !slices.Contains(shown, want) {
			t.Errorf("%q is not written; shown %v", want, shown)
		}
	}
}

func TestTemperaturesNameTheFreezingDayByPlace(t *testing.T) {
	c := NewTemperatureChart()
	tapped := 0
	c.Set("°C", 0, []Air{
		{Label: "1", Low: 12, High: 31, Tapped: func() { tapped = 1 }},
		{Label: "2", Low: -4, High: 9, Marked: true, Tapped: func() { tapped = 2 }},
	})
	objects := paint(t, &c.base, c)
	words := texts(objects)
	for _, want := range []string{"°C", "31", "9", "1", "2", "0"} {
		if !slices.Contains(words, want) {
			t.Errorf("%q is not written: %v", want, words)
		}
	}
	test.TapAt(c, fyne.NewPos(500, 100))
	if tapped != 2 {
		t.Errorf("a tap on the right chose day %d", tapped)
	}
	bars := 0
	for _, object := range objects {
		if bar, ok := object.(*canvas.Rectangle); ok && bar.FillColor == theme.Color(look.Slate) {
			bars++
			if bar.Position().Y+bar.Size().Height > 280 {
				t.Errorf("the bar of the cold day leaves the picture: %v %v", bar.Position(), bar.Size())
			}
		}
	}
	if bars != 1 {
		t.Errorf("%d bars in the colour of cold, want that of day 2", bars)
	}
}

// The fair band stays between the sides, however few the days are.
func TestTheFairBandStaysInThePicture(t *testing.T) {
	c := NewLineChart("%", nil)
	c.Set([]string{"1", "2"}, []Series{{Name: "Ana", Values: []float64{20, 18}}}, []float64{20, 18})
	band := 0
	for _, object := range paint(t, &c.base, c) {
		if step, ok := object.(*canvas.Rectangle); ok && step.FillColor == theme.Color(look.Wash) {
			band++
			if left, right := step.Position().X, step.Position().X+step.Size().Width; left < 52 || right > c.Size().Width-8 || right <= left {
				t.Errorf("the band goes from %.0f to %.0f of %.0f", left, right, c.Size().Width)
			}
		}
	}
	if band != 2 {
		t.Errorf("%d steps of two", band)
	}
}

// Where nothing costs anything the axis has one nought, not five.
func TestNoFigureStandsTwiceOnAnAxis(t *testing.T) {
	c := NewLineChart("EUR", func(value float64) string { return fmt.Sprintf("%.2f", value) })
	c.Set([]string{"1", "2"}, []Series{{Name: "Ana", Values: []float64{0, 0}}}, nil)
	noughts := 0
	for _, text := range texts(paint(t, &c.base, c)) {
		if text == "0.00" {
			noughts++
		}
	}
	if noughts != 1 {
		t.Errorf("0.00 stands %d times", noughts)
	}
}

// The toolkit drops the renderer of a picture that was hidden for a minute. A
// new one is not laid out by it, and must draw the picture by itself.
func TestAPictureIsThereAfterItsRendererWasDropped(t *testing.T) {
	test.NewTempApp(t)
	c := NewWayChart("day")
	c.Set(3, []WayStop{{Name: "Mill", After: 1, Used: true}})
	c.Resize(fyne.NewSize(600, 200))
	first := len(test.WidgetRenderer(c).Objects())
	if again := len(c.CreateRenderer().Objects()); first == 0 || again != first {
		t.Errorf("%d objects, after the renderer was dropped %d", first, again)
	}
}
