package trip

import (
	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// UseCurrency changes the currency of every price. The figures stay, nothing
// is exchanged: 12.50 is then 12.50 of the new currency, rounded to its
// smallest coin. Code is of ISO 4217.
func (t *Trip) UseCurrency(code string) {
	up, down := units.Money(1), units.Money(1)
	for d := units.CurrencyDigits(t.Currency); d < units.CurrencyDigits(code); d++ {
		up *= 10
	}
	for d := units.CurrencyDigits(code); d < units.CurrencyDigits(t.Currency); d++ {
		down *= 10
	}
	t.Currency = code
	if up != down {
		t.reprice(func(price units.Money) units.Money { return (price*up + down/2) / down })
	}
}

// reprice changes every amount of money in the trip.
func (t *Trip) reprice(to func(units.Money) units.Money) {
	known := func(price *optional.Value[units.Money]) {
		if value, ok := price.Get(); ok {
			*price = optional.Of(to(value))
		}
	}
	known(&t.Settings.Budget)
	for f := range t.Foods {
		for p := range t.Foods[f].Packages {
			known(&t.Foods[f].Packages[p].Price)
			known(&t.Foods[f].Packages[p].ManyPrice)
		}
	}
	for i := range t.Fuels {
		known(&t.Fuels[i].Price)
	}
	for i := range t.Points {
		t.Points[i].FeePerParcel, t.Points[i].VisitFee = to(t.Points[i].FeePerParcel), to(t.Points[i].VisitFee)
	}
	for i := range t.Shops {
		t.Shops[i].VisitFee, t.Shops[i].LeastOrder = to(t.Shops[i].VisitFee), to(t.Shops[i].LeastOrder)
	}
	for i := range t.Progress.Purchases {
		known(&t.Progress.Purchases[i].Paid)
	}
}
