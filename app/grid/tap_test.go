package grid

import (
	"fmt"
	"strconv"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"

	"sumpter/app/look"
)

// doubleTap taps twice at once.
func (b *bench) doubleTap(at fyne.Position) {
	noon := time.Date(2026, 7, 20, 12, 0, 0, 0, time.UTC)
	b.now = func() time.Time { return noon }
	b.lastTap = tap{}
	b.table.Tapped(&fyne.PointEvent{Position: at})
	b.table.Tapped(&fyne.PointEvent{Position: at})
}

// With a DoubleTapped the toolkit would hold back the first of two taps.
func TestTwoSlowTapsEditNothing(t *testing.T) {
	if _, holds := any(&sheet{}).(fyne.DoubleTappable); holds {
		t.Error("a tap waits for a second one, and what is typed meanwhile is lost")
	}
	b := newBench(t)
	at := fyne.NewPos(190, 50)
	noon := time.Date(2026, 7, 20, 12, 0, 0, 0, time.UTC)
	b.now = func() time.Time { return noon }
	b.table.Tapped(&fyne.PointEvent{Position: at})
	noon = noon.Add(time.Second)
	b.table.Tapped(&fyne.PointEvent{Position: at})
	if _, column := b.Cursor(); column != 1 || b.editor.open() {
		t.Fatalf("the cursor is in column %d, the editor open: %v", column, b.editor.open())
	}
	noon = noon.Add(100 * time.Millisecond)
	b.table.Tapped(&fyne.PointEvent{Position: at})
	if !b.editor.open() {
		t.Error("two quick taps do not edit")
	}
}

// Wherever a table is scrolled to, the cell that is seen under the pointer is
// the one that is meant.
func TestATapMeansTheCellThatIsSeen(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	rapid.Check(t, func(t *rapid.T) {
		sticky := rapid.IntRange(0, 2).Draw(t, "sticky")
		var columns []Column[int]
		for i := range rapid.IntRange(3, 16).Draw(t, "columns") {
			columns = append(columns, Column[int]{Title: "C", Width: float32(rapid.IntRange(40, 200).Draw(t, fmt.Sprint("width ", i))), Text: strconv.Itoa})
		}
		g := New(columns, Options[int]{Key: strconv.Itoa, Sticky: sticky})
		w := test.NewWindow(g)
		defer w.Close()
		w.SetPadded(false)
		w.Resize(fyne.NewSize(700, 240))
		var rows []int
		for i := range 40 {
			rows = append(rows, i)
		}
		g.SetRows(rows)
		driver := fyne.CurrentApp().Driver()
		for range 6 {
			g.MoveCursor(rapid.IntRange(0, len(rows)-1).Draw(t, "row"), rapid.IntRange(0, len(columns)-1).Draw(t, "column"))
			scroll := g.table.scroll
			drawn := test.WidgetRenderer(scroll.Content.(fyne.Widget)).Objects()
			for _, object := range drawn {
				c, ok := object.(*cell)
				id, shown := g.cells[c]
				if !ok || !shown {
					continue
				}
				middle := driver.AbsolutePositionForObject(c).Add(fyne.NewPos(c.Size().Width/2, c.Size().Height/2)).Subtract(driver.AbsolutePositionForObject(g.table))
				if middle.X < scroll.Position().X || middle.X >= 700 || middle.Y < scroll.Position().Y || middle.Y >= 240 {
					continue
				}
				if got, ok := g.cellAt(middle); !ok || got != id {
					t.Fatalf("scrolled to %v, sticky %d: in the middle of cell %v, at %v, stands %v", scroll.Offset, sticky, id, middle, got)
				}
			}
		}
	})
}

func TestATapOnAColumnThatStaysMeansIt(t *testing.T) {
	b := newBench(t)
	b.options.Sticky = 1
	b.table.StickyColumnCount = 1
	b.table.Refresh()
	for at, want := range map[float32]int{20: 0, 155: 0, 175: 1} {
		if id, ok := b.cellAt(fyne.NewPos(at, 50)); !ok || id.Col != want {
			t.Errorf("at %.0f stands column %d, want %d", at, id.Col, want)
		}
	}
	if id, ok := b.cellAt(fyne.NewPos(20, 5)); ok {
		t.Errorf("on the heads stands cell %v", id)
	}
}
