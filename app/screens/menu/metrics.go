package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
	"sumpter/domain/trip"
)

// metrics are the sizes of the grid, which follow the reader's size of text.
type metrics struct {
	body, caption     float32 // sizes of text
	line              float32 // height of a line of body text
	inset             float32 // left of the texts in a cell
	sign              float32
	figuresAt, wordAt float32 // heights in a cell
	cell              fyne.Size
	pitch             fyne.Size // from one cell to the next
	head              float32   // height of the line of days
	side              float32   // width of the column of meals
}

const (
	gap float32 = 6 // between cells
	rim float32 = 3 // around the grid, for the frame of the cursor
)

func measure() metrics {
	scale := theme.TextSize() / 14
	m := metrics{
		body: theme.TextSize(), caption: theme.CaptionTextSize(), line: 19 * scale, inset: 11, sign: 13 * scale,
		figuresAt: 5 + nameLines*19*scale + 2, cell: fyne.NewSize(154*scale, 104*scale), head: 44 * scale, side: 92 * scale,
	}
	for _, meal := range trip.Meals() {
		m.side = max(m.side, fyne.MeasureText(mealTitle(meal), m.body, fyne.TextStyle{Bold: true}).Width+look.Space)
	}
	m.wordAt = m.figuresAt + 17*scale
	m.pitch = fyne.NewSize(m.cell.Width+gap, m.cell.Height+gap)
	return m
}

// corner is the upper left corner of a cell.
func (m metrics) corner(at place) fyne.Position {
	return fyne.NewPos(rim+float32(at.column)*m.pitch.Width, rim+float32(at.row)*m.pitch.Height)
}

// at finds the cell under a point of the grid.
func (m metrics) at(p fyne.Position) place {
	if p.X < 0 || p.Y < 0 {
		return place{-1, -1}
	}
	return place{row: int(max(0, p.Y-rim) / m.pitch.Height), column: int(max(0, p.X-rim) / m.pitch.Width)}
}

// place is a cell of the grid, from 0.
type place struct{ row, column int }
