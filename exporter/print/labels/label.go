package labels

import (
	"strings"
	"unicode/utf8"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// maker draws labels of one size.
type maker struct {
	press         *press.Press
	width, height press.Points
	top           int // place in sizes of the largest text: low labels do not shout
	usual         int // place in sizes that fitted the label before
}

// sizes of the text of a label, largest first; the last is the least that can
// be read by a headlamp.
var sizes = []press.Points{10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6, 5.5, 5}

// smallWithMethod is the place in sizes of the smallest text for which the
// method is worth its room.
const smallWithMethod = 6

// leastBeside is the room, in sizes of the text, that is worth using beside the
// code; with less the text goes below it.
const leastBeside = 9

// leastDanger is how much smaller than the largest text allergens may become.
const leastDanger = 0.85

// detail is how much stands on a label, most first.
type detail int

const (
	withMethod detail = iota
	withContents
	withSomeContents
	withDish   // what it becomes and how, a line each
	withDanger // who it is for and its allergens; names are cut short
	onlyCode   // more allergens than fit: says so
)

// someContents is how many foods are named where not all fit.
const someContents = 4

// draw puts the label of a bag at a place, in the largest text that fits.
func (m *maker) draw(on *page.Page, bag *bags.Bag, x, y press.Points) {
	pad := max(2*press.Millimetre, min(m.width, m.height)*0.045)
	width, height := m.width-2*pad, m.height-2*pad
	top, foot := m.fit(bag, width, height)
	top.Draw(on, x+pad, y+pad)
	foot.Draw(on, x+pad, y+pad+height-foot.Height)
}

func newMaker(p *press.Press, width, height press.Points) *maker {
	m := &maker{press: p, width: width, height: height}
	for m.top < len(sizes)-1 && sizes[m.top] > max(6.5, min(height/13, width/20)) {
		m.top++
	}
	m.usual = m.top
	return m
}

// fit gives the upper part and the foot of a label that fit.
func (m *maker) fit(bag *bags.Bag, width, height press.Points) (top, foot press.Block) {
	for d := withMethod; d < onlyCode; d++ {
		least := len(sizes) - 1
		if d == withMethod {
			least = max(m.top, smallWithMethod)
		}
		if at, ok := m.largest(bag, d, width, height, least); ok {
			m.usual = at
			return m.parts(bag, d, sizes[at], width)
		}
	}
	return m.parts(bag, onlyCode, sizes[len(sizes)-1], width)
}

// largest finds the largest text that fits, beginning where the label before
// ended: neighbours are alike.
func (m *maker) largest(bag *bags.Bag, d detail, width, height press.Points, least int) (int, bool) {
	fits := func(at int) bool {
		top, foot := m.parts(bag, d, sizes[at], width)
		return top.Height+foot.Height+sizes[at]*0.2 <= height
	}
	at := min(m.usual, least)
	if fits(at) {
		for at > m.top && fits(at-1) {
			at--
		}
		return at, true
	}
	for at < least {
		at++
		if fits(at) {
			return at, true
		}
	}
	return 0, false
}

func (m *maker) parts(bag *bags.Bag, d detail, size, width press.Points) (top, foot press.Block) {
	p := m.press
	body := press.Style{Size: size, Ink: p.Inks.Ink}
	danger := size
	if d < withDanger {
		danger = max(size, sizes[m.top]*leastDanger)
	}
	blocks := []press.Block{m.head(bag, d, size, width), m.danger(bag, d, danger, width)}
	if d == withDish {
		blocks = append(blocks, m.inShort(bag, size, width)...)
	}
	if d < withDish {
		if !p.Plain(bag) || bag.Parts > 1 {
			blocks = append(blocks, p.Spans(body, width, m.dish(bag)...))
		}
		blocks = append(blocks, p.Spans(body, width, m.contents(bag, d)...))
		blocks = append(blocks, m.use(bag, d, size, width))
	}
	if d == withMethod {
		blocks = append(blocks, p.Text(press.Style{Size: size * 0.9, Ink: p.Inks.Quiet}, width, m.method(bag)))
	}
	return press.Stack(size*0.22, blocks...), m.foot(bag, d, size, width)
}

// danger is the allergens, whatever else is left out.
func (m *maker) danger(bag *bags.Bag, d detail, size, width press.Points) press.Block {
	p := m.press
	declared := press.Allergens(bag.Allergens)
	switch {
	case declared.None():
		return p.Text(press.Style{Size: size * 0.9, Ink: p.Inks.Quiet}, width, p.Tell(prose.Say("no declared allergen, as far as the foods say")))
	case d == onlyCode:
		text := p.Tell(prose.Say("ALLERGENS: %d, more than fit here. Read the packing list.", len(bag.Allergens)))
		return p.Banner(press.Style{Size: size}, p.Inks.Danger, size*0.4, width, typeset.Bold(text))
	default:
		return p.Warning(size, width, declared)
	}
}

// head is the code, and when and for whom the bag is.
func (m *maker) head(bag *bags.Bag, d detail, size, width press.Points) press.Block {
	p := m.press
	code := p.Set.Line(min(size*4, m.height*0.22), typeset.Bold(bag.Code))
	if code.Width > width*0.45 {
		code = p.Set.Line(code.Size*width*0.45/code.Width, typeset.Bold(bag.Code))
	}
	left := press.Block{Height: code.Size * 0.98, Draw: func(on *page.Page, x, y press.Points) {
		on.Add(page.Text{X: x, Y: y + code.Size*0.77, Line: code, Ink: p.Inks.Ink})
	}}
	beside := width - code.Width - size
	if beside < size*leastBeside && d < withDish {
		return press.Stack(0, left, m.slot(bag, d, size, width))
	}
	return press.Beside(press.Placed{Block: left}, press.Placed{X: width - beside, Block: m.slot(bag, d, size, beside)})
}

// slot is when and for whom the bag is.
func (m *maker) slot(bag *bags.Bag, d detail, size, width press.Points) press.Block {
	p := m.press
	when := []typeset.Span{typeset.Bold(strings.ToUpper(p.When(bag))), typeset.Plain("  " + p.BagDays(bag))}
	who := joined(", ", p.GroupName(bag.Group), p.Eaters(bag))
	style := press.Style{Size: size, Ink: p.Inks.Ink}
	strong := press.Style{Size: size, Bold: bag.Member != 0, Ink: p.Inks.Ink}
	if d < withDish {
		return press.Stack(0, p.Spans(style, width, when...), p.OneLine(strong, width, who))
	}
	return press.Stack(0, p.OneLine(style, width, when[0].Text+when[1].Text), p.Cut(strong, width, p.Eaters(bag)))
}

// dish is what the bag becomes.
func (m *maker) dish(bag *bags.Bag) []typeset.Span {
	spans := []typeset.Span{typeset.Bold(m.press.DishName(bag))}
	if part := m.press.Part(bag); part != "" {
		spans = append(spans, typeset.Plain(" · "+part))
	}
	if with := m.press.With(bag); with != "" {
		spans = append(spans, typeset.Plain(" · "+with))
	}
	return spans
}

// inShort is what the bag becomes and what to do with it, a line each, where
// there is no room for its contents.
func (m *maker) inShort(bag *bags.Bag, size, width press.Points) []press.Block {
	bold := press.Style{Size: size, Bold: true, Ink: m.press.Inks.Ink}
	lines := []press.Block{m.press.Cut(bold, width, m.press.DishName(bag))}
	if cook := m.cook(bag); cook != "" {
		lines = append(lines, m.press.Cut(press.Style{Size: size, Ink: bold.Ink}, width, sentence(cook)))
	}
	return lines
}

// use says what to do with the bag: of one that several meals take from, how
// much each takes, where there is room for it.
func (m *maker) use(bag *bags.Bag, d detail, size, width press.Points) press.Block {
	p := m.press
	style := press.Style{Size: size, Ink: p.Inks.Ink}
	if takes := p.Takes(bag); len(takes) > 0 && d == withMethod {
		if bag.Kind == bags.SnackBag {
			return p.Text(style, width, strings.Join(takes, " · "))
		}
		return press.Stack(0, p.Text(press.Style{Size: size, Bold: true, Ink: p.Inks.Ink}, width, p.Tell(prose.Say("Take from it:"))),
			p.Text(style, width, strings.Join(takes, "\n")))
	}
	style.Bold = true
	if cook := m.cook(bag); cook != "" {
		return p.Text(style, width, sentence(cook))
	}
	return press.Block{}
}

// cook says what to do with the bag. Of the bags of one pot the first says it.
func (m *maker) cook(bag *bags.Bag) string {
	if m.press.First(bag) || bag.Water > 0 {
		return m.press.Cook(bag)
	}
	return ""
}

func (m *maker) contents(bag *bags.Bag, d detail) []typeset.Span {
	if d == withSomeContents {
		return m.press.SomeContents(bag, someContents)
	}
	return m.press.Contents(bag)
}

// method is the steps of the recipe in one run, on the first bag of a pot.
func (m *maker) method(bag *bags.Bag) string {
	recipe := m.press.Recipe(bag.Recipe)
	if recipe == nil || !m.press.First(bag) {
		return ""
	}
	var steps []string
	for _, step := range recipe.Method {
		if step = strings.Join(strings.Fields(step), " "); step != "" {
			steps = append(steps, step)
		}
	}
	return strings.Join(steps, " ")
}

// foot is what the packers and carriers read: who carries it, how heavy it is,
// how long it keeps.
func (m *maker) foot(bag *bags.Bag, d detail, size, width press.Points) press.Block {
	p := m.press
	keeps := p.Keeping(bag)
	style := press.Style{Size: size * 0.95, Ink: p.Inks.Ink}
	care := p.Care(bag)
	if bag.Double {
		care = append([]string{p.Tell(prose.Say("two bags"))}, care...)
	}
	text := []typeset.Span{typeset.Bold(p.Mass(bag.Mass())), typeset.Plain("  " + joined(" · ", p.Carried(bag), strings.Join(care, ", ")))}
	end, endWidth := m.keeps(style, keeps, width)
	lines := p.Spans(style, width, text...)
	if d >= withDish {
		lines = p.Cut(style, width, text[0].Text+text[1].Text)
	}
	if p.Set.Width(style.Size, text...)+endWidth+size <= width {
		lines = press.Beside(press.Placed{Block: lines}, press.Placed{X: width - endWidth, Block: end})
	} else {
		lines = press.Stack(0, lines, end.Moved(width-endWidth))
	}
	rule := size * 0.25
	return press.Block{Height: lines.Height + rule, Draw: func(on *page.Page, x, y press.Points) {
		on.Add(page.Rule{X1: x, Y1: y, X2: x + width, Y2: y, Thick: 0.5, Ink: p.Inks.Line})
		lines.Draw(on, x, y+rule)
	}}
}

// keeps says how long it keeps, on dark ground if that is bad, and how wide
// that is.
func (m *maker) keeps(style press.Style, keeps press.Keeps, width press.Points) (press.Block, press.Points) {
	p, span, pad := m.press, typeset.Bold(keeps.Words), press.Points(0)
	if keeps.Bad {
		pad = style.Size * 0.3
	}
	needed := min(width, p.Set.Width(style.Size, span)+2*pad)
	if !keeps.Bad {
		return p.Spans(style, needed+0.01, span), needed
	}
	return p.Banner(style, p.Inks.Alarm, pad, needed+0.01, span), needed
}

func joined(sign string, parts ...string) string {
	var list []string
	for _, part := range parts {
		if part != "" {
			list = append(list, part)
		}
	}
	return strings.Join(list, sign)
}

// sentence begins a text with a capital and ends it.
func sentence(text string) string {
	_, first := utf8.DecodeRuneInString(text)
	return strings.ToUpper(text[:first]) + text[first:] + "."
}
