package wholepacks

// MostSplits bounds the search for how deadlines share one stock.
const MostSplits = 20_000

// earliest drops the later offers of each stock that all deadlines share. What
// keeps can as well be bought at the first: it costs no more, and the more at
// once the sooner the price of many holds.
func (it Item) earliest() Item {
	drop := false
	for _, p := range it.Packages {
		drop = drop || p.OneStock
	}
	if !drop || len(it.NeedGrams) < 2 {
		return it
	}
	return it.without(func(pack, deadline int) bool {
		p := it.Packages[pack]
		for k := range deadline {
			if p.OneStock && p.Offers[k].Available > 0 {
				return true
			}
		}
		return false
	})
}

// shares tells whether deadlines may have to share a stock.
func (it Item) shares() bool {
	if len(it.NeedGrams) < 2 {
		return false
	}
	for _, p := range it.Packages {
		if p.OneStock && p.first().Available != Unlimited {
			return true
		}
	}
	return false
}

// sharing is the search for the best way in which deadlines share stocks, by
// branch and bound: where they take more of a package than there is, one of
// them must take fewer than it would.
type sharing struct {
	item   Item
	alone  []map[string]Purchase // by deadline, then by the caps of its packages
	splits int
	found  bool
	best   Purchase
}

// shareOut solves an item that spoils and whose deadlines share a stock.
func (it Item) shareOut() (Purchase, error) {
	s := &sharing{item: it, alone: make([]map[string]Purchase, len(it.NeedGrams))}
	for k := range s.alone {
		s.alone[k] = map[string]Purchase{}
	}
	caps := make([][]int64, len(it.NeedGrams))
	for k := range caps {
		for _, p := range it.Packages {
			caps[k] = append(caps[k], p.Offers[k].Available)
		}
	}
	root, err := s.solve(caps)
	if err != nil {
		return Purchase{}, err
	}
	greedy, short := it.inTurn()
	if short == nil {
		s.found, s.best = true, greedy
	}
	s.split(caps)
	if !s.found {
		return Purchase{}, short
	}
	if s.splits > MostSplits {
		s.best.BoundCents = root.CostCents
	}
	return s.best, nil
}

// solve buys for every deadline alone, within caps.
func (s *sharing) solve(caps [][]int64) (Purchase, error) {
	whole := s.item.nothing()
	for k := range caps {
		key := keyOf(caps[k])
		p, known := s.alone[k][key]
		if !known {
			one := s.item.only(k)
			for i := range one.Packages {
				offer := s.item.Packages[i].Offers[k]
				offer.Available = caps[k][i]
				one.Packages[i].Offers = []Offer{offer}
			}
			var err error
			if p, err = one.solve(); err != nil {
				return Purchase{}, err
			}
			s.alone[k][key] = p
		}
		for i := range whole.Counts {
			whole.Counts[i][k] = p.Counts[i][0]
		}
	}
	return s.item.priced(whole), nil
}

func keyOf(caps []int64) string {
	key := make([]byte, 0, 8*len(caps))
	for _, n := range caps {
		for shift := 0; shift < 64; shift += 8 {
			key = append(key, byte(n>>shift))
		}
	}
	return string(key)
}

func (s *sharing) split(caps [][]int64) {
	if s.splits++; s.splits > MostSplits {
		return
	}
	whole, err := s.solve(caps)
	if err != nil || s.found && !whole.worth().less(s.best.worth()) {
		return
	}
	over := s.item.overdrawn(whole)
	if over < 0 {
		s.found, s.best = true, whole
		return
	}
	for k, n := range whole.Counts[over] {
		if n == 0 {
			continue
		}
		before := caps[k][over]
		caps[k][over] = n - 1
		s.split(caps)
		caps[k][over] = before
	}
}

// overdrawn is the first package of which more is taken than there is, or -1.
func (it Item) overdrawn(whole Purchase) int {
	for i, p := range it.Packages {
		if !p.OneStock {
			continue
		}
		var taken int64
		for _, n := range whole.Counts[i] {
			taken += n
		}
		if taken > p.first().Available {
			return i
		}
	}
	return -1
}

// inTurn serves the deadlines in order of time from what is left of each stock,
// and tells the first that goes short.
func (it Item) inTurn() (Purchase, *ShortError) {
	whole := it.nothing()
	left := make([]int64, len(it.Packages))
	for i, p := range it.Packages {
		left[i] = p.first().Available
	}
	for k := range it.NeedGrams {
		one := it.only(k)
		for i, p := range it.Packages {
			offer := p.Offers[k]
			if p.OneStock {
				offer.Available = min(left[i], offer.Available)
			}
			one.Packages[i].Offers = []Offer{offer}
		}
		if short := one.short(); short != nil {
			short.Deadline = k
			return whole, short
		}
		bought, err := one.solve()
		if err != nil {
			return whole, &ShortError{Item: it.Name, Deadline: k, ShortGrams: it.NeedGrams[k]}
		}
		for i := range left {
			whole.Counts[i][k] = bought.Counts[i][0]
			if left[i] != Unlimited {
				left[i] -= bought.Counts[i][0]
			}
		}
	}
	return it.priced(whole), nil
}
