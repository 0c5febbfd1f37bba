// Package picture draws pages into images, for looking at them before they are
// printed. It draws the very marks that the PDF holds.
package picture

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
	"golang.org/x/image/vector"

	"sumpter/exporter/print/fonts"
	"sumpter/exporter/print/page"
)

// largest bounds the picture of a page, in pixels of a side.
const largest = 8000

// Painter draws pages and keeps the outlines of the glyphs it met. It is not
// safe for concurrent use.
type Painter struct {
	glyphs map[glyph][]font.Segment
	faces  map[*fonts.Font]*font.Face
	raster vector.Rasterizer
}

type glyph struct {
	font *fonts.Font
	id   uint16
}

// New gives a painter.
func New() *Painter {
	return &Painter{glyphs: map[glyph][]font.Segment{}, faces: map[*fonts.Font]*font.Face{}}
}

// Draw draws a page on white, at so many pixels for a point.
func (p *Painter) Draw(sheet *page.Page, scale float64) *image.RGBA {
	width, height := pixels(sheet.Width, scale), pixels(sheet.Height, scale)
	c := &canvas{painter: p, image: image.NewRGBA(image.Rect(0, 0, width, height)), scale: float32(scale)}
	draw.Draw(c.image, c.image.Bounds(), image.White, image.Point{}, draw.Src)
	for _, mark := range sheet.Marks {
		c.mark(mark)
	}
	return c.image
}

func pixels(length page.Points, scale float64) int {
	return max(1, min(largest, int(math.Ceil(float64(length)*scale))))
}

type canvas struct {
	painter *Painter
	image   *image.RGBA
	scale   float32
}

func (c *canvas) mark(mark page.Mark) {
	switch mark := mark.(type) {
	case page.Text:
		c.text(&mark)
	case page.Box:
		c.box(mark)
	case page.Rule:
		c.rule(mark)
	case page.Shape:
		points := make([][2]float32, len(mark.Corners))
		for i, corner := range mark.Corners {
			points[i] = [2]float32{float32(corner.X) * c.scale, float32(corner.Y) * c.scale}
		}
		c.polygon(points, mark.Ink)
	}
}

func (c *canvas) box(box page.Box) {
	x, y := float32(box.X)*c.scale, float32(box.Y)*c.scale
	right, below := float32(box.X+box.Width)*c.scale, float32(box.Y+box.Height)*c.scale
	c.polygon([][2]float32{{x, y}, {right, y}, {right, below}, {x, below}}, box.Ink)
}

// rule draws a line as a thin rectangle, no thinner than shows on a screen.
func (c *canvas) rule(rule page.Rule) {
	x1, y1 := float64(rule.X1)*float64(c.scale), float64(rule.Y1)*float64(c.scale)
	x2, y2 := float64(rule.X2)*float64(c.scale), float64(rule.Y2)*float64(c.scale)
	length := math.Hypot(x2-x1, y2-y1)
	if length == 0 {
		return
	}
	half := max(0.35, float64(rule.Thick)*float64(c.scale)/2)
	step := length
	if rule.Dash > 0 {
		step = float64(rule.Dash) * float64(c.scale)
	}
	along, across := [2]float64{(x2 - x1) / length, (y2 - y1) / length}, [2]float64{-(y2 - y1) / length * half, (x2 - x1) / length * half}
	for from := 0.0; from < length; from += 2 * step {
		to := min(length, from+step)
		ax, ay, bx, by := x1+along[0]*from, y1+along[1]*from, x1+along[0]*to, y1+along[1]*to
		c.polygon([][2]float32{
			{float32(ax + across[0]), float32(ay + across[1])}, {float32(bx + across[0]), float32(by + across[1])},
			{float32(bx - across[0]), float32(by - across[1])}, {float32(ax - across[0]), float32(ay - across[1])},
		}, rule.Ink)
	}
}

func (c *canvas) polygon(points [][2]float32, ink page.Ink) {
	if len(points) < 3 {
		return
	}
	area := around(points).Intersect(c.image.Bounds())
	if area.Empty() {
		return
	}
	raster := &c.painter.raster
	raster.Reset(area.Dx(), area.Dy())
	left, top := float32(area.Min.X), float32(area.Min.Y)
	raster.MoveTo(points[0][0]-left, points[0][1]-top)
	for _, point := range points[1:] {
		raster.LineTo(point[0]-left, point[1]-top)
	}
	raster.ClosePath()
	raster.Draw(c.image, area, image.NewUniform(shade(ink)), image.Point{})
}

func shade(ink page.Ink) color.RGBA { return color.RGBA{ink.R, ink.G, ink.B, 255} }

// around gives the pixels that points lie in.
func around(points [][2]float32) image.Rectangle {
	left, top, right, below := points[0][0], points[0][1], points[0][0], points[0][1]
	for _, p := range points[1:] {
		left, right, top, below = min(left, p[0]), max(right, p[0]), min(top, p[1]), max(below, p[1])
	}
	return image.Rect(int(math.Floor(float64(left))), int(math.Floor(float64(top))), int(math.Ceil(float64(right))), int(math.Ceil(float64(below))))
}

func (c *canvas) text(text *page.Text) {
	x := float64(text.X)
	scale := float64(text.Line.Size) / 1000
	for i := range text.Line.Runs {
		run := &text.Line.Runs[i]
		for _, g := range run.Glyphs {
			c.glyph(glyph{run.Font, g.ID}, float32(x+g.Right*scale)*c.scale, float32(float64(text.Y)-g.Up*scale)*c.scale, float32(text.Line.Size)*c.scale, text.Ink)
			x += g.Advance * scale
		}
	}
}

// glyph fills one glyph whose origin is at a pixel, size pixels high.
func (c *canvas) glyph(g glyph, x, y, size float32, ink page.Ink) {
	outline := c.painter.outline(g)
	if len(outline) == 0 {
		return
	}
	scale := size / float32(g.font.Read.Upem())
	var all [][2]float32
	place := func(p opentype.SegmentPoint) [2]float32 { return [2]float32{x + p.X*scale, y - p.Y*scale} }
	for _, segment := range outline {
		for _, p := range segment.ArgsSlice() {
			all = append(all, place(p))
		}
	}
	area := around(all).Intersect(c.image.Bounds())
	if area.Empty() {
		return
	}
	raster := &c.painter.raster
	raster.Reset(area.Dx(), area.Dy())
	left, top := float32(area.Min.X), float32(area.Min.Y)
	at := func(p opentype.SegmentPoint) (float32, float32) { q := place(p); return q[0] - left, q[1] - top }
	for _, segment := range outline {
		x1, y1 := at(segment.Args[0])
		x2, y2 := at(segment.Args[1])
		x3, y3 := at(segment.Args[2])
		switch segment.Op {
		case opentype.SegmentOpMoveTo:
			raster.ClosePath()
			raster.MoveTo(x1, y1)
		case opentype.SegmentOpLineTo:
			raster.LineTo(x1, y1)
		case opentype.SegmentOpQuadTo:
			raster.QuadTo(x1, y1, x2, y2)
		case opentype.SegmentOpCubeTo:
			raster.CubeTo(x1, y1, x2, y2, x3, y3)
		}
	}
	raster.ClosePath()
	raster.Draw(c.image, area, image.NewUniform(shade(ink)), image.Point{})
}

func (p *Painter) outline(g glyph) []font.Segment {
	if known, ok := p.glyphs[g]; ok {
		return known
	}
	face := p.faces[g.font]
	if face == nil {
		face = font.NewFace(g.font.Read)
		p.faces[g.font] = face
	}
	outline, _ := face.GlyphDataOutline(g.id)
	p.glyphs[g] = outline.Segments
	return outline.Segments
}
