package typeset

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"github.com/go-text/typesetting/di"
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"github.com/go-text/typesetting/shaping"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/bidi"
)

// leftToRight begins every text: papers are in languages written so, even where
// a name is not.
const leftToRight = '\u200e'

// Mark stands where a letter cannot be printed.
const Mark = "‹?›"

// plainLetters turns off ligatures that only please the eye: a reader program
// then finds "fi" as two letters. Those a script needs stay.
var plainLetters = []shaping.FontFeature{{Tag: opentype.MustNewTag("liga")}, {Tag: opentype.MustNewTag("clig")}}

// shaped is a span with its glyphs at unit.
type shaped struct {
	text    []rune // cleaned, after a leftToRight
	outputs []shaping.Output
	line    Line
}

// shape gives the glyphs of a span, worked out once.
func (s *Setter) shape(span Span) *shaped {
	if known := s.spans[span]; known != nil {
		return known
	}
	made := &shaped{text: isolate(s.clean([]rune{leftToRight}, span))}
	if len(made.text) > 1 {
		input := shaping.Input{
			Text: made.text, RunEnd: len(made.text), Direction: di.DirectionLTR, Size: fixed.I(unit), FontFeatures: plainLetters, Language: "en",
		}
		for _, run := range s.segmenter.Split(input, weight{s, span.Bold}) {
			made.outputs = append(made.outputs, s.shaper.Shape(run))
		}
	}
	putInOrder(made.text, made.outputs)
	made.line = s.line(made.text, made.outputs)
	s.spans[span] = made
	return made
}

// join puts spans together as one text. The glyphs are copies: breaking lines
// changes them.
func (s *Setter) join(spans []Span) ([]rune, []shaping.Output) {
	var text []rune
	var outputs []shaping.Output
	for _, span := range spans {
		part := s.shape(span)
		for _, output := range part.outputs {
			output.Glyphs = slices.Clone(output.Glyphs)
			for i := range output.Glyphs {
				output.Glyphs[i].ClusterIndex += len(text) //nolint:staticcheck // TextIndex only reads it, nothing else moves glyphs
			}
			output.Runes.Offset += len(text)
			outputs = append(outputs, output)
		}
		if len(part.outputs) > 0 {
			text = append(text, part.text...)
		}
	}
	return text, outputs
}

// clean adds the letters of a span without those that have no place on paper:
// control characters, and marks that turn the order of what follows. A run of
// letters that no font has becomes one Mark.
func (s *Setter) clean(text []rune, span Span) []rune {
	lost := false
	for _, r := range span.Text {
		switch {
		case unicode.IsSpace(r) && r < 0x80 || r == '\u2028' || r == '\u2029':
			r = ' '
		case unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e':
			continue
		case r == '\u2212' && !s.canPrint(r, span.Bold):
			r = '–' // a minus sign is as long
		case !invisible(r) && !s.canPrint(r, span.Bold):
			if unicode.Is(unicode.Variation_Selector, r) {
				continue
			}
			s.missing[r] = true
			if !lost {
				text = append(text, []rune(Mark)...)
			}
			lost = true
			continue
		}
		lost = false
		text = append(text, r)
	}
	return text
}

// isolate keeps each stretch written from right to left together and apart, so
// that it turns neither the numbers nor the signs beside it (Unicode Standard
// Annex 9, isolates): a stretch goes from its first to its last such letter.
func isolate(text []rune) []rune {
	if !slices.ContainsFunc(text, fromRight) {
		return text
	}
	const begin, end = '\u2067', '\u2069'
	isolated := make([]rune, 0, len(text)+2)
	for i := 0; i < len(text); i++ {
		if !fromRight(text[i]) {
			isolated = append(isolated, text[i])
			continue
		}
		last := i
		for j := i; j < len(text) && !(unicode.IsLetter(text[j]) && !fromRight(text[j])); j++ {
			if fromRight(text[j]) || unicode.Is(unicode.Mn, text[j]) {
				last = j
			}
		}
		isolated = append(append(append(isolated, begin), text[i:last+1]...), end)
		i = last
	}
	return isolated
}

// fromRight tells of letters written from right to left.
func fromRight(r rune) bool {
	if r < 0x590 {
		return false
	}
	properties, _ := bidi.LookupRune(r)
	return properties.Class() == bidi.R || properties.Class() == bidi.AL
}

// invisible tells of letters that only steer others: joiners, isolates.
func invisible(r rune) bool {
	return r >= '\u200b' && r <= '\u200f' || r >= '\u2060' && r <= '\u2069'
}

func (s *Setter) canPrint(r rune, bold bool) bool {
	_, ok := s.shelf.Pick(r, bold)
	return ok
}

// weight chooses faces for one weight of text.
type weight struct {
	setter *Setter
	bold   bool
}

// ResolveFace gives the face for a letter.
func (w weight) ResolveFace(r rune) *font.Face {
	file, ok := w.setter.shelf.Pick(r, w.bold)
	if !ok {
		file = w.setter.shelf.Plain(w.bold)
	}
	face := w.setter.faces[file]
	if face == nil {
		face = font.NewFace(file.Read)
		w.setter.faces[file], w.setter.files[face] = face, file
	}
	return face
}

// breakLines breaks the glyphs of spans into lines.
func (s *Setter) breakLines(spans []Span, width fixed.Int26_6) []Line {
	text, outputs := s.join(spans)
	if len(outputs) == 0 {
		return nil
	}
	config := shaping.WrapConfig{Direction: di.DirectionLTR, BreakPolicy: shaping.WhenNecessary}
	broken, _ := s.wrapper.WrapParagraphF(config, width, text, shaping.NewSliceIterator(outputs))
	lines := make([]Line, len(broken))
	for i, line := range broken {
		putInOrder(text, line)
		lines[i] = s.line(text, line)
	}
	return lines
}

// putInOrder numbers the runs of a line from left to right. The line as a
// whole runs so; what runs the other way is turned round together with the
// numbers in it (Unicode Standard Annex 9, rules I1 and L2).
func putInOrder(text []rune, runs []shaping.Output) {
	for start := 0; start < len(runs); {
		end := start + 1
		if runs[start].Direction == di.DirectionRTL {
			for end < len(runs) && (runs[end].Direction == di.DirectionRTL || isNumber(text, runs[end].Runes)) {
				end++
			}
		}
		for i := start; i < end; i++ {
			runs[i].VisualIndex = int32(start + end - 1 - i)
		}
		start = end
	}
}

// isNumber tells whether a run has digits and no letter that sets a direction.
func isNumber(text []rune, at shaping.Range) bool {
	digits := false
	for _, r := range text[at.Offset : at.Offset+at.Count] {
		digits = digits || unicode.IsDigit(r)
		if unicode.IsLetter(r) {
			return false
		}
	}
	return digits
}

// line gathers runs that have their places on a line.
func (s *Setter) line(text []rune, outputs []shaping.Output) Line {
	ordered := slices.Clone(outputs)
	slices.SortStableFunc(ordered, func(a, b shaping.Output) int { return cmp.Compare(a.VisualIndex, b.VisualIndex) })
	line := Line{Size: unit}
	for i := range ordered {
		output := &ordered[i]
		run := s.run(text, output)
		for _, glyph := range run.Glyphs {
			line.Width += Points(glyph.Advance)
		}
		if len(run.Glyphs) > 0 {
			line.Runs = append(line.Runs, run)
		}
	}
	return line
}

func (s *Setter) run(text []rune, output *shaping.Output) Run {
	run := Run{Font: s.files[output.Face]}
	said := -1
	for _, glyph := range output.Glyphs {
		at := glyph.TextIndex()
		if at >= len(text) || invisible(text[at]) && glyph.Advance == 0 {
			continue
		}
		set := Glyph{ID: uint16(glyph.GlyphID), Advance: float64(glyph.Advance) / 64, Right: float64(glyph.XOffset) / 64, Up: float64(glyph.YOffset) / 64}
		if at != said {
			set.Says = strings.Map(withoutInvisible, string(text[at:min(len(text), at+glyph.RunesCount())]))
			said = at
		}
		run.Glyphs = append(run.Glyphs, set)
	}
	return run
}

func withoutInvisible(r rune) rune {
	if invisible(r) {
		return -1
	}
	return r
}
