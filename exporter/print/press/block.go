package press

import (
	"sort"

	"sumpter/exporter/print/page"
	"sumpter/exporter/print/typeset"
)

// Style is how text looks.
type Style struct {
	Size Points
	Bold bool
	Ink  page.Ink
}

// Distances of lines and of the letters within them, as parts of the size of
// the text, for a font with the x-height of the bundled one.
const (
	lineHeight = 1.22
	ascent     = 0.95
)

// Block is something drawn that is not to be cut. Draw puts it with its upper
// left corner at a place.
type Block struct {
	Height Points
	Draw   func(on *page.Page, x, y Points)
}

// Nothing is a block of empty space.
func Nothing(height Points) Block {
	return Block{height, func(*page.Page, Points, Points) {}}
}

// Spans sets pieces of text, some of them bold, as lines of at most a width.
func (p *Press) Spans(style Style, width Points, spans ...typeset.Span) Block {
	return Lines(style, p.Set.Paragraph(style.Size, width, spans...))
}

// Text sets text as lines of at most a width.
func (p *Press) Text(style Style, width Points, text string) Block {
	return p.Spans(style, width, typeset.Span{Text: text, Bold: style.Bold})
}

// Lines puts lines below each other.
func Lines(style Style, lines []typeset.Line) Block {
	step := style.Size * lineHeight
	return Block{step * Points(len(lines)), func(on *page.Page, x, y Points) {
		for i, line := range lines {
			on.Add(page.Text{X: x, Y: y + step*Points(i) + style.Size*ascent, Line: line, Ink: style.Ink})
		}
	}}
}

// OneLine sets text on one line, smaller if it is too long, and broken into
// lines if it is still too long at two thirds of the size.
func (p *Press) OneLine(style Style, width Points, text string) Block {
	span := typeset.Span{Text: text, Bold: style.Bold}
	if full := p.Set.Width(style.Size, span); full > width {
		style.Size *= max(2.0/3, width/full*0.999)
	}
	return p.Spans(style, width, span)
}

// Cut sets text on one line and ends it with dots where it is too long.
func (p *Press) Cut(style Style, width Points, text string) Block {
	span := typeset.Span{Text: text, Bold: style.Bold}
	if p.Set.Width(style.Size, span) > width {
		letters := []rune(text)
		keep := sort.Search(len(letters), func(n int) bool {
			return p.Set.Width(style.Size, typeset.Span{Text: string(letters[:n+1]) + "…", Bold: style.Bold}) > width
		})
		span.Text = string(letters[:keep]) + "…"
	}
	return Lines(style, []typeset.Line{p.Set.Line(style.Size, span)})
}

// Right moves a text to the right edge of a width.
func (p *Press) Right(style Style, width Points, text string) Block {
	line := p.Set.Line(style.Size, typeset.Span{Text: text, Bold: style.Bold})
	block := Lines(style, []typeset.Line{line})
	return block.Moved(width-line.Width, 0)
}

// Moved draws a block beside and below its place.
func (b Block) Moved(right, down Points) Block {
	return Block{b.Height + down, func(on *page.Page, x, y Points) { b.Draw(on, x+right, y+down) }}
}

// Stack puts blocks below each other with a gap between them. Blocks without
// height take no gap.
func Stack(gap Points, blocks ...Block) Block {
	var height Points
	places := make([]Points, len(blocks))
	for i, block := range blocks {
		if block.Height > 0 && height > 0 {
			height += gap
		}
		places[i] = height
		height += block.Height
	}
	return Block{height, func(on *page.Page, x, y Points) {
		for i, block := range blocks {
			if block.Height > 0 {
				block.Draw(on, x, y+places[i])
			}
		}
	}}
}

// Beside puts blocks at distances from the left, their upper edges in line.
func Beside(blocks ...Placed) Block {
	var height Points
	for _, b := range blocks {
		height = max(height, b.Block.Height)
	}
	return Block{height, func(on *page.Page, x, y Points) {
		for _, b := range blocks {
			b.Block.Draw(on, x+b.X, y)
		}
	}}
}

// Placed is a block at a distance from the left.
type Placed struct {
	X     Points
	Block Block
}

// Banner sets text on a dark ground: what nobody may overlook. Pad is the
// ground around the text, width all of it.
func (p *Press) Banner(style Style, ground page.Ink, pad, width Points, spans ...typeset.Span) Block {
	style.Ink = p.Inks.Paper
	text := p.Spans(style, width-2*pad, spans...)
	height := text.Height + pad
	return Block{height, func(on *page.Page, x, y Points) {
		on.Add(page.Box{X: x, Y: y, Width: width, Height: height, Ink: ground})
		text.Draw(on, x+pad, y+pad/2)
	}}
}

// Framed sets text in a double frame; dashed for what is not known.
func (p *Press) Framed(style Style, dashed bool, pad, width Points, spans ...typeset.Span) Block {
	outer, gap, inner := style.Size*0.12, style.Size*0.1, style.Size*0.06
	edge := outer + gap + inner
	text := p.Spans(style, width-2*(pad+edge), spans...)
	height := text.Height + pad + 2*edge
	return Block{height, func(on *page.Page, x, y Points) {
		rules := page.Frame(x, y, width, height, outer, style.Ink)
		rules = append(rules, page.Frame(x+outer+gap, y+outer+gap, width-2*(outer+gap), height-2*(outer+gap), inner, style.Ink)...)
		for _, rule := range rules {
			rule := rule.(page.Rule)
			if dashed {
				rule.Dash = style.Size * 0.35
			}
			on.Add(rule)
		}
		text.Draw(on, x+edge+pad, y+edge+pad/2)
	}}
}
