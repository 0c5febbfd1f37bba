package grid

import (
	"strconv"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
)

// upright is the bar that scrolls a table up and down.
func upright(t *testing.T, s *sheet) fyne.Draggable {
	t.Helper()
	for _, area := range test.WidgetRenderer(s.scroll).Objects() {
		w, ok := area.(fyne.Widget)
		if !ok || area.Size().Height < area.Size().Width {
			continue
		}
		for _, object := range test.WidgetRenderer(w).Objects() {
			if bar, ok := object.(fyne.Draggable); ok {
				return bar
			}
		}
	}
	t.Fatal("the table has no bar")
	return nil
}

func TestABarMayBeDraggedWhileItsRowsBecomeFew(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	g := New([]Column[int]{{Title: "C", Width: 100, Text: strconv.Itoa}}, Options[int]{Key: strconv.Itoa})
	w := test.NewWindow(g)
	defer w.Close()
	w.SetPadded(false)
	w.Resize(fyne.NewSize(300, 240))
	var rows []int
	for i := range 100 {
		rows = append(rows, i)
	}
	g.SetRows(rows)
	bar := upright(t, g.table)
	bar.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, 60)})
	if g.table.scroll.Offset.Y <= 0 {
		t.Fatal("the bar scrolls nothing")
	}
	g.SetRows(rows[:2])
	w.Resize(fyne.NewSize(300, 241)) // lays the table out anew, as the driver does by itself
	bar.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, 5)})
	if offset := g.table.scroll.Offset; offset != (fyne.Position{}) {
		t.Errorf("two rows are scrolled to %v", offset)
	}
	g.SetRows(rows)
	bar.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(0, 5)})
	bar.DragEnd()
	if len(g.cells) == 0 {
		t.Error("no row is seen any more")
	}
}
