package loads

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// ghost is the tag that follows the pointer while a thing is moved: what it
// is, and what it would do to both loads.
type ghost struct {
	layer  *fyne.Container
	ground *canvas.Rectangle
	lines  [2]*canvas.Text

	away     *canvas.Rectangle // where a thing is dropped to keep it away from its carrier
	awayText *canvas.Text
}

func newGhost() *ghost {
	g := &ghost{ground: canvas.NewRectangle(color.Transparent)}
	g.layer = container.NewWithoutLayout(g.ground)
	for i := range g.lines {
		g.lines[i] = canvas.NewText("", nil)
		g.layer.Add(g.lines[i])
	}
	g.away, g.awayText = canvas.NewRectangle(color.Transparent), canvas.NewText("", nil)
	g.layer.Add(g.away)
	g.layer.Add(g.awayText)
	g.hide()
	return g
}

// awayHeight is the height of the place at the foot where a thing is dropped
// to keep it away.
// It ends well before the list from which things are dragged.
const (
	awayHeight float32 = 44
	awayWidth  float32 = 0.6 // of the screen
)

// offerAway shows the place where a thing is dropped to keep it away.
func (g *ghost) offerAway(text string, over bool) {
	size := g.layer.Size()
	g.away.FillColor, g.away.StrokeColor, g.away.StrokeWidth = theme.Color(look.Panel), theme.Color(look.Slate), 1
	if over {
		g.away.FillColor, g.away.StrokeWidth = theme.Color(look.Wash), 3
	}
	g.awayText.Text, g.awayText.Color, g.awayText.TextSize = text, theme.Color(look.Ink), theme.TextSize()
	width := size.Width * awayWidth
	g.away.Resize(fyne.NewSize(width, awayHeight))
	g.away.Move(fyne.NewPos(0, size.Height-awayHeight))
	words := g.awayText.MinSize()
	g.awayText.Resize(words)
	g.awayText.Move(fyne.NewPos((width-words.Width)/2, size.Height-(awayHeight+words.Height)/2))
	g.away.Show()
	g.awayText.Show()
	g.away.Refresh()
	g.awayText.Refresh()
}

// overAway tells whether a place of the window is where a thing is dropped to
// keep it away.
func (g *ghost) overAway(at fyne.Position) bool {
	origin := fyne.CurrentApp().Driver().AbsolutePositionForObject(g.layer)
	size, x, y := g.layer.Size(), at.X-origin.X, at.Y-origin.Y
	return x >= 0 && x <= size.Width*awayWidth && y > size.Height-awayHeight && y <= size.Height
}

func (g *ghost) hide() {
	g.ground.Hide()
	g.away.Hide()
	g.awayText.Hide()
	for _, line := range g.lines {
		line.Hide()
	}
}

// show puts the tag near a place of the window, inside the layer.
func (g *ghost) show(title, text string, bad bool, at fyne.Position) {
	tone := look.Spruce
	if bad {
		tone = look.Brick
	}
	g.ground.FillColor, g.ground.StrokeColor, g.ground.StrokeWidth = theme.Color(look.Panel), theme.Color(tone), 2
	width, height := float32(0), look.Space
	for i, content := range []string{title, text} {
		line := g.lines[i]
		line.Text, line.TextSize, line.Color = content, theme.TextSize(), theme.Color(look.Ink)
		line.TextStyle.Bold = i == 0
		if i > 0 && bad {
			line.Color = theme.Color(look.Brick)
		}
		size := line.MinSize()
		line.Resize(size)
		width, height = max(width, size.Width), height+size.Height
	}
	layer := g.layer.Size()
	origin := fyne.CurrentApp().Driver().AbsolutePositionForObject(g.layer)
	size := fyne.NewSize(width+2*look.Space, height)
	x := max(0, min(at.X-origin.X+look.SpaceWide, layer.Width-size.Width))
	y := max(0, min(at.Y-origin.Y+look.SpaceWide, layer.Height-size.Height))
	g.ground.Resize(size)
	g.ground.Move(fyne.NewPos(x, y))
	y += look.SpaceSmall
	for _, line := range g.lines {
		line.Move(fyne.NewPos(x+look.Space, y))
		y += line.Size().Height
		line.Show()
		line.Refresh()
	}
	g.ground.Show()
	g.ground.Refresh()
}
