package grid

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

func TestNumbersGetTheDecimalsOfTheirColumn(t *testing.T) {
	for _, c := range []struct {
		text, sign, want string
		decimals         int
	}{
		{"60", ".", "60.00", 2}, {"60.5", ".", "60.50", 2}, {"60,5", ",", "60,50", 2}, {"60.25", ".", "60.25", 2},
		{"60", ".", "60", 0}, {"−3", ",", "−3,0", 1}, {"0", ".", "0.0", 1},
		{"", ".", "", 2}, {"–", ".", "–", 2}, {"?", ".", "?", 1}, {"at least", ".", "at least", 2},
		{"0 of 3", ".", "0 of 3", 1}, {"2027-08-25", ".", "2027-08-25", 1}, {"1.2.3", ".", "1.2.3", 4}, {"4.", ".", "4.", 2},
	} {
		if got := withDecimals(c.text, c.decimals, c.sign); got != c.want {
			t.Errorf("%q with %d decimals is %q, want %q", c.text, c.decimals, got, c.want)
		}
	}
}

// The figures of a column stand in line; what is edited is what was stored.
func TestAColumnShowsTheSameDecimals(t *testing.T) {
	test.NewTempApp(t)
	texts := map[string]string{"a": "60", "b": "7.25", "c": "–"}
	g := New([]Column[string]{
		{Title: "kg", Width: 80, Right: true, Text: func(row string) string { return texts[row] }, Set: func(string, string) error { return nil }},
		{Title: "name", Width: 80, Text: func(string) string { return "1" }},
	}, Options[string]{Key: func(row string) string { return row }})
	window := test.NewTempWindow(t, g)
	window.Resize(fyne.NewSize(300, 200))
	g.SetRows([]string{"a", "b", "c"})
	shown := map[widget.TableCellID]string{}
	for object, id := range g.cells {
		if object.Visible() {
			shown[id] = object.look.text
		}
	}
	for row, want := range []string{"60.00", "7.25", "–"} {
		if got := shown[widget.TableCellID{Row: row}]; got != want {
			t.Errorf("row %d shows %q, want %q", row, got, want)
		}
	}
	if got := shown[widget.TableCellID{Row: 0, Col: 1}]; got != "1" {
		t.Errorf("a column of words shows %q", got)
	}
	g.moveTo(widget.TableCellID{Row: 0, Col: 0})
	g.openEditor()
	if g.editor.Text != "60" {
		t.Errorf("the editor starts from %q", g.editor.Text)
	}
}
