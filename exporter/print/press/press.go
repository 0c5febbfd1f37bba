// Package press holds what every printed paper is made with: the plan, the
// words of the reader, fonts, inks and paper; and the ways of setting text,
// tables and pages that make all papers look alike.
package press

import (
	"sumpter/domain/plan"
	"sumpter/domain/prose"
	"sumpter/exporter/lookup"
	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/typeset"
)

// Points is a length on paper, 1/72 inch.
type Points = page.Points

// Millimetre is a millimetre in points.
const Millimetre = page.Millimetre

// Press makes papers of one plan. It is not safe for concurrent use.
type Press struct {
	*lookup.Lookup
	Set    *typeset.Setter
	Reader prose.Reader
	Inks   Inks
	Paper  Paper
}

// Paper is a size of paper.
type Paper struct {
	Name          string
	Width, Height Points // upright
}

// The papers there are printers for almost everywhere (ISO 216; ANSI/ASME Y14.1).
var (
	A4     = Paper{"A4", 210 * Millimetre, 297 * Millimetre}
	Letter = Paper{"Letter", 8.5 * 72, 11 * 72}
)

// New gives a press for a plan and a reader, who thinks in the units of the
// trip where none are given.
func New(p *plan.Plan, shelf *fonts.Shelf, reader prose.Reader, paper Paper, inks Inks) *Press {
	made := &Press{Lookup: lookup.New(p), Set: typeset.New(shelf), Reader: reader, Inks: inks, Paper: paper}
	if made.Reader.Units == "" {
		made.Reader.Units = made.Trip.Units
	}
	return made
}

// Of gives a press for another plan, with the fonts, reader and paper of this.
func (p *Press) Of(other *plan.Plan) *Press {
	made := *p
	made.Lookup = lookup.New(other)
	return &made
}

// Tell writes a text for the reader.
func (p *Press) Tell(text prose.Text) string { return text.In(p.Reader) }

// Inks are the colours of a paper. They only help: whatever they mean is also
// said by a word and a shape, so that black ink alone loses nothing.
type Inks struct {
	Ink    page.Ink // text
	Quiet  page.Ink // text beside it
	Line   page.Ink // rules
	Wash   page.Ink // a light ground
	Paper  page.Ink // text on a dark ground
	Danger page.Ink // allergens
	Alarm  page.Ink // what can harm, other than allergens
	Accent page.Ink // headings
}

// Colour is for printers that have it; each has a contrast of 5 to 1 or more on white.
var Colour = Inks{
	Ink: page.Ink{R: 0x22, G: 0x30, B: 0x3c}, Quiet: page.Ink{R: 0x5c, G: 0x67, B: 0x70}, Line: page.Ink{R: 0xb9, G: 0xb2, B: 0xa5},
	Wash: page.Ink{R: 0xf3, G: 0xf0, B: 0xe9}, Paper: page.Ink{R: 0xff, G: 0xff, B: 0xff},
	Danger: page.Ink{R: 0x6b, G: 0x2f, B: 0x5f}, Alarm: page.Ink{R: 0x9a, G: 0x2f, B: 0x22}, Accent: page.Ink{R: 0x1f, G: 0x5f, B: 0x5b},
}

// Black is for one black ink.
var Black = Inks{
	Quiet: page.Ink{R: 0x48, G: 0x48, B: 0x48}, Line: page.Ink{R: 0x9a, G: 0x9a, B: 0x9a},
	Wash: page.Ink{R: 0xee, G: 0xee, B: 0xee}, Paper: page.Ink{R: 0xff, G: 0xff, B: 0xff},
}
