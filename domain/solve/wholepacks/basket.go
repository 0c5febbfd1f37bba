package wholepacks

import "fmt"

// Shop is a seller whose visits cost something or ask for a least order. One
// visit serves one deadline.
type Shop struct {
	// Name stands in errors.
	Name string
	// VisitCents for each deadline: fare, delivery, an hour of somebody's time.
	// Due once if anything is bought there for that deadline. Nil means free.
	VisitCents []int64
	// LeastCents is the smallest order for each deadline, if anything is bought
	// there for it at all. Nil means none.
	LeastCents []int64
	// Everywhere says that what it sells is to be had wherever one goes: it is
	// no visit of its own, and costs none.
	Everywhere bool
}

// Basket is several items bought together, with the same deadlines.
type Basket struct {
	Items []Item
	// Shops that [Package].Shop points into.
	Shops []Shop
}

// Order is what to buy of a whole basket.
type Order struct {
	// Purchases, one for each item. Packages bought only to reach a least order
	// are among them, and in LeftGrams.
	Purchases []Purchase
	// Visits made, and VisitCents, the sum of what they cost.
	Visits     int
	VisitCents int64
	// CostCents of packages and visits.
	CostCents int64
	// LeftGrams and Packages add up the purchases.
	LeftGrams, Packages int64
	// BoundCents: no order costs less.
	BoundCents int64
	// Proven says that no order costs less. None of equal cost leaves less, and
	// none of equal rest has fewer packages, unless so many ways of reaching
	// least orders cost the same that the work ran out over them.
	Proven bool
}

// MostNodes bounds the search over visits. Six visits that cost something need
// at most 127.
const MostNodes = 4096

// SolveBasket returns the best order found; within [MostNodes], and a limit of
// work where several least orders bind, it is Proven. The error is a
// [*ShortError] or one of [Solve]; an error of a least order that no purchase
// can reach names the shop.
//
// Each node of the search settles some visits as made or not, solves every
// item alone with the visits not ruled out, and charges the visits that were
// made; that is a bound for all below it. Where visits that are made miss their
// least orders, the cheapest way to spend enough on all of them is found by a
// credit for what is spent there.
func SolveBasket(b Basket) (Order, error) {
	if err := b.check(); err != nil {
		return Order{}, err
	}
	s := newSearch(b)
	found, err := s.run(len(s.visits))
	switch {
	case err != nil:
		return Order{}, err
	case !found:
		return Order{}, s.unreached()
	default:
		return s.best, nil
	}
}

// Unbeaten returns the orders that no other beats by cost and by number of
// visits, cheapest first: the best of all, then what fewer visits cost. Errors
// are those of [SolveBasket].
func Unbeaten(b Basket) ([]Order, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	s := newSearch(b)
	found, err := s.run(len(s.visits))
	if err != nil {
		return nil, err
	}
	if !found {
		return nil, s.unreached()
	}
	orders := []Order{s.best}
	for s.best.Visits > 1 {
		found, err := s.run(s.best.Visits - 1)
		if err != nil {
			return nil, err
		}
		if !found {
			break // fewer visits do not sell everything
		}
		if last := len(orders) - 1; orders[last].CostCents == s.best.CostCents {
			orders = orders[:last] // as cheap with a visit more
		}
		orders = append(orders, s.best)
	}
	return orders, nil
}

func (b Basket) check() error {
	deadlines := -1
	for _, it := range b.Items {
		if err := it.check(); err != nil {
			return err
		}
		if deadlines >= 0 && deadlines != len(it.NeedGrams) {
			return fmt.Errorf("%s: %d deadlines where the basket has %d: give all items the same", it.Name, len(it.NeedGrams), deadlines)
		}
		deadlines = len(it.NeedGrams)
		for p, pack := range it.Packages {
			if pack.Shop < 0 || pack.Shop >= len(b.Shops) {
				return fmt.Errorf("%s: package %d is sold by shop %d of %d: add the shop", it.Name, p+1, pack.Shop+1, len(b.Shops))
			}
		}
	}
	for _, shop := range b.Shops {
		for _, list := range [][]int64{shop.VisitCents, shop.LeastCents} {
			if list != nil && deadlines >= 0 && len(list) != deadlines {
				return fmt.Errorf("%s: %d amounts for %d deadlines: give one for each", shop.Name, len(list), deadlines)
			}
			for k, cents := range list {
				if cents < 0 || cents > MostPriceCents {
					return fmt.Errorf("%s: %d cents at deadline %d: give 0 to %d", shop.Name, cents, k+1, int64(MostPriceCents))
				}
			}
		}
	}
	return nil
}

// worth of an order: left-over grams stand in for steps bought, which differ
// from item to item. Grams in a basket stay under 2^39.
func (o Order) worth() worth {
	return worth{o.CostCents, o.LeftGrams<<packageBits + o.Packages}
}
