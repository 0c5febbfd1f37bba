package wholepacks

import (
	"fmt"
	"math"
)

// Unlimited is the Available of an offer whose stock never ends.
const Unlimited = math.MaxInt64

// Limits of what [Solve] accepts. They are far beyond any trip and keep every
// sum inside 64 bits.
const (
	// MostNetGrams is the largest net weight of one package.
	MostNetGrams = 1 << 31
	// MostPriceCents is the highest price of one package.
	MostPriceCents = 1 << 36
	// MostSteps is the largest total need, counted in steps of the greatest
	// common divisor of the package nets.
	MostSteps = 1 << 22

	// MostManyFrom is the largest number that a price of many may begin at.
	MostManyFrom = 1 << 12

	mostNeedGrams = 1 << 40
)

// Offer says at what price, and how often, a package can be had for one
// deadline. The zero Offer is "not sold then".
type Offer struct {
	// PriceCents of one package, 0 or more.
	PriceCents int64
	// Available is how many packages can be had: 0 none, [Unlimited] any number.
	Available int64
	// ManyFrom is the number from which on each of them costs ManyCents, if so
	// many are bought for the deadline; 0: no such price.
	ManyFrom, ManyCents int64
}

// cents is what n packages cost together.
func (o Offer) cents(n int64) int64 {
	if o.ManyFrom > 0 && n >= o.ManyFrom {
		return n * o.ManyCents
	}
	return n * o.PriceCents
}

// Package is one size in which an item is sold.
type Package struct {
	// NetGrams of content, above 0.
	NetGrams int64
	// Shop is the index in [Basket].Shops of who sells it; [Solve] ignores it.
	Shop int
	// Offers holds one entry for each deadline.
	Offers []Offer
	// OneStock says that all offers draw on one stock: what is bought for one
	// deadline is gone for the others. The offers that sell must then be equal.
	OneStock bool
}

// Item is one thing to buy, independent of all others.
type Item struct {
	// Name stands in errors.
	Name string
	// NeedGrams for each deadline, in order of time, 0 or more.
	NeedGrams []int64
	// Keeps says that what is left after one deadline serves the next.
	Keeps bool
	// Packages on sale. Equal answers go to the earlier package.
	Packages []Package
}

// Purchase is what to buy of one item.
type Purchase struct {
	// Counts[p][k] is how many of package p to buy for deadline k.
	Counts [][]int64
	// CostCents of all packages.
	CostCents int64
	// BoughtGrams is the net weight of all packages.
	BoughtGrams int64
	// LeftGrams is BoughtGrams less all needs: surplus at the end and what
	// spoiled between deadlines.
	LeftGrams int64
	// Packages bought in all.
	Packages int64
	// BoundCents: no purchase costs less. It is CostCents, and the purchase the
	// best, unless one stock had to be shared out in more ways than [MostSplits].
	BoundCents int64
}

// ShortError says that the shops do not hold enough of an item.
type ShortError struct {
	// Item is the name of the item.
	Item string
	// Deadline is the index of the first deadline that cannot be met.
	Deadline int
	// ShortGrams is the need up to then less all that can be bought for it.
	ShortGrams int64
	// Unsold is set if no package at all is on sale that could serve the deadline.
	Unsold bool
}

func (e *ShortError) Error() string {
	if e.Unsold {
		return fmt.Sprintf("%s: no package is sold that serves deadline %d; %d g are needed: add a package or a shop",
			e.Item, e.Deadline+1, e.ShortGrams)
	}
	return fmt.Sprintf("%s: %d g short by deadline %d: add stock, a package or a shop, or need less",
		e.Item, e.ShortGrams, e.Deadline+1)
}

// first is the first offer that sells, or none.
func (p Package) first() Offer {
	for _, o := range p.Offers {
		if o.Available > 0 {
			return o
		}
	}
	return Offer{}
}

// check rejects what has no meaning or would not fit 64 bits.
func (it Item) check() error {
	for k, need := range it.NeedGrams {
		if need < 0 || need > mostNeedGrams {
			return fmt.Errorf("%s: need of %d g for deadline %d: give 0 to %d g", it.Name, need, k+1, int64(mostNeedGrams))
		}
	}
	for p, pack := range it.Packages {
		if pack.NetGrams <= 0 || pack.NetGrams > MostNetGrams {
			return fmt.Errorf("%s: package %d has a net weight of %d g: give 1 to %d g", it.Name, p+1, pack.NetGrams, int64(MostNetGrams))
		}
		if len(pack.Offers) != len(it.NeedGrams) {
			return fmt.Errorf("%s: package %d has %d offers for %d deadlines: give one for each", it.Name, p+1, len(pack.Offers), len(it.NeedGrams))
		}
		for k, o := range pack.Offers {
			if o.PriceCents < 0 || o.PriceCents > MostPriceCents {
				return fmt.Errorf("%s: package %d costs %d cents at deadline %d: give 0 to %d", it.Name, p+1, o.PriceCents, k+1, int64(MostPriceCents))
			}
			if o.ManyFrom < 0 || o.ManyFrom > MostManyFrom || o.ManyCents < 0 || o.ManyCents > MostPriceCents {
				return fmt.Errorf("%s: package %d costs %d cents from %d on at deadline %d: give 0 to %d, from 0 to %d",
					it.Name, p+1, o.ManyCents, o.ManyFrom, k+1, int64(MostPriceCents), MostManyFrom)
			}
			if pack.OneStock && o.Available > 0 && o != pack.first() {
				return fmt.Errorf("%s: package %d has one stock and two offers: make them equal", it.Name, p+1)
			}
			if o.Available < 0 {
				return fmt.Errorf("%s: package %d has a stock of %d at deadline %d: give 0 or more", it.Name, p+1, o.Available, k+1)
			}
		}
	}
	return nil
}

// short tells whether buying everything would still not meet a deadline of an
// item that keeps, or of a single deadline.
func (it Item) short() *ShortError {
	var need, stock int64
	unsold := true
	for k, q := range it.NeedGrams {
		need += q
		for _, p := range it.Packages {
			n := p.Offers[k].Available
			unsold = unsold && n == 0
			// No more than the rest of the need matters, so stock stays small.
			if n > 0 && stock < mostNeedGrams*int64(len(it.NeedGrams)) {
				stock += min(n, mostNeedGrams*int64(len(it.NeedGrams))/p.NetGrams+1) * p.NetGrams
			}
		}
		if need > stock {
			return &ShortError{Item: it.Name, Deadline: k, ShortGrams: need - stock, Unsold: unsold}
		}
	}
	return nil
}
