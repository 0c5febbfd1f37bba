package foods

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// Measures of a reader at the usual size of text.
const (
	readerRowHeight float32 = 24
	readerWord0     float32 = 56  // least width of a word
	readerWord1     float32 = 90  // no word needs more
	readerName0     float32 = 120 // least width of the names
	readerMargin    float32 = 4
	readerGap       float32 = 12 // between a name and its note
)

// rowHeight is that of a row at the reader's size of text.
func rowHeight() float32 { return readerRowHeight * look.Scale() }

// lineHeight is that of a line of text.
func lineHeight() float32 { return captionSize("M", false).Height }

func captionSize(text string, bold bool) fyne.Size {
	return fyne.MeasureText(text, theme.CaptionTextSize(), fyne.TextStyle{Bold: bold})
}

// nameWidth is how wide the name stands; it is bold where somebody is named.
func (row readerRow) nameWidth() float32 { return captionSize(row.name, row.note != "").Width }

// wide is what a row takes before the words, note and all.
func (row readerRow) wide() float32 {
	wide := readerMargin + row.nameWidth() + readerGap
	if row.note != "" {
		wide += captionSize(row.note, false).Width + readerMargin
	}
	return wide
}

// narrowest is how wide each word is at least, so that none touches the next,
// and all of them together.
func (r *reader) narrowest() (each []float32, all float32) {
	each = make([]float32, len(r.words))
	for i, word := range r.words {
		each[i] = max(readerWord0*look.Scale(), captionSize(word.text, true).Width+2*look.SpaceSmall)
		all += each[i]
	}
	return each, all
}

// least is the least width of a reader.
func (r *reader) least() float32 {
	_, words := r.narrowest()
	return readerName0*look.Scale() + words
}

// columns gives where each word begins, and where the last ends. Names come
// before air around the words: a name cut off is not read.
func (r *reader) columns(width float32) (edges []float32) {
	each, words := r.narrowest()
	var names float32
	for _, row := range r.rows {
		names = max(names, row.wide())
	}
	if spare := width - words - names; spare > 0 {
		for i := range each {
			each[i] = max(each[i], min(readerWord1*look.Scale(), each[i]+spare/float32(len(each))))
		}
	}
	edges = make([]float32, len(each)+1)
	edges[len(each)] = width
	for i := len(each) - 1; i >= 0; i-- {
		edges[i] = max(0, edges[i+1]-each[i])
	}
	return edges
}

// beneath is the note in lines below the name, where it has no room beside it
// before the words.
func (r *reader) beneath(row readerRow, left, width float32) []string {
	if row.note == "" || row.wide() <= left {
		return nil
	}
	return look.Wrap(row.note, theme.CaptionTextSize(), fyne.TextStyle{}, width-3*readerMargin)
}

// tops gives where each row begins below the heads, and where the last ends.
func (r *reader) tops(width float32) []float32 {
	left, tops := r.columns(width)[0], make([]float32, len(r.rows)+1)
	tops[0] = rowHeight()
	for i, row := range r.rows {
		tops[i+1] = tops[i] + rowHeight() + lineHeight()*float32(len(r.beneath(row, left, width)))
	}
	return tops
}

// rowAt is the row at a height, -1 if none is.
func (r *reader) rowAt(height float32) int {
	tops := r.tops(r.Size().Width)
	for i := range r.rows {
		if height >= tops[i] && height < tops[i+1] {
			return i
		}
	}
	return -1
}
