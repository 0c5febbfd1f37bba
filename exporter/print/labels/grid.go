package labels

import (
	"sumpter/domain/prose"
	"sumpter/exporter/print/press"
)

const mm = press.Millimetre

// Grid is how labels lie on a sheet.
type Grid struct {
	Paper         press.Paper
	Columns, Rows int
	Width, Height press.Points // of one label
	Left, Top     press.Points // margins before the first label
	AcrossGap     press.Points // between columns
	DownGap       press.Points // between rows
	Cut           bool         // plain paper: lines show where to cut
}

// Least a label can be: below, code and allergens cannot be read.
const (
	leastWidth  = 45 * mm
	leastHeight = 25 * mm
	mostCells   = 200
)

// Count is how many labels are on a full sheet.
func (g Grid) Count() int { return g.Columns * g.Rows }

// Fault is why labels cannot be printed as somebody wants them.
type Fault struct{ prose.Text }

// Error says it in English.
func (f *Fault) Error() string { return f.String() }

// Check tells why labels cannot be printed so; the error is a *Fault.
func (g Grid) Check() error {
	across := g.Left + press.Points(g.Columns)*g.Width + press.Points(g.Columns-1)*g.AcrossGap
	down := g.Top + press.Points(g.Rows)*g.Height + press.Points(g.Rows-1)*g.DownGap
	const slack = 0.5 // makers round to tenths of a millimetre
	switch {
	case g.Columns < 1 || g.Rows < 1 || g.Count() > mostCells:
		return &Fault{prose.Say("A sheet has 1 to %d labels, not %d × %d.", mostCells, g.Columns, g.Rows)}
	case !(g.Width >= leastWidth) || !(g.Height >= leastHeight):
		return &Fault{prose.Say("A label of %.0f × %.0f mm is too small for its code and allergens: take at least %.0f × %.0f mm.",
			float64(g.Width/mm), float64(g.Height/mm), float64(leastWidth/mm), float64(leastHeight/mm))}
	case !(g.Left >= 0) || !(g.Top >= 0) || !(g.AcrossGap >= 0) || !(g.DownGap >= 0):
		return &Fault{prose.Say("Margins and gaps of a label sheet are not negative.")}
	case across > g.Paper.Width+slack:
		return &Fault{prose.Say("The labels take %.1f mm across, and %s paper has %.1f mm: make them narrower or take fewer columns.",
			float64(across/mm), g.Paper.Name, float64(g.Paper.Width/mm))}
	case down > g.Paper.Height+slack:
		return &Fault{prose.Say("The labels take %.1f mm down, and %s paper has %.1f mm: make them lower or take fewer rows.",
			float64(down/mm), g.Paper.Name, float64(g.Paper.Height/mm))}
	}
	return nil
}

// place gives the upper left corner of a label, counted along the rows from 0.
func (g Grid) place(n int) (x, y press.Points) {
	return g.Left + press.Points(n%g.Columns)*(g.Width+g.AcrossGap), g.Top + press.Points(n/g.Columns)*(g.Height+g.DownGap)
}

// Sheet is a grid with a name.
type Sheet struct {
	Key  string // stable: "a4-2x7"
	Grid Grid
}

// Sheets lists the label sheets sold almost everywhere, and plain paper to
// cut, largest labels first (common practice, no source; sizes from memory).
func Sheets() []Sheet {
	return []Sheet{
		{"a4-2x4", on(press.A4, 2, 4, 99.1, 67.7, 4.65, 13.1, 2.5)},
		{"a4-2x5", on(press.A4, 2, 5, 99.1, 57, 4.65, 6, 2.5)},
		{"a4-2x7", on(press.A4, 2, 7, 99.1, 38.1, 4.65, 15.15, 2.5)},
		{"a4-3x7", on(press.A4, 3, 7, 63.5, 38.1, 7.2, 15.15, 2.55)},
		{"a4-3x8", on(press.A4, 3, 8, 70, 37, 0, 0.5, 0)},
		{"a4-cut-2x5", cut(press.A4, 2, 5)},
		{"letter-2x3", on(press.Letter, 2, 3, 101.6, 84.67, 3.97, 12.7, 4.76)},
		{"letter-2x5", on(press.Letter, 2, 5, 101.6, 50.8, 3.97, 12.7, 4.76)},
		{"letter-3x10", on(press.Letter, 3, 10, 66.68, 25.4, 4.76, 12.7, 3.18)},
		{"letter-cut-2x5", cut(press.Letter, 2, 5)},
	}
}

// Usual is the sheet taken where nobody chose one: room for everything, on
// paper that everybody has.
func Usual(paper press.Paper) Sheet {
	for _, sheet := range Sheets() {
		if sheet.Grid.Paper == paper && sheet.Grid.Cut {
			return sheet
		}
	}
	return Sheets()[0]
}

// on gives a grid from millimetres.
func on(paper press.Paper, columns, rows int, width, height, left, top, across press.Points) Grid {
	return Grid{Paper: paper, Columns: columns, Rows: rows, Width: width * mm, Height: height * mm, Left: left * mm, Top: top * mm, AcrossGap: across * mm}
}

// cut parts plain paper evenly, with margins that every printer leaves.
func cut(paper press.Paper, columns, rows int) Grid {
	const margin = 8 * mm
	return Grid{
		Paper: paper, Columns: columns, Rows: rows, Left: margin, Top: margin, Cut: true,
		Width: (paper.Width - 2*margin) / press.Points(columns), Height: (paper.Height - 2*margin) / press.Points(rows),
	}
}
