package workbook

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/xuri/excelize/v2"
)

// book is a file being written.
type book struct {
	file   *excelize.File
	styles *styles
	title  string
	begun  bool // has a sheet
}

// emit writes one sheet. Everything but the rows comes first: what is set
// after the rows of a sheet that is written in one pass would be lost.
func (b *book) emit(ctx context.Context, s *sheet) error {
	if err := b.open(s.name); err != nil {
		return err
	}
	for _, step := range []func(*sheet) error{b.setWidths, b.setPage, b.setMarks, b.setTicks, b.setCharts, b.setLinks} {
		if err := step(s); err != nil {
			return fmt.Errorf("sheet %q: %w", s.name, err)
		}
	}
	writer, err := b.file.NewStreamWriter(s.name)
	if err != nil {
		return err
	}
	if err := b.setFrame(writer, s); err != nil {
		return fmt.Errorf("sheet %q: %w", s.name, err)
	}
	if err := b.writeRows(ctx, writer, s); err != nil {
		return fmt.Errorf("sheet %q: %w", s.name, err)
	}
	if s.table != nil {
		if err := writer.AddTable(s.table); err != nil {
			return fmt.Errorf("sheet %q: %w", s.name, err)
		}
	}
	return writer.Flush()
}

// open makes a sheet. The one every new file has becomes the first: taking it
// away afterwards would make the library read all others back.
func (b *book) open(name string) error {
	if !b.begun {
		b.begun = true
		return b.file.SetSheetName("Sheet1", name)
	}
	_, err := b.file.NewSheet(name)
	return err
}

// setWidths goes from the right: the library puts each column before those
// there are, and the file format wants them from the left. It comes before the
// charts, which are anchored by the widths.
func (b *book) setWidths(s *sheet) error {
	for i, width := range slices.Backward(s.widths) {
		name := columnName(i)
		if err := b.file.SetColWidth(s.name, name, name, width+padding); err != nil {
			return err
		}
	}
	return nil
}

// setFrame sets frozen heads and page breaks.
func (b *book) setFrame(writer *excelize.StreamWriter, s *sheet) error {
	if s.headRow > 0 || s.headCols > 0 {
		corner, err := excelize.CoordinatesToCellName(s.headCols+1, s.headRow+1)
		if err != nil {
			return err
		}
		pane := "bottomLeft"
		if s.headCols > 0 {
			pane = "bottomRight"
		}
		err = writer.SetPanes(&excelize.Panes{Freeze: true, XSplit: s.headCols, YSplit: s.headRow, TopLeftCell: corner, ActivePane: pane})
		if err != nil {
			return err
		}
	}
	for _, number := range s.breaks {
		if err := writer.InsertPageBreak(fmt.Sprintf("A%d", number)); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) writeRows(ctx context.Context, writer *excelize.StreamWriter, s *sheet) error {
	for i, r := range s.rows {
		if i%500 == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		if len(r.cells) == 0 {
			continue
		}
		values, err := b.values(r)
		if err != nil {
			return err
		}
		at := fmt.Sprintf("A%d", i+1)
		if err := writer.SetRow(at, values, excelize.RowOpts{Height: s.heightOf(r)}); err != nil {
			return err
		}
		if err := mergeSpans(writer, r, i+1); err != nil {
			return err
		}
	}
	return nil
}

func mergeSpans(writer *excelize.StreamWriter, r row, number int) error {
	for i, c := range r.cells {
		if c.span < 2 {
			continue
		}
		from, err := excelize.CoordinatesToCellName(i+1, number)
		if err != nil {
			return err
		}
		to, err := excelize.CoordinatesToCellName(i+c.span, number)
		if err != nil {
			return err
		}
		if err := writer.MergeCell(from, to); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) values(r row) ([]any, error) {
	values := make([]any, len(r.cells))
	for i, c := range r.cells {
		id, err := b.styles.id(c.look)
		if err != nil {
			return nil, err
		}
		value := c.value
		if text, ok := value.(string); ok {
			value = clean(text)
		}
		values[i] = excelize.Cell{StyleID: id, Formula: c.formula, Value: value}
	}
	return values, nil
}

// longestText is the most a cell may hold (ECMA-376 readers); the library
// would cut without a word.
const longestText = 32767

// clean takes out the control characters that XML 1.0 forbids and says where
// a text had to be cut.
func clean(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, text)
	if len(text) <= longestText/2 {
		return text
	}
	runes := []rune(text)
	if len(runes) <= longestText/2 {
		return text
	}
	return string(runes[:longestText/2]) + " … (cut: too long for a cell)"
}
