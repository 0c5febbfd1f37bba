package triptest

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// shops describes the shop that packages name, adds a market, and lets one of
// them stand at a resupply point.
func (b *builder) shops() {
	if !b.odd || !b.chance(50) {
		return
	}
	for i := range b.trip.Foods {
		packages := b.trip.Foods[i].Packages
		for j := range packages {
			b.sold(&packages[j])
		}
	}
	b.trip.Shops = append(b.trip.Shops, b.shop("Village shop"), b.shop("market"))
	if b.rarely() {
		b.trip.Shops = b.trip.Shops[1:]
	}
}

// sold moves some packages to the market and gives some a lower price for
// many.
func (b *builder) sold(p *trip.Package) {
	if b.chance(40) {
		p.Shop = "market"
	}
	if price, known := p.Price.Get(); known && b.chance(20) {
		p.ManyFrom, p.ManyPrice = b.pick(2, 6), optional.Of(price*units.Money(b.pick(50, 99))/100)
	}
}

func (b *builder) shop(name string) trip.Shop {
	shop := trip.Shop{Name: name, Use: b.chance(85)}
	if b.chance(50) {
		shop.VisitFee, shop.LeastOrder = units.Money(b.pick(0, 900)), units.Money(b.pick(0, 3000))
	}
	if b.chance(30) {
		shop.OpenDays = []string{"Mon", "Thu"}
		shop.ClosedDates = []units.Date{b.trip.Start.AddDays(-1)}
		shop.Address, shop.Notes = "2 Mill Lane,\nValley end", "ask for the oats"
	}
	if len(b.trip.Points) > 0 && b.chance(30) {
		shop.Point = oneOf(b, b.trip.Points...).ID
	}
	return shop
}
