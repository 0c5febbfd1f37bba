package wholepacks

import "fmt"

// Solve returns the best purchase of one item. The error is a [*ShortError]
// if the stock cannot cover the need; any other error names a value of the
// item that has no meaning, or a need too large for its smallest step.
//
// Work and memory grow with (need / step) times the number of offers; limited
// stock counts as log2(stock) offers.
func Solve(it Item) (Purchase, error) {
	if err := it.check(); err != nil {
		return Purchase{}, err
	}
	return it.buy()
}

// buy answers an item that was checked.
func (it Item) buy() (Purchase, error) {
	if it.Keeps {
		return it.earliest().solve()
	}
	if it.shares() {
		return it.shareOut()
	}
	return it.solve()
}

// solve answers an item whose offers do not share a stock.
func (it Item) solve() (Purchase, error) {
	whole := it.nothing()
	if it.Keeps {
		if err := it.solveInto(&whole, 0); err != nil {
			return Purchase{}, err
		}
		return it.priced(whole), nil
	}
	// What spoils ties no deadline to another.
	for k := range it.NeedGrams {
		if err := it.only(k).solveInto(&whole, k); err != nil {
			return Purchase{}, err
		}
	}
	return it.priced(whole), nil
}

// nothing is the purchase of no package.
func (it Item) nothing() Purchase {
	whole := Purchase{Counts: make([][]int64, len(it.Packages))}
	for p := range whole.Counts {
		whole.Counts[p] = make([]int64, len(it.NeedGrams))
	}
	return whole
}

// priced adds up a purchase from its counts.
func (it Item) priced(whole Purchase) Purchase {
	whole.CostCents, whole.BoughtGrams, whole.LeftGrams, whole.Packages = 0, 0, 0, 0
	for p, pack := range it.Packages {
		for k, n := range whole.Counts[p] {
			whole.CostCents += pack.Offers[k].cents(n)
			whole.BoughtGrams += n * pack.NetGrams
			whole.Packages += n
		}
	}
	whole.LeftGrams = whole.BoughtGrams
	for _, q := range it.NeedGrams {
		whole.LeftGrams -= q
	}
	whole.BoundCents = whole.CostCents
	return whole
}

// worth of a purchase, its rest in grams.
func (p Purchase) worth() worth { return worth{p.CostCents, p.LeftGrams<<packageBits + p.Packages} }

// only is the item as if deadline k were the sole one.
func (it Item) only(k int) Item {
	one := Item{Name: it.Name, NeedGrams: it.NeedGrams[k : k+1]}
	for _, p := range it.Packages {
		one.Packages = append(one.Packages, Package{NetGrams: p.NetGrams, Offers: p.Offers[k : k+1]})
	}
	return one
}

// solveInto adds the counts of the best purchase of an item that keeps to whole, its first
// deadline counted as deadline first there.
func (it Item) solveInto(whole *Purchase, first int) error {
	if short := it.short(); short != nil {
		short.Deadline += first
		return short
	}
	var need int64
	for _, q := range it.NeedGrams {
		need += q
	}
	if need == 0 {
		return nil
	}
	step := it.step()
	if (need-1)/step+1 > MostSteps {
		return fmt.Errorf("%s: a need of %d g in steps of %d g is over %d steps: round the package sizes or the need",
			it.Name, need, step, MostSteps)
	}
	t := newTable(int((need-1)/step + 1))
	var passes []*pass
	var due int64
	for k, q := range it.NeedGrams {
		for p, pack := range it.Packages {
			passes = append(passes, t.buy(p, k, pack.NetGrams/step, pack.Offers[k])...)
		}
		due += q
		t.settle(int((due + step - 1) / step))
	}
	for _, b := range trace(passes, t.top()) {
		whole.Counts[b.pack][first+b.deadline] += b.count
	}
	return nil
}

// step is the greatest common divisor of the nets on sale.
func (it Item) step() int64 {
	var g int64
	for _, p := range it.Packages {
		g = commonDivisor(g, p.NetGrams)
	}
	return g
}

// commonDivisor is the greatest of two numbers, 0 divided by all.
func commonDivisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
