package charts

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

func packs(n int) []Pack {
	var list []Pack
	for i := range n {
		list = append(list, Pack{
			Name: string(rune('A' + i%26)), Group: []string{"Larch", "Rowan"}[i*2/n], Notes: []string{"12 kg", "17 %"},
			Parts: []Part{{Value: 10, Label: "8", Tone: look.Line}, {Value: 5, Label: "4", Tone: look.Spruce}},
			Apart: Part{Value: 2, Label: "2", Tone: look.Slate, Hollow: true}, Fair: 14, Limit: 16,
		})
	}
	return list
}

func TestPackChartDrawsWhatCanBeSeen(t *testing.T) {
	c := NewPackChart()
	paint(t, &c.base, c)
	c.See(0, 580)
	c.Set(packs(60), 20)
	objects := c.painted(t)
	if n := len(texts(objects)); n == 0 || n > 12*8 {
		t.Errorf("%d texts for the ten columns that can be seen", n)
	}
	if c.MinSize().Width != 60*narrowestPack {
		t.Errorf("60 columns take %v", c.MinSize().Width)
	}
	c.See(30*narrowestPack, 580)
	if shown := texts(c.painted(t)); !slices.Contains(shown, "Rowan") || slices.Contains(shown, "Larch") {
		t.Errorf("scrolled to the second group it shows %v", shown)
	}
}

// painted draws anew and gives the objects.
func (c *PackChart) painted(t *testing.T) []fyne.CanvasObject {
	t.Helper()
	d := &drawing{size: fyne.NewSize(c.MinSize().Width, 300)}
	c.paint(d)
	return d.objects
}

func TestLayersStandOnEachOther(t *testing.T) {
	c := NewPackChart()
	paint(t, &c.base, c)
	c.See(0, 600)
	c.Set(packs(4), 20)
	up := level(20, 300)
	var edges []float32
	for _, object := range c.painted(t) {
		if r, ok := object.(*canvas.Rectangle); ok && r.FillColor == theme.Color(look.Spruce) {
			edges = append(edges, r.Position().Y, r.Position().Y+r.Size().Height)
		}
	}
	if len(edges) != 8 || abs(edges[0]-up.at(15)) > 0.01 || abs(edges[1]-up.at(10)) > 0.01 {
		t.Errorf("food lies at %v, want from %v to %v", edges, up.at(15), up.at(10))
	}
}

func abs(x float32) float32 { return max(x, -x) }

func TestColumnsAreFoundByPlace(t *testing.T) {
	c := NewPackChart()
	c.See(0, 600)
	c.Set(packs(5), 20)
	for i := range 5 {
		from, to := c.Span(i)
		if c.At((from+to)/2) != i {
			t.Errorf("the middle of column %d is found as %d", i, c.At((from+to)/2))
		}
	}
	if c.At(-1) != -1 || c.At(5*c.width+1) != -1 {
		t.Error("beside the columns a column is found")
	}
}

func TestARefusedColumnIsSaidInWords(t *testing.T) {
	c := NewPackChart()
	paint(t, &c.base, c)
	c.See(0, 600)
	list := packs(2)
	list[1].State, list[1].Notes = Refused, []string{"not to"}
	c.Set(list, 20)
	for _, object := range c.painted(t) {
		if text, ok := object.(*canvas.Text); ok && text.Text == "not to" && text.Color == theme.Color(look.Brick) {
			return
		}
	}
	t.Error("the refusal is not written")
}

func TestTheAxisNamesTheFairLevel(t *testing.T) {
	a := NewPackAxis()
	paint(t, &a.base, a)
	a.Set("%", 20, 14.6, "fair 14.6")
	d := &drawing{size: fyne.NewSize(60, 300)}
	a.paint(d)
	shown := texts(d.objects)
	if !slices.Contains(shown, "fair 14.6") || !slices.Contains(shown, "0") || slices.Contains(shown, "15") {
		t.Errorf("the axis shows %v: no figure may lie on the fair one", shown)
	}
}

func TestTheLegendNamesEveryLayer(t *testing.T) {
	l := NewLegend([]Part{{Label: "own kit", Tone: look.Line}, {Label: "food", Tone: look.Spruce}}, "fair", "limit")
	if shown := texts(paint(t, &l.base, l)); !slices.Equal(shown, []string{"own kit", "food", "fair", "limit"}) {
		t.Errorf("named are %v", shown)
	}
}

func TestWayCardsKeepApartAndAreTapped(t *testing.T) {
	c := NewWayChart("day")
	paint(t, &c.base, c)
	tapped := ""
	var stops []WayStop
	for i, name := range []string{"Hut", "Shop", "Cache", "Post"} {
		stops = append(stops, WayStop{Name: name, After: 3 + i, Used: i != 2, Lines: []WayLine{{Text: name + " holds a box of food that is long to tell of and wraps"}}, Tapped: func() { tapped = name }})
	}
	c.Set(9, stops)
	d := &drawing{size: fyne.NewSize(max(900, c.MinSize().Width), c.MinSize().Height)}
	c.paint(d)
	places := c.places(d)
	for _, pair := range [][2]int{{0, 1}, {1, 3}} {
		if places[pair[1]]-places[pair[0]] < wayCard() {
			t.Errorf("the cards of %s and %s overlap: %v", stops[pair[0]].Name, stops[pair[1]].Name, places)
		}
	}
	if places[3]+wayCard() > d.size.Width {
		t.Errorf("the last card ends at %v of %v", places[3]+wayCard(), d.size.Width)
	}
	c.taps = d.taps
	c.Tapped(&fyne.PointEvent{Position: fyne.NewPos(places[1]+20, wayTop()+60)})
	if tapped != "Shop" {
		t.Errorf("a tap on the second card gives %q", tapped)
	}
	if joined := strings.Join(texts(d.objects), "|"); !strings.Contains(joined, "day 1") || strings.Contains(joined, "Cache holds") {
		t.Errorf("written: %s", joined)
	}
}

func TestNamesOfChoicesDoNotLieOnEachOther(t *testing.T) {
	var taken []box
	for range 5 {
		taken = append(taken, clearOf(box{from: 10, to: 60, y: 100}, taken))
	}
	for i, a := range taken {
		for _, b := range taken[i+1:] {
			if abs(a.y-b.y) < 12 {
				t.Errorf("at %v and %v", a.y, b.y)
			}
		}
	}
	if b := clearOf(box{from: 70, to: 90, y: 100}, taken); b.y != 100 {
		t.Errorf("a name with room is moved to %v", b.y)
	}
}

func TestWrapKeepsEveryWord(t *testing.T) {
	c := NewWayChart("day")
	paint(t, &c.base, c)
	text := "Nobody knows how long Tarn Hut keeps a box: there is no earliest day of posting."
	lines := wrap(text, 150)
	if strings.Join(lines, " ") != text || len(lines) < 3 {
		t.Errorf("lines %q", lines)
	}
}

func TestNotesOfLargeTextsDoNotOverlap(t *testing.T) {
	c := NewPackChart()
	paint(t, &c.base, c)
	fyne.CurrentApp().Settings().SetTheme(look.Theme{Variant: look.Light, Scale: 1.5})
	c.See(0, 580)
	crew := make([]Pack, 12) // more than there is room for
	crew[0] = Pack{Name: "Ana", Notes: []string{"12.8 kg", "17.2 %"}}
	c.Set(crew, 20)
	var above []*canvas.Text
	for _, object := range c.painted(t) {
		if text, ok := object.(*canvas.Text); ok && (text.Text == "12.8 kg" || text.Text == "17.2 %") {
			above = append(above, text)
		}
	}
	if len(above) != 2 {
		t.Fatalf("%d notes", len(above))
	}
	if gap := above[1].Position().Y - above[0].Position().Y; gap < 18 { // 12 points at a scale of 1.5
		t.Errorf("lines of 18 points stand %v apart", gap)
	}
	if end := above[1].Position().Y + above[1].Size().Height; end > packHead()+6 {
		t.Errorf("the notes end at %v, the columns begin at %v", end, packHead())
	}
}

func TestTheFairLineStrikesThroughNoFigure(t *testing.T) {
	for _, c := range []struct {
		top, bottom, line, want float32
		room                    bool
	}{
		{100, 200, 300, 150, true}, {100, 116, 300, 108, true}, {100, 114, 300, 0, false}, {100, 200, 150, 159, true},
		{100, 160, 148, 130, true}, {100, 160, 131, 140, true}, {100, 120, 110, 0, false}, {100, 120, 101, 110, true},
	} {
		middle, room := besideLines(c.top, c.bottom, c.line)
		if room != c.room || room && middle != c.want {
			t.Errorf("from %v to %v with a line at %v: %v, %v", c.top, c.bottom, c.line, middle, room)
		}
	}
	// Between a fair line and a limit there is a place, or none.
	if middle, room := besideLines(100, 160, 128, 136); !room || middle != 119 {
		t.Errorf("two lines near the middle: %v, %v", middle, room)
	}
	if middle, room := besideLines(100, 130, 112, 120); room {
		t.Errorf("two lines leave no room, and the figure stands at %v", middle)
	}
}
