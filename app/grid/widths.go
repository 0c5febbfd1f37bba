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

// Resize gives columns whose texts are cut the room that is left at the right,
// and the blank column at the end its width, which hangs on that of the table.
func (g *Grid[R]) Resize(size fyne.Size) {
	wider := size.Width != g.Size().Width
	g.BaseWidget.Resize(size)
	if wider {
		g.stretch()
	}
	if spare := g.spareColumn(); spare > 0 {
		g.table.SetColumnWidth(len(g.columns), spare)
	}
}

// mostRead bounds the rows whose texts are looked at.
const mostRead = 200

// stretch shares the room right of the last column among those of texts that do
// not fit, up to what they need.
func (g *Grid[R]) stretch() {
	if len(g.widths) == 0 || len(g.rows) == 0 || g.startOf(len(g.widths)) >= g.Size().Width-1 {
		return
	}
	lacking := make([]float32, len(g.columns))
	var short []int
	for i, column := range g.columns {
		if column.Right {
			continue // numbers have their room
		}
		longest := ""
		for _, row := range g.rows[:min(len(g.rows), mostRead)] {
			if text := column.Text(row); len(text) > len(longest) {
				longest = text
			}
		}
		need := measure(longest, theme.TextSize(), false) + 3*cellInset // one for letters wider than those measured
		if lacking[i] = need - g.widths[i]; lacking[i] > 0 {
			short = append(short, i)
		}
	}
	room := g.Size().Width - 1 - g.startOf(len(g.widths))
	// Who lacks least first, so that as many as can be are whole.
	slices.SortStableFunc(short, func(a, b int) int { return cmp.Compare(lacking[a], lacking[b]) })
	for n, i := range short {
		more := min(lacking[i], room/float32(len(short)-n))
		room -= more
		g.setWidth(i, g.widths[i]+more)
	}
}
