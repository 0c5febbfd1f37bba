package workbook

// Points of an upright page of the smaller of the two papers each way, and the
// part of it that is used, since heights are reckoned, not measured.
const (
	pageHigh = 792 // Letter
	pageWide = 595 // A4
	pageUse  = 0.9
	inch     = 72
)

// breakBetween puts page breaks before blocks that would not fit any more.
func (s *sheet) breakBetween(starts []int) {
	high := s.pageHeight()
	used := s.heightBetween(1, starts[0])
	for i, start := range starts {
		end := len(s.rows) + 1
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		block := s.heightBetween(start, end)
		if used+block > high && start > 1 {
			s.breaks = append(s.breaks, start)
			used = 0
		}
		used += block
	}
}

// pageHeight is how many points of rows fit on a page, as far as it is shrunk
// to fit one page wide.
func (s *sheet) pageHeight() float64 {
	high, wide := float64(pageHigh), float64(pageWide)
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
