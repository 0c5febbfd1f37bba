package grid

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
)

func wordy() *Grid[int] {
	return New([]Column[int]{
		{Title: "Mittagessen aus den Rucksäcken", Unit: "kcal am Tag", Width: 60, Text: func(int) string { return "1" }},
		{Title: "A", Width: 60, Text: func(int) string { return "no" }, Choices: func(int) []string { return []string{"no", "not given"} }},
		{Title: "B", Width: 100, Text: func(int) string { return "x" }, Choices: func(int) []string { return []string{"a choice that is longer than any column should ever be"} }},
	}, Options[int]{Key: func(int) string { return "k" }})
}

// widthOf is how wide the cells of a column are on the screen.
func widthOf(g *Grid[int], column int) float32 {
	for c, id := range g.cells {
		if id.Col == column && c.Visible() {
			return c.Size().Width
		}
	}
	return 0
}

func TestColumnsHaveRoomForHeadsAndChoices(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.Theme{Variant: look.Light})
	g := wordy()
	window := test.NewTempWindow(t, g)
	window.Resize(fyne.NewSize(1200, 200))
	g.SetRows([]int{1})
	head := measure("Mittagessen aus den Rucksäcken", 14, true) + measure("kcal am Tag", 12, false)
	if got := widthOf(g, 0); got < head {
		t.Errorf("the column is %v wide, its head %v", got, head)
	}
	if got, word := widthOf(g, 1), measure("not given", 14, false)+2*cellInset; got < word {
		t.Errorf("the column is %v wide, a choice needs %v", got, word)
	}
	if got := widthOf(g, 2); got != 150 {
		t.Errorf("a long choice widens a column of 100 to %v", got)
	}
}

func TestTablesGrowWithTheText(t *testing.T) {
	app := test.NewTempApp(t)
	app.Settings().SetTheme(look.Theme{Variant: look.Light, Scale: 2})
	g := wordy()
	window := test.NewTempWindow(t, g)
	window.Resize(fyne.NewSize(1600, 300))
	g.SetRows([]int{1})
	if got := widthOf(g, 2); got < 200 {
		t.Errorf("with text of twice the size a column of 100 is %v wide", got)
	}
	for c := range g.cells {
		if c.text.MinSize().Height > c.Size().Height {
			t.Errorf("a row of %v cuts text of %v", c.Size().Height, c.text.MinSize().Height)
		}
	}
}
