package shopping

import "sumpter/domain/units"

// mostTried bounds how many ways of packages are tried.
const mostTried = 20_000

// isCheapest tries every way of packages by their exact nets, which the solver
// knows in whole grams only, and tells if none is cheaper than what is bought.
// Where prices or stocks hang on numbers, or the ways are too many, it is not
// known, and so false.
func (w *ware) isCheapest() bool {
	s := search{left: mostTried, best: w.line.Cost}
	for _, place := range w.packages {
		pack := &w.food.Packages[place]
		price, known := pack.Price.Get()
		if _, limited := pack.InStock.Get(); !known || limited || pack.ManyFrom > 0 || pack.Net <= 0 {
			return false
		}
		s.nets, s.prices = append(s.nets, pack.Net), append(s.prices, price)
	}
	if len(s.nets) == 0 {
		return false
	}
	s.from(0, w.line.missing(), 0)
	return s.left > 0 && s.best >= w.line.Cost
}

// search is for the cheapest packages that hold a mass.
type search struct {
	nets   []units.Mass
	prices []units.Money
	best   units.Money
	left   int // ways that may still be tried
}

// from tries all numbers of the packages from one on, for what is still needed.
func (s *search) from(i int, needed units.Mass, cost units.Money) {
	if s.left--; s.left <= 0 || cost >= s.best {
		return
	}
	if needed <= 0 {
		s.best = cost
		return
	}
	if i == len(s.nets) {
		return
	}
	most := (needed + s.nets[i] - 1) / s.nets[i]
	first := units.Mass(0)
	if i == len(s.nets)-1 {
		first = most // what is left must come from the last
	}
	for n := first; n <= most; n++ {
		s.from(i+1, needed-n*s.nets[i], cost+s.prices[i]*units.Money(n))
	}
}
