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

// Block is something drawn that is not to be cut if it fits on a page. Draw
// puts it with its upper left corner at a place.
type Block struct {
	Height Points
	Draw   func(on *page.Page, x, y Points)

	// split gives what fits into a height and the rest, for a block that is
	// longer than a page; nil: it cannot be parted.
	split func(room Points) (fits, rest Block)
}

// parted splits a block; the first part is empty if none of it fits.
func (b Block) parted(room Points) (fits, rest Block) {
	switch {
	case b.Height <= room:
		return b, Block{}
	case b.split == nil:
		return Block{}, b
	default:
		return b.split(room)
	}
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
	return Block{
		Height: step * Points(len(lines)),
		Draw: func(on *page.Page, x, y Points) {
			for i, line := range lines {
				on.Add(page.Text{X: x, Y: y + step*Points(i) + style.Size*ascent, Line: line, Ink: style.Ink})
			}
		},
		split: func(room Points) (fits, rest Block) {
			n := min(len(lines), int(room/step))
			return Lines(style, lines[:n]), Lines(style, lines[n:])
		},
	}
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

// Right sets text so that its lines end at the right edge of a width.
func (p *Press) Right(style Style, width Points, text string) Block {
	return p.rightSpans(style, width, typeset.Span{Text: text, Bold: style.Bold})
}

func (p *Press) rightSpans(style Style, width Points, spans ...typeset.Span) Block {
	var blocks []Block
	for _, line := range p.Set.Paragraph(style.Size, width, spans...) {
		blocks = append(blocks, Lines(style, []typeset.Line{line}).Moved(width-line.Width))
	}
	return Stack(0, blocks...)
}

// Moved draws a block farther to the right.
func (b Block) Moved(right Points) Block {
	if b.Draw == nil {
		return b
	}
	return b.wrapped(0, func(inner Block, on *page.Page, x, y Points) { inner.Draw(on, x+right, y) })
}

// Below leaves space below a block.
func (b Block) Below(gap Points) Block {
	return b.wrapped(gap, func(inner Block, on *page.Page, x, y Points) { inner.Draw(on, x, y) })
}

// wrapped draws something around a block, which takes more height; a part of a
// block is wrapped like the whole.
func (b Block) wrapped(more Points, draw func(inner Block, on *page.Page, x, y Points)) Block {
	return Block{
		Height: b.Height + more,
		Draw:   func(on *page.Page, x, y Points) { draw(b, on, x, y) },
		split: func(room Points) (fits, rest Block) {
			fits, rest = b.parted(room - more)
			if fits.Height > 0 {
				fits = fits.wrapped(more, draw)
			}
			if rest.Height > 0 {
				rest = rest.wrapped(more, draw)
			}
			return fits, rest
		},
	}
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
	return Block{
		Height: height,
		Draw: func(on *page.Page, x, y Points) {
			for i, block := range blocks {
				if block.Height > 0 {
					block.Draw(on, x, y+places[i])
				}
			}
		},
		split: func(room Points) (fits, rest Block) {
			n := 0
			for n < len(blocks) && places[n]+blocks[n].Height <= room {
				n++
			}
			if n == len(blocks) {
				return Stack(gap, blocks...), Block{}
			}
			head, tail := blocks[n].parted(room - places[n])
			first := append(append([]Block(nil), blocks[:n]...), head)
			last := append([]Block{tail}, blocks[n+1:]...)
			return Stack(gap, first...), Stack(gap, last...)
		},
	}
}

// Placed is a block at a distance from the left.
type Placed struct {
	X     Points
	Block Block
}

// Beside puts blocks at distances from the left, their upper edges in line.
func Beside(blocks ...Placed) Block {
	var height Points
	for _, b := range blocks {
		height = max(height, b.Block.Height)
	}
	return Block{
		Height: height,
		Draw: func(on *page.Page, x, y Points) {
			for _, b := range blocks {
				if b.Block.Draw != nil {
					b.Block.Draw(on, x+b.X, y)
				}
			}
		},
		split: func(room Points) (fits, rest Block) {
			var first, last []Placed
			for _, b := range blocks {
				head, tail := b.Block.parted(room)
				first, last = append(first, Placed{b.X, head}), append(last, Placed{b.X, tail})
			}
			return Beside(first...), Beside(last...)
		},
	}
}

// Banner sets text on a dark ground: what nobody may overlook. Pad is the
// ground around the text, width all of it.
func (p *Press) Banner(style Style, ground page.Ink, pad, width Points, spans ...typeset.Span) Block {
	style.Ink = p.Inks.Paper
	return p.Spans(style, width-2*pad, spans...).On(ground, pad, pad/2, width)
}

// On puts a ground under a block: across pads it at the sides, down above and below.
func (b Block) On(ground page.Ink, across, down, width Points) Block {
	return b.wrapped(2*down, func(inner Block, on *page.Page, x, y Points) {
		on.Add(page.Box{X: x, Y: y, Width: width, Height: inner.Height + 2*down, Ink: ground})
		inner.Draw(on, x+across, y+down)
	})
}

// Framed sets text in a double frame; dashed for what is not known.
func (p *Press) Framed(style Style, dashed bool, pad, width Points, spans ...typeset.Span) Block {
	outer, gap, inner := style.Size*0.12, style.Size*0.1, style.Size*0.06
	edge := outer + gap + inner
	text := p.Spans(style, width-2*(pad+edge), spans...)
	return text.wrapped(pad+2*edge, func(text Block, on *page.Page, x, y Points) {
		height := text.Height + pad + 2*edge
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
	})
}

// Tick is an empty box to tick, with room for a pen.
func (p *Press) Tick(size Points) Block {
	return Block{Height: size * lineHeight, Draw: func(on *page.Page, x, y Points) {
		on.Add(page.Frame(x, y+size*0.08, size*1.05, size*1.05, max(0.7, size*0.08), p.Inks.Ink)...)
	}}
}

// Under draws a rule below a block.
func (b Block) Under(gap, width, thick Points, ink page.Ink) Block {
	return b.wrapped(2*gap, func(inner Block, on *page.Page, x, y Points) {
		inner.Draw(on, x, y+gap)
		at := y + inner.Height + 2*gap
		on.Add(page.Rule{X1: x, Y1: at, X2: x + width, Y2: at, Thick: thick, Ink: ink})
	})
}

// Over draws a rule above a block.
func (b Block) Over(gap, width, thick Points, ink page.Ink) Block {
	return b.wrapped(gap, func(inner Block, on *page.Page, x, y Points) {
		on.Add(page.Rule{X1: x, Y1: y, X2: x + width, Y2: y, Thick: thick, Ink: ink})
		inner.Draw(on, x, y+gap)
	})
}
