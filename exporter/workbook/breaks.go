package workbook

// Points of an upright page, and the part of it that is used, since heights
// are reckoned, not measured.
const (
	highA4, wideA4         = 842, 595
	highLetter, wideLetter = 792, 612
	pageUse                = 0.95
	inch                   = 72
)

// breakPages puts page breaks before blocks, and a chart, that would not fit
// any more on their page.
func (s *sheet) breakPages() {
	high, used := s.pageHeight(), 0.0
	for i, start := range s.blocks {
		end := len(s.rows) + 1
		if i+1 < len(s.blocks) {
			end = s.blocks[i+1]
		}
		if i == 0 {
			used = s.heightBetween(1, start)
		}
		block := s.heightBetween(start, end)
		if used+block > high && start > 1 {
			s.breaks = append(s.breaks, start)
			used = 0
		}
		used += block
	}
	for _, c := range s.charts {
		if s.heightBetween(1, c.row)+float64(c.rows)*ordinaryHeight > high {
			s.breaks = append(s.breaks, c.row)
		}
	}
}

// pageHeight is how many points of rows fit on a page, as far as it is shrunk
// to fit one page wide.
func (s *sheet) pageHeight() float64 {
	high, wide := float64(highA4), float64(wideA4)
	if s.letter {
		high, wide = highLetter, wideLetter
	}
	if s.landscape {
		high, wide = wide, high
	}
	const letter, edge = 5.25, 4 // points of a digit and of the edges of a column
	width := 0.0
	for _, w := range s.widths {
		width += (w+padding)*letter + edge
	}
	scale := min(1, (wide-2*margin*inch)/width)
	return (high - (margin+footMargin)*inch) * pageUse / scale
}

func (s *sheet) heightBetween(first, end int) float64 {
	sum := 0.0
	for i := first; i < end && i <= len(s.rows); i++ {
		sum += s.heightOf(s.rows[i-1])
	}
	return sum
}
