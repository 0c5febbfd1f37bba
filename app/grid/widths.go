package grid

import (
	"cmp"
	"slices"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// rowHeight is that of a usual row.
func rowHeight() float32 { return look.RowHeight * look.Scale() }

// width is as wide as the column asks for in the reader's size of text, and
// has room for its head in the reader's language.
func (g *Grid[R]) width(column Column[R]) float32 {
	head := measure(column.Title, theme.TextSize(), true)
	if column.Unit != "" {
		head += look.SpaceSmall + measure(column.Unit, theme.CaptionTextSize(), false)
	}
	return max(column.Width*look.Scale(), head+2*cellInset)
}

// giveWidths gives every column its width.
func (g *Grid[R]) giveWidths() {
	for i, column := range g.columns {
		g.setWidth(i, g.width(column))
	}
	g.fitChoices()
}

// fitChoices gives columns room for the words they offer, once there is a row
// to ask; half as wide again at the most, since some offer long names.
func (g *Grid[R]) fitChoices() {
	if g.fitted || len(g.rows) == 0 {
		return
	}
	g.fitted = true
	for i, column := range g.columns {
		if column.Choices == nil {
			continue
		}
		least := g.width(column)
		g.setWidth(i, max(least, min(widest(column.Choices(g.rows[0]))+2*cellInset, 1.5*least)))
	}
}

// mostMeasured is how many choices are measured: among so many that have the
// most letters stands the widest, or one hardly narrower.
const mostMeasured = 8

// widest is the width of the widest choice.
func widest(choices []string) float32 {
	longest := slices.SortedFunc(slices.Values(choices), func(a, b string) int {
		return cmp.Compare(utf8.RuneCountInString(b), utf8.RuneCountInString(a))
	})
	most := float32(0)
	for _, choice := range longest[:min(mostMeasured, len(longest))] {
		most = max(most, measure(choice, theme.TextSize(), false))
	}
	return most
}

func measure(text string, size float32, bold bool) float32 {
	return fyne.MeasureText(text, size, fyne.TextStyle{Bold: bold}).Width
}

// Resize gives the width of the blank column at the end, which hangs on the
// width of the table.
func (g *Grid[R]) Resize(size fyne.Size) {
	g.BaseWidget.Resize(size)
	if spare := g.spareColumn(); spare > 0 {
		g.table.SetColumnWidth(len(g.columns), spare)
	}
}
