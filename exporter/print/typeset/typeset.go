// Package typeset turns text into glyphs with their places: in any script the
// fonts have, in both directions of writing, broken into lines.
//
// A Setter keeps what it shaped, since labels say the same words a thousand
// times. Letters no font has are replaced by a mark that everybody sees, and
// listed by Missing.
package typeset

import (
	"slices"
	"strings"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"

	"sumpter/exporter/print/fonts"
)

// Points is a length on paper, 1/72 inch.
type Points float64

// Millimetre is a millimetre in points.
const Millimetre Points = 72 / 25.4

// Span is a piece of text in one weight.
type Span struct {
	Text string
	Bold bool
}

// Plain is text in the regular weight.
func Plain(text string) Span { return Span{Text: text} }

// Bold is text in the bold weight.
func Bold(text string) Span { return Span{Text: text, Bold: true} }

// Line is text set on one line.
type Line struct {
	Size  Points
	Width Points
	Runs  []Run // from left to right
}

// Run is glyphs of one font in one direction.
type Run struct {
	Font   *fonts.Font
	Glyphs []Glyph // from left to right
}

// Glyph is one glyph and its place, in thousandths of the size of the text.
type Glyph struct {
	ID      uint16
	Advance float64
	Right   float64 // of where it would stand
	Up      float64
	// Says are the letters the glyph stands for. Where several glyphs show them
	// together, the first from the left has them and the others nothing.
	Says string
}

// unit is the size at which text is shaped: a thousandth of it is 1.
const unit = 1000

// Setter sets text. It is not safe for concurrent use.
type Setter struct {
	shelf     *fonts.Shelf
	shaper    shaping.HarfbuzzShaper
	segmenter shaping.Segmenter
	wrapper   shaping.LineWrapper
	faces     map[*fonts.Font]*font.Face
	files     map[*font.Face]*fonts.Font
	spans     map[Span]*shaped
	missing   map[rune]bool
}

// New gives a setter with fonts to choose from.
func New(shelf *fonts.Shelf) *Setter {
	return &Setter{
		shelf: shelf, faces: map[*fonts.Font]*font.Face{}, files: map[*font.Face]*fonts.Font{},
		spans: map[Span]*shaped{}, missing: map[rune]bool{},
	}
}

// Missing lists the letters that no font had, in the order of their codes.
func (s *Setter) Missing() []rune {
	var list []rune
	for letter := range s.missing {
		list = append(list, letter)
	}
	slices.Sort(list)
	return list
}

// Line sets spans on one line, however long it becomes.
func (s *Setter) Line(size Points, spans ...Span) Line {
	line := Line{Size: size}
	for _, span := range spans {
		part := s.shape(span)
		line.Width += part.line.Width * size / unit
		line.Runs = append(line.Runs, part.line.Runs...)
	}
	return line
}

// Width gives how long spans are on one line.
func (s *Setter) Width(size Points, spans ...Span) Points {
	var width Points
	for _, span := range spans {
		width += s.shape(span).line.Width
	}
	return width * size / unit
}

// Paragraph sets spans on lines no longer than the width. Words are broken
// only where one alone is too long. New lines in the text begin new lines. No
// text gives no line.
func (s *Setter) Paragraph(size, width Points, spans ...Span) []Line {
	var lines []Line
	for _, part := range splitAtNewLines(spans) {
		if s.Width(size, part...) <= width {
			lines = append(lines, s.Line(size, part...))
			continue
		}
		for _, line := range s.breakLines(part, fixed.Int26_6(max(1, width/size*unit*64))) {
			line.Width, line.Size = line.Width*size/unit, size
			lines = append(lines, line)
		}
	}
	return lines
}

// splitAtNewLines gives the paragraphs of a text.
func splitAtNewLines(spans []Span) [][]Span {
	if !slices.ContainsFunc(spans, func(span Span) bool { return strings.ContainsAny(span.Text, "\n\r") }) {
		if !slices.ContainsFunc(spans, func(span Span) bool { return span.Text != "" }) {
			return nil
		}
		return [][]Span{spans}
	}
	parts := [][]Span{nil}
	for _, span := range spans {
		text := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(span.Text)
		for i, piece := range strings.Split(text, "\n") {
			if i > 0 {
				parts = append(parts, nil)
			}
			if piece != "" {
				parts[len(parts)-1] = append(parts[len(parts)-1], Span{piece, span.Bold})
			}
		}
	}
	return slices.DeleteFunc(parts, func(part []Span) bool { return len(part) == 0 })
}
