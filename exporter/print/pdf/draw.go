package pdf

import (
	"math"

	"github.com/carlos7ags/folio/content"

	"sumpter/exporter/print/page"
	"sumpter/exporter/print/typeset"
)

func (w *writer) draw(stream *content.Stream, height page.Points, mark page.Mark) error {
	switch mark := mark.(type) {
	case page.Text:
		return w.text(stream, height, &mark)
	case page.Box:
		fill(stream, mark.Ink)
		stream.Rectangle(number(mark.X), number(height-mark.Y-mark.Height), number(mark.Width), number(mark.Height))
		stream.Fill()
	case page.Rule:
		stroke(stream, mark)
		stream.MoveTo(number(mark.X1), number(height-mark.Y1))
		stream.LineTo(number(mark.X2), number(height-mark.Y2))
		stream.Stroke()
	case page.Shape:
		fill(stream, mark.Ink)
		for i, corner := range mark.Corners {
			if i == 0 {
				stream.MoveTo(number(corner.X), number(height-corner.Y))
				continue
			}
			stream.LineTo(number(corner.X), number(height-corner.Y))
		}
		stream.Fill()
	}
	return nil
}

// number rounds to a thousandth of a point, which no printer shows.
func number(length page.Points) float64 { return math.Round(float64(length)*1000) / 1000 }

func fill(stream *content.Stream, ink page.Ink) {
	if ink.R == ink.G && ink.G == ink.B {
		stream.SetFillColorGray(level(ink.R))
		return
	}
	stream.SetFillColorRGB(level(ink.R), level(ink.G), level(ink.B))
}

func stroke(stream *content.Stream, rule page.Rule) {
	if ink := rule.Ink; ink.R == ink.G && ink.G == ink.B {
		stream.SetStrokeColorGray(level(ink.R))
	} else {
		stream.SetStrokeColorRGB(level(ink.R), level(ink.G), level(ink.B))
	}
	stream.SetLineWidth(number(rule.Thick))
	if rule.Dash > 0 {
		stream.SetDashPattern([]float64{number(rule.Dash)}, 0)
	} else {
		stream.SetDashPattern(nil, 0)
	}
}

func level(part uint8) float64 { return math.Round(float64(part)/255*1000) / 1000 }

// text draws a line run by run.
func (w *writer) text(stream *content.Stream, height page.Points, text *page.Text) error {
	fill(stream, text.Ink)
	pen := pen{stream: stream, x: float64(text.X), y: float64(height - text.Y), scale: float64(text.Line.Size) / 1000}
	stream.BeginText()
	for i := range text.Line.Runs {
		run := &text.Line.Runs[i]
		font, err := w.fontOf(run.Font)
		if err != nil {
			return err
		}
		stream.SetFont(font.name, number(text.Line.Size))
		pen.run(font, run)
	}
	stream.EndText()
	return nil
}

// pen shows glyphs one after the other.
type pen struct {
	stream *content.Stream
	x, y   float64 // where the next glyph belongs
	scale  float64
	up     float64 // how far the last matrix is off the baseline
	at     float64 // where the next glyph would stand by the widths in the file
	set    bool    // whether a matrix was written for this run
	codes  []byte
	piece  []content.TextArrayElement
}

// run shows the glyphs of a run. A glyph off the baseline begins a new piece;
// otherwise only distances are written. Where a glyph alone does not tell its
// letters, they stand beside it (ISO 32000-1, 14.9.4).
func (p *pen) run(font *embedded, run *typeset.Run) {
	p.set = false
	for i, glyph := range run.Glyphs {
		right := p.x + glyph.Right*p.scale
		if up := glyph.Up * p.scale; !p.set || up != p.up {
			p.show()
			p.stream.SetTextMatrix(1, 0, 0, 1, round(right), round(p.y+up))
			p.up, p.at, p.set = up, right, true
		} else if off := math.Round((right - p.at) / p.scale); off != 0 {
			p.flush()
			p.piece = append(p.piece, content.TextArrayElement{IsAdjustment: true, Adjustment: -off})
			p.at += off * p.scale
		}
		told := font.learn(glyph)
		if !told {
			p.show()
			p.stream.BeginMarkedContentActualText(glyph.Says)
		}
		p.codes = append(p.codes, byte(glyph.ID>>8), byte(glyph.ID))
		p.at += float64(font.width(glyph.ID)) * p.scale
		p.x += glyph.Advance * p.scale
		if !told || i+1 == len(run.Glyphs) {
			p.show()
		}
		if !told {
			p.stream.EndMarkedContent()
		}
	}
}

func (p *pen) flush() {
	if len(p.codes) > 0 {
		p.piece = append(p.piece, content.TextArrayElement{HexData: p.codes})
		p.codes = nil
	}
}

func (p *pen) show() {
	p.flush()
	switch {
	case len(p.piece) == 0:
	case len(p.piece) == 1 && !p.piece[0].IsAdjustment:
		p.stream.ShowTextHex(p.piece[0].HexData)
	default:
		p.stream.ShowTextArrayHex(p.piece)
	}
	p.piece = nil
}

// learn notes what a glyph stands for, and tells whether the glyph alone says
// it: a glyph has one letter in the file, the first it was used for.
func (f *embedded) learn(glyph typeset.Glyph) bool {
	letters := []rune(glyph.Says)
	said, known := f.says[glyph.ID]
	if !known {
		said = ' '
		if len(letters) > 0 {
			said = letters[0]
		}
		f.says[glyph.ID] = said
		f.font.EncodeGIDs([]uint16{glyph.ID}, string(said))
	}
	return len(letters) == 1 && letters[0] == said
}

func round(value float64) float64 { return math.Round(value*1000) / 1000 }

// width is the width of a glyph as the file says it, in whole thousandths.
func (f *embedded) width(id uint16) int { return f.face.GlyphAdvance(id) * 1000 / f.face.UnitsPerEm() }
