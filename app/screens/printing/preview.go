package printing

import (
	"image"
	"image/color"
	"math"
	"strconv"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/picture"
	"sumpter/exporter/print/prints"
)

// preview shows the pages of a paper as they will be printed.
type preview struct {
	bench   *bench.Bench
	about   *look.Paragraph
	count   *look.Text
	before  *widget.Button
	number  *widget.Entry // of the page that is shown, to type another
	next    *widget.Button
	zoom    *widget.Select
	note    *look.Paragraph // letters that cannot be printed
	message *look.Paragraph // in the place of a page
	sheet   *sheet
	content fyne.CanvasObject

	pages []page.Page
	at    int
	job   int // number of the newest picture asked for

	painting sync.Mutex // one picture at a time
	painter  *picture.Painter
}

// zooms are the sizes a page can be shown in: 0 is as large as there is room.
var zooms = []float64{0, 1, 1.5, 2}

func newPreview(b *bench.Bench) *preview {
	p := &preview{bench: b, painter: picture.New(), count: look.NewText("", look.Body, look.Quiet)}
	p.about, p.note, p.message = bench.SmallPrint(""), bench.SmallPrint(""), look.NewParagraph("", look.Body, look.Ink)
	p.note.Tone = look.Ochre
	p.before = widget.NewButtonWithIcon("", theme.NavigateBackIcon(), func() { p.turn(-1) })
	p.next = widget.NewButtonWithIcon("", theme.NavigateNextIcon(), func() { p.turn(1) })
	p.number = widget.NewEntry()
	p.number.OnSubmitted = p.goTo
	p.sheet = newSheet(p.paint)
	p.zoom = widget.NewSelect([]string{lang.L("whole page"), "100 %", "150 %", "200 %"}, func(string) { p.sheet.setZoom(zooms[max(0, p.zoom.SelectedIndex())]) })
	p.zoom.SetSelectedIndex(0)
	turning := container.NewHBox(p.before, container.NewCenter(bench.Wide(numberWidth, p.number)), container.NewCenter(p.count), p.next, p.zoom)
	head := container.NewBorder(nil, nil, nil, container.NewVBox(turning), p.about) // beside many lines the buttons stay low
	p.content = container.NewBorder(head, p.note, nil, nil, container.NewStack(p.sheet.scroll, bench.InMiddle(p.message)))
	p.say("")
	return p
}

// numberWidth has room for the number of a page.
const numberWidth = 64

// say shows a text in the place of pages.
func (p *preview) say(text string) {
	p.job++
	p.pages, p.at = nil, 0
	p.message.SetContent(text)
	p.note.Hide()
	p.about.SetContent("")
	p.sheet.clear()
	p.tell()
}

// working says that the pages are being drawn; those of before stay so long.
func (p *preview) working() {
	if len(p.pages) == 0 {
		p.message.SetContent(lang.L("Drawing the pages…"))
	}
}

// show shows a paper, at the page that was shown before if it has as many.
func (p *preview) show(made *prints.Print) {
	if len(made.Pages) == 0 {
		p.say(lang.L("This plan has nothing of it."))
		return
	}
	p.about.SetContent(written.Text(made.Kind.About(), p.bench.Units()))
	note := written.Text(made.Note(), p.bench.Units())
	p.note.SetContent(note)
	bench.SetShown(p.note, note != "")
	p.pages = made.Pages
	p.at = min(p.at, len(p.pages)-1)
	p.tell()
	p.open()
}

// turn goes some pages on or back.
func (p *preview) turn(by int) {
	if at := p.at + by; at >= 0 && at < len(p.pages) {
		p.at = at
		p.tell()
		p.open()
	}
}

// goTo shows the page of a typed number: the nearest there is. What is no
// number gives way to that of the page shown.
func (p *preview) goTo(typed string) {
	if number, err := strconv.Atoi(strings.TrimSpace(typed)); err == nil && len(p.pages) > 0 {
		p.turn(min(max(number, 1), len(p.pages)) - 1 - p.at)
	}
	p.tell()
}

func (p *preview) tell() {
	p.count.SetContent("")
	p.number.SetText("")
	if len(p.pages) > 0 {
		p.number.SetText(strconv.Itoa(p.at + 1))
		p.count.SetContent(lang.X("of-pages", "of {{.Pages}}", map[string]any{"Pages": len(p.pages)}))
		if len(p.pages) == 1 {
			p.count.SetContent(lang.L("one page"))
		}
	}
	bench.SetShown(p.number, len(p.pages) > 1)
	enable(p.before, p.at > 0)
	enable(p.next, p.at+1 < len(p.pages))
}

func enable(button *widget.Button, on bool) {
	if on {
		button.Enable()
	} else {
		button.Disable()
	}
}

// open gives the page to the sheet, which asks for its picture.
func (p *preview) open() {
	shown := &p.pages[p.at]
	if !p.sheet.image.Visible() {
		p.message.SetContent(lang.L("Drawing the pages…"))
	}
	p.sheet.open(float32(shown.Width), float32(shown.Height))
}

// paint draws the picture of the page, away from the screen; pixels is how
// wide it is to be.
func (p *preview) paint(pixels float32) {
	if len(p.pages) == 0 || pixels < 1 {
		return
	}
	p.job++
	job, shown := p.job, &p.pages[p.at]
	scale := float64(pixels * p.canvasScale() / float32(shown.Width))
	var drawn image.Image
	p.bench.Document.Background(func() {
		p.painting.Lock()
		defer p.painting.Unlock()
		drawn = p.painter.Draw(shown, math.Min(scale, mostScale))
	}, func() {
		if job == p.job {
			p.message.SetContent("")
			p.sheet.set(drawn)
		}
	})
}

// mostScale bounds a picture: more pixels for a point show nothing new.
const mostScale = 6

func (p *preview) canvasScale() float32 {
	if on := p.bench.Window.Canvas(); on != nil && on.Scale() > 0 {
		return on.Scale()
	}
	return 1
}

// sheet is the picture of a page with the edge of its paper, as large as there
// is room or as the zoom wants it.
type sheet struct {
	widget.BaseWidget
	scroll        *container.Scroll
	paint         func(width float32)
	edge          *canvas.Rectangle
	image         *canvas.Image
	width, height float32 // of the page in points; 0: no page
	zoom          float64
	asked         float32 // width of the picture that was asked for last
}

func newSheet(paint func(width float32)) *sheet {
	s := &sheet{paint: paint, edge: canvas.NewRectangle(color.Transparent), image: canvas.NewImageFromImage(nil)}
	s.edge.StrokeWidth = 1
	s.image.FillMode, s.image.ScaleMode = canvas.ImageFillContain, canvas.ImageScaleSmooth
	s.ExtendBaseWidget(s)
	s.scroll = container.NewScroll(s)
	s.clear()
	return s
}

// pointsPerUnit turns points into the toolkit's units, at a zoom of 1.
const pointsPerUnit = 96.0 / 72

func (s *sheet) clear() {
	s.width, s.height, s.asked = 0, 0, 0
	s.image.Hide()
	s.edge.Hide()
	s.Refresh()
}

// open makes room for a page; its picture follows.
func (s *sheet) open(width, height float32) {
	s.width, s.height, s.asked = width, height, 0
	s.Refresh()
	s.lay(s.Size())
}

func (s *sheet) setZoom(zoom float64) {
	s.zoom = zoom
	s.Refresh()
	s.scroll.Refresh()
	s.lay(s.Size())
}

func (s *sheet) set(drawn image.Image) {
	s.image.Image = drawn
	s.edge.Show()
	s.image.Show()
	s.Refresh()
}

// room is the size the page has within a size.
func (s *sheet) room(within fyne.Size) fyne.Size {
	if s.width == 0 {
		return fyne.NewSize(0, 0)
	}
	scale := float32(s.zoom) * pointsPerUnit
	if s.zoom == 0 {
		scale = min((within.Width-2*look.Space)/s.width, (within.Height-2*look.Space)/s.height)
	}
	return fyne.NewSize(max(0, s.width*scale), max(0, s.height*scale))
}

// lay places the page in the middle and asks for a picture of its size.
func (s *sheet) lay(size fyne.Size) {
	page := s.room(size)
	at := fyne.NewPos(max(0, (size.Width-page.Width)/2), max(0, (size.Height-page.Height)/2))
	s.edge.Move(at.SubtractXY(1, 1))
	s.edge.Resize(page.AddWidthHeight(2, 2))
	s.image.Move(at)
	s.image.Resize(page)
	if s.width > 0 && page.Width != s.asked {
		s.asked = page.Width
		s.paint(page.Width)
	}
}

// CreateRenderer draws the page.
func (s *sheet) CreateRenderer() fyne.WidgetRenderer { return &sheetRenderer{s} }

type sheetRenderer struct{ s *sheet }

func (r *sheetRenderer) Destroy()              {}
func (r *sheetRenderer) Layout(size fyne.Size) { r.s.lay(size) }
func (r *sheetRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.edge, r.s.image}
}

// MinSize is small when the page takes what there is, else the page.
func (r *sheetRenderer) MinSize() fyne.Size {
	if r.s.zoom == 0 {
		return fyne.NewSize(50, 50)
	}
	return r.s.room(fyne.Size{}).AddWidthHeight(2*look.Space, 2*look.Space)
}

func (r *sheetRenderer) Refresh() {
	r.s.edge.StrokeColor = theme.Color(look.Line)
	r.s.edge.Refresh()
	r.s.image.Refresh()
}
