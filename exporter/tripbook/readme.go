package tripbook

// howTo is what stands on the first sheet, a paragraph each.
var howTo = []string{
	"Fill in the sheets from left to right. A dark heading must be filled in for each row; a light one may stay empty, and the help says what an empty cell means.",
	"Click on a cell: its help and, where there is a choice, a list appear. Sheets refer to each other by name, so write a name the same everywhere.",
	"Numbers are read in the unit of their heading. You may change the unit in a heading, (kg) to (lb) say, or write one into a cell: 160 lb.",
	"You may move, sort, hide and add columns and sheets. The program leaves aside what it does not know and says so. Several things in one cell have ; between them.",
	"Leave empty what you do not know, above all allergens: unknown is never taken for safe, and a guess can hurt somebody. Labels and local rules go before what stands here.",
	"If something cannot be read, nothing is taken over, and each fault is named with its sheet and cell.",
}

var readMeWidths = []float64{20, 26, 9, 56, 52}

// readMe writes the first sheet: how to fill in the workbook, and every column
// with what it means and what may stand in it.
func (b *book) readMe(ours []sheet) error {
	for column, width := range readMeWidths {
		if err := b.width(sheetReadMe, column, width); err != nil {
			return err
		}
	}
	if err := b.file.SetRowHeight(sheetReadMe, 1, 1.6*titleSize); err != nil {
		return err
	}
	if err := b.styled(sheetReadMe, "A1", "The trip, to fill in", cellStyle{bold: true, size: titleSize}); err != nil {
		return err
	}
	row := 2
	for _, paragraph := range howTo {
		if err := b.paragraph(row, paragraph); err != nil {
			return err
		}
		row++
	}
	row++
	for _, s := range ours {
		var err error
		if row, err = b.explain(s, row); err != nil {
			return err
		}
	}
	return b.paper(sheetReadMe, charactersOnPage)
}

// paragraph writes a text over the width of the page.
func (b *book) paragraph(row int, text string) error {
	first, last := cellName(0, row), cellName(4, row)
	if err := b.file.MergeCell(sheetReadMe, first, last); err != nil {
		return err
	}
	width := 0.0
	for _, column := range readMeWidths {
		width += column
	}
	if err := b.high(row, linesOf(text, width)); err != nil {
		return err
	}
	return b.styled(sheetReadMe, first, text, cellStyle{})
}

// explain writes the columns of one sheet and gives the next free row.
func (b *book) explain(s sheet, row int) (int, error) {
	if err := b.styled(sheetReadMe, cellName(0, row), s.title(), cellStyle{bold: true, size: 12, colour: needDark}); err != nil {
		return 0, err
	}
	if err := b.paragraph(row+1, s.purpose()); err != nil {
		return 0, err
	}
	row += 2
	for j, text := range []string{"Sheet", "Column", "Unit", "What it means", "What may stand there"} {
		if err := b.headingCell(sheetReadMe, cellName(j, row), text, false); err != nil {
			return 0, err
		}
	}
	for _, h := range s.heads() {
		row++
		most := 1
		for j, text := range []string{s.title(), h.title, h.unit(b.scope.system).symbol, h.help, h.allowed(b.scope)} {
			most = max(most, linesOf(text, readMeWidths[j]))
			look := cellStyle{ruled: true, bold: j == 1 && h.needed}
			if err := b.styled(sheetReadMe, cellName(j, row), text, look); err != nil {
				return 0, err
			}
		}
		if err := b.high(row, most); err != nil {
			return 0, err
		}
	}
	return row + 2, nil
}

// linesOf reckons how many lines a text takes in a column; no program that
// opens the file does it for merged cells.
func linesOf(text string, width float64) int {
	return 1 + int(float64(len([]rune(text)))*0.88/width)
}

// high makes a row as high as its lines.
func (b *book) high(row, lines int) error {
	return b.file.SetRowHeight(sheetReadMe, row, 3+float64(lines)*1.3*fontSize)
}
