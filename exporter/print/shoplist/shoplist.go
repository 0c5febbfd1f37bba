// Package shoplist prints what is bought where, in the order of a walk through
// the shop, with boxes to tick; what is taken from home; and fuel.
package shoplist

import (
	"cmp"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/prose"
	"sumpter/domain/shopping"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/print/page"
	"sumpter/exporter/print/press"
	"sumpter/exporter/print/typeset"
)

// purchase is one package of one food.
type purchase struct {
	line *shopping.Line
	buy  shopping.Buy
	food *trip.Food // nil in a broken plan
}

// Draw draws the list.
func Draw(p *press.Press) []page.Page {
	flow := p.Flow(press.Layout{
		Title: p.Tell(prose.Say("Shopping list")),
		Note:  p.Tell(prose.Say("By shop and aisle. Compare every package with the allergens here: where it says more or other, do not buy it and ask the leader.")),
	})
	rest := shopping.RestOf(p.Trip, &p.Plan.Shopping)
	list := purchases(p, rest.Lines)
	if len(p.Trip.Progress.Purchases) > 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("What is noted as bought already is left out."))))
	}
	if len(list) == 0 && len(rest.Fuel) == 0 && len(fromHome(p)) == 0 {
		flow.Add(p.Text(press.Style{Size: 10, Ink: p.Inks.Ink}, flow.Width(), p.Tell(prose.Say("There is nothing to buy yet."))))
	}
	for start := 0; start < len(list); {
		end := start + 1
		for end < len(list) && trip.ShopKey(list[end].buy.Shop) == trip.ShopKey(list[start].buy.Shop) {
			end++
		}
		flow.Gap(16)
		shop(p, flow, list[start:end])
		start = end
	}
	home(p, flow)
	fuel(p, flow, rest.Fuel)
	return flow.Finish()
}

// purchases lists what to buy by shop, deadline, aisle and name.
func purchases(p *press.Press, lines []shopping.Line) []purchase {
	place := map[string]int{}
	for i, name := range p.Trip.ShopNames() {
		place[trip.ShopKey(name)] = i + 1
	}
	var list []purchase
	for i := range lines {
		line := &lines[i]
		for _, buy := range line.Buys {
			list = append(list, purchase{line, buy, p.Food(line.Food)})
		}
	}
	slices.SortStableFunc(list, func(a, b purchase) int {
		return cmp.Or(cmp.Compare(place[trip.ShopKey(a.buy.Shop)], place[trip.ShopKey(b.buy.Shop)]),
			cmp.Compare(trip.ShopKey(a.buy.Shop), trip.ShopKey(b.buy.Shop)),
			cmp.Compare(a.line.Deadline, b.line.Deadline), cmp.Compare(a.aisle(), b.aisle()),
			cmp.Compare(p.FoodName(a.line.Food), p.FoodName(b.line.Food)), cmp.Compare(a.line.Food, b.line.Food))
	})
	return list
}

func (b purchase) aisle() string {
	if b.food == nil {
		return ""
	}
	return b.food.Aisle
}

// shop is what is bought in one shop.
func shop(p *press.Press, flow *press.Flow, list []purchase) {
	width := flow.Width()
	table := p.Table(width, 2.5,
		press.Column{Width: 13}, press.Column{Width: 30, Right: true}, press.Column{Head: p.Tell(prose.Say("Package")), Width: 58},
		press.Column{Head: p.Tell(prose.Say("Food"))}, press.Column{Head: p.Tell(prose.Say("Allergens entered for it")), Width: 132},
		press.Column{Head: p.Tell(prose.Say("Cost (%s)", p.Trip.Currency)), Width: 54, Right: true},
		press.Column{Head: p.Tell(prose.Say("Paid")), Width: 40})
	head := func(continued bool) press.Block {
		return press.Stack(3, shopHead(p, list, width, continued), table.Head())
	}
	body := press.Style{Size: 10, Ink: p.Inks.Ink}
	var rows []press.Block
	for i, b := range list {
		row := table.Row(
			p.TickCell(10), p.Cell(press.Style{Size: 11, Bold: true, Ink: p.Inks.Ink}, p.Tell(prose.Say("%d ×", b.buy.Count))),
			p.Cell(body, packageWords(p, b.buy)), p.Cell(press.Style{Size: 10.5, Bold: true, Ink: p.Inks.Ink}, p.FoodName(b.line.Food)),
			p.Cell(press.Style{Size: 8.5, Ink: p.Inks.Ink}, declared(p, b.food)),
			p.Cell(body, priceWords(p, b)), line(p),
		)
		if i == 0 || b.line.Deadline != list[i-1].line.Deadline || b.aisle() != list[i-1].aisle() {
			row = press.Stack(0, aisleHead(p, b, oneDay(list), width), row)
		}
		rows = append(rows, row)
	}
	flow.Section(head, rows)
}

func shopHead(p *press.Press, list []purchase, width press.Points, continued bool) press.Block {
	name := list[0].buy.Shop
	if name == "" {
		name = p.Tell(prose.Say("any shop"))
	}
	if continued {
		return p.Text(press.Style{Size: 13, Bold: true, Ink: p.Inks.Ink}, width, p.Tell(prose.Say("%s, continued", name)))
	}
	blocks := []press.Block{p.Text(press.Style{Size: 14, Bold: true, Ink: p.Inks.Ink}, width, name)}
	if known := p.Trip.Shop(name); known != nil && known.Address != "" {
		blocks = append(blocks, p.Text(press.Style{Size: 9, Ink: p.Inks.Quiet}, width, known.Address))
	}
	var sum units.Money
	unknown := 0
	for _, b := range list {
		if price, ok := b.price(); ok {
			sum += price * units.Money(b.buy.Count)
		} else {
			unknown++
		}
	}
	text := p.Tell(prose.Say("about %s", prose.Price{Amount: sum, Currency: p.Trip.Currency}))
	if unknown > 0 {
		text = p.Tell(prose.Say("%s, and %d whose price nobody gave", text, unknown))
	}
	if oneDay(list) && list[0].line.Deadline.IsSet() {
		text = p.Tell(prose.Say("at home by %s", list[0].line.Deadline)) + " · " + text
	}
	return press.Stack(0, append(blocks, p.Text(press.Style{Size: 9, Ink: p.Inks.Quiet}, width, text))...)
}

// oneDay tells whether all must be at home by the same day.
func oneDay(list []purchase) bool {
	return !slices.ContainsFunc(list, func(b purchase) bool { return b.line.Deadline != list[0].line.Deadline })
}

// aisleHead parts the aisles, and the days by which things must be at home.
func aisleHead(p *press.Press, b purchase, oneDay bool, width press.Points) press.Block {
	aisle := b.aisle()
	if aisle == "" {
		aisle = p.Tell(prose.Say("aisle not given"))
	}
	text := []typeset.Span{typeset.Bold(aisle)}
	if b.line.Deadline.IsSet() && !oneDay {
		text = append(text, typeset.Plain("  "+p.Tell(prose.Say("at home by %s", b.line.Deadline))))
	}
	return p.Spans(press.Style{Size: 9, Ink: p.Inks.Ink}, width-8, text...).On(p.Inks.Wash, 4, 2, width)
}

func packageWords(p *press.Press, buy shopping.Buy) string {
	if buy.Package < 0 {
		return p.Tell(prose.Say("loose, %s", p.Weigh(buy.Net)))
	}
	return p.Net(buy.Net)
}

func (b purchase) price() (units.Money, bool) {
	if b.food == nil || b.buy.Package < 0 || b.buy.Package >= len(b.food.Packages) {
		return 0, false
	}
	return b.food.Packages[b.buy.Package].Price.Get()
}

func priceWords(p *press.Press, b purchase) string {
	price, known := b.price()
	if !known {
		return p.Tell(prose.Say("not known"))
	}
	return p.Money(price * units.Money(b.buy.Count))
}

// declared says what the leader entered of a food's allergens, in short.
func declared(p *press.Press, food *trip.Food) string {
	if food == nil {
		return ""
	}
	var list []bags.Allergen
	for _, allergen := range trip.DeclaredAllergens() {
		list = append(list, bags.Allergen{Allergen: allergen, Presence: food.Presence(allergen)})
	}
	return p.InShort(press.Allergens(list))
}

// line is room to write a price.
func line(p *press.Press) press.Drawing {
	return func(width press.Points, _ bool) press.Block {
		return press.Block{Height: 12, Draw: func(on *page.Page, x, y press.Points) {
			on.Add(page.Rule{X1: x, Y1: y + 11.5, X2: x + width, Y2: y + 11.5, Thick: 0.5, Ink: p.Inks.Line})
		}}
	}
}

func fromHome(p *press.Press) []*shopping.Line {
	var list []*shopping.Line
	for i := range p.Plan.Shopping.Lines {
		if line := &p.Plan.Shopping.Lines[i]; line.FromHome > 0 {
			list = append(list, line)
		}
	}
	slices.SortStableFunc(list, func(a, b *shopping.Line) int { return cmp.Compare(p.FoodName(a.Food), p.FoodName(b.Food)) })
	return list
}

// home is what is there already.
func home(p *press.Press, flow *press.Flow) {
	list := fromHome(p)
	if len(list) == 0 {
		return
	}
	width := flow.Width()
	table := p.Table(width, 2.5, press.Column{Width: 13}, press.Column{Head: p.Tell(prose.Say("Amount")), Width: 80, Right: true}, press.Column{Head: p.Tell(prose.Say("Food"))})
	rows := make([]press.Block, len(list))
	for i, line := range list {
		rows[i] = table.Row(p.TickCell(10), p.Cell(press.Style{Size: 10, Bold: true, Ink: p.Inks.Ink}, p.Weigh(line.FromHome)),
			p.Cell(press.Style{Size: 10, Ink: p.Inks.Ink}, p.FoodName(line.Food)))
	}
	section(p, flow, table, p.Tell(prose.Say("From what is at home")), p.Tell(prose.Say("Check that it is there, its date and its label.")), rows)
}

// fuel is the canisters and bottles.
func fuel(p *press.Press, flow *press.Flow, lines []shopping.FuelLine) {
	if len(lines) == 0 {
		return
	}
	width := flow.Width()
	table := p.Table(width, 2.5, press.Column{Width: 13}, press.Column{Width: 30, Right: true}, press.Column{Head: p.Tell(prose.Say("Container"))},
		press.Column{Head: p.Tell(prose.Say("Buy at")), Width: 150}, press.Column{Head: p.Tell(prose.Say("Cost (%s)", p.Trip.Currency)), Width: 60, Right: true})
	rows := make([]press.Block, len(lines))
	body := press.Style{Size: 10, Ink: p.Inks.Ink}
	for i := range rows {
		line := &lines[i]
		where, price := p.Tell(prose.Say("before the start")), p.Tell(prose.Say("not known"))
		if point := p.Point(line.Point); point != nil {
			where = point.Name
		}
		if line.CostKnown {
			price = p.Money(line.Cost)
		}
		rows[i] = table.Row(p.TickCell(10), p.Cell(press.Style{Size: 11, Bold: true, Ink: p.Inks.Ink}, p.Tell(prose.Say("%d ×", line.Count))),
			p.Cell(body, p.Tell(prose.Say("%s (%s)", line.Name, line.Fuel))), p.Cell(body, where), p.Cell(body, price))
	}
	section(p, flow, table, p.Tell(prose.Say("Fuel")), p.Tell(prose.Say("Fuel does not travel in ordinary post nor on aircraft.")), rows)
}

func section(p *press.Press, flow *press.Flow, table *press.Table, title, note string, rows []press.Block) {
	flow.Gap(16)
	width := flow.Width()
	flow.Section(func(continued bool) press.Block {
		shown := title
		if continued {
			shown = p.Tell(prose.Say("%s, continued", title))
		}
		return press.Stack(2, p.Text(press.Style{Size: 14, Bold: true, Ink: p.Inks.Ink}, width, shown), p.Text(press.Style{Size: 9, Ink: p.Inks.Quiet}, width, note), table.Head())
	}, rows)
}
