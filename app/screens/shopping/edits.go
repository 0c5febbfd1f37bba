package shopping

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/typed"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// errNotBought is why no payment can be noted yet.
func errNotBought() error {
	return errors.New(lang.L("Tick it off first: nothing of it is bought yet."))
}

// purchasesOf gives the places of the purchases of a row.
func purchasesOf(t *trip.Trip, r *row) []int {
	if r.kind == otherRow {
		if r.purchase < len(t.Progress.Purchases) {
			return []int{r.purchase}
		}
		return nil
	}
	var places []int
	for i := range t.Progress.Purchases {
		if p := &t.Progress.Purchases[i]; p.Other == "" && goodsOf(p) == r.goods {
			places = append(places, i)
		}
	}
	return places
}

// setBought makes the number bought of a row what it is told. More of the same
// join the last purchase; what is paid for follows the price on the list as
// long as nobody wrote anything else.
func setBought(t *trip.Trip, l *list, r *row, wanted int, payer trip.MemberID) {
	more := wanted - r.bought
	price, priced := l.price(r)
	places := purchasesOf(t, r)
	for i := len(places) - 1; i >= 0 && more != 0; i-- {
		p := &t.Progress.Purchases[places[i]]
		if more > 0 && payer != 0 && p.By != payer {
			continue // somebody else's: theirs stays as it is
		}
		change := max(more, -p.Count)
		paid, known := p.Paid.Get()
		if priced && known && paid == price*units.Money(p.Count) {
			p.Paid = optional.Of(price * units.Money(p.Count+change))
		}
		p.Count += change
		more -= change
	}
	if more > 0 {
		bought := trip.Purchase{Food: r.goods.food, Net: r.goods.net, Shop: r.goods.shop, Fuel: r.goods.fuel, Count: more, By: payer}
		if priced {
			bought.Paid = optional.Of(price * units.Money(more))
		}
		t.Progress.Purchases = append(t.Progress.Purchases, bought)
	}
	dropEmpty(t)
}

func dropEmpty(t *trip.Trip) {
	t.Progress.Purchases = slices.DeleteFunc(t.Progress.Purchases, func(p trip.Purchase) bool { return p.Count == 0 })
	if len(t.Progress.Purchases) == 0 {
		t.Progress.Purchases = nil
	}
}

// setPaid makes what was paid for a row what it is told; empty text is not
// noted.
func setPaid(t *trip.Trip, r *row, text string) error {
	places := purchasesOf(t, r)
	if len(places) == 0 {
		return errNotBought()
	}
	paid := optional.Unknown[units.Money]()
	if text != "" {
		amount, err := typed.Money(text, t.Currency)
		if err != nil {
			return err
		}
		paid = optional.Of(amount)
	}
	// Several purchases of the same goods: the last takes it all, so that the
	// sum is what was written.
	for i, place := range places {
		if i == len(places)-1 {
			t.Progress.Purchases[place].Paid = paid
		} else {
			t.Progress.Purchases[place].Paid = optional.Unknown[units.Money]()
		}
	}
	return nil
}

func setPayer(t *trip.Trip, r *row, name string) error {
	places := purchasesOf(t, r)
	if len(places) == 0 {
		return errNotBought()
	}
	payer, err := payerNamed(t, name)
	if err != nil {
		return err
	}
	for _, place := range places {
		t.Progress.Purchases[place].By = payer
	}
	return nil
}

func payerNamed(t *trip.Trip, name string) (trip.MemberID, error) {
	if name == "" || name == nobody() {
		return 0, nil
	}
	for i := range t.Crew {
		if t.Crew[i].Name == name {
			return t.Crew[i].ID, nil
		}
	}
	return 0, errors.New(lang.X("no-member", "Nobody of the crew is called {{.Name}}.", data{"Name": name}))
}

// packageOf gives the package of a row, made where the list asks for a food
// nobody entered a package of.
func packageOf(t *trip.Trip, r *row) (*trip.Package, error) {
	food := t.Food(r.goods.food)
	if r.kind != buyRow || food == nil {
		return nil, errors.New(lang.L("Only a food that is bought has a package."))
	}
	if r.buy.Package >= 0 && r.buy.Package < len(food.Packages) {
		return &food.Packages[r.buy.Package], nil
	}
	if len(food.Packages) == 0 {
		food.Packages = append(food.Packages, trip.Package{Net: r.buy.Net})
	}
	return &food.Packages[len(food.Packages)-1], nil
}

// follow keeps purchases with the package they are of when that is corrected.
func follow(t *trip.Trip, r *row, sold *trip.Package) {
	for _, place := range purchasesOf(t, r) {
		t.Progress.Purchases[place].Net, t.Progress.Purchases[place].Shop = sold.Net, sold.Shop
	}
}

func setNet(t *trip.Trip, r *row, text string) error {
	net, err := typed.Mass(text, t.Units, false)
	if err != nil {
		return err
	}
	sold, err := packageOf(t, r)
	if err == nil {
		sold.Net = net
		follow(t, r, sold)
	}
	return err
}

func setShop(t *trip.Trip, r *row, text string) error {
	sold, err := packageOf(t, r)
	if err == nil {
		sold.Shop = text
		follow(t, r, sold)
	}
	return err
}

// setPrice stores what one package costs; empty text is not known.
func setPrice(t *trip.Trip, r *row, text string) error {
	price := optional.Unknown[units.Money]()
	if text != "" {
		amount, err := typed.Money(text, t.Currency)
		if err != nil {
			return err
		}
		price = optional.Of(amount)
	}
	if r.kind == fuelRow {
		for i := range t.Fuels {
			if t.Fuels[i].Name == r.fuel.Name {
				t.Fuels[i].Price = price
			}
		}
		return nil
	}
	sold, err := packageOf(t, r)
	if err == nil {
		sold.Price = price
	}
	return err
}

func setHome(t *trip.Trip, r *row, text string) error {
	food := t.Food(r.goods.food)
	if food == nil {
		return errors.New(lang.L("Only a food can be at home."))
	}
	if text == "" {
		food.AtHome = 0
		return nil
	}
	mass, err := typed.Mass(text, t.Units, false)
	food.AtHome = mass
	return err
}
