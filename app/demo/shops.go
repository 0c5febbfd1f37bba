package demo

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Places to buy, invented.
const (
	market     = "Dyke market"
	wholesaler = "Saltmarsh wholesale"
	cornerShop = "Mill Lane corner shop"
)

// shops near home: what is dear at the one is cheap by the many at the other,
// which lies out of town and takes no small orders.
func shops() []trip.Shop {
	days := func(list ...string) trip.Opening { return trip.Opening{OpenDays: list} }
	return []trip.Shop{
		{Name: market, Use: true, Opening: days("Mon", "Tue", "Wed", "Thu", "Fri", "Sat"), Address: "Dyke Road, by the ferry"},
		{
			Name: wholesaler, Use: true, Opening: days("Tue", "Wed", "Thu"), Address: "Unit 4, Saltern Yard",
			VisitFee: 850, LeastOrder: 8000, Notes: "The fee is the fare with all the bags. The club's card is needed at the door.",
		},
		{Name: cornerShop, Use: true, Address: "7 Mill Lane"},
	}
}

// byMany is the price of each where so many are bought at once.
func byMany(p trip.Package, from int, each units.Money) trip.Package {
	p.ManyFrom, p.ManyPrice = from, optional.Of(each)
	return p
}
