package wholepacks

import (
	"fmt"
	"slices"
)

// visit is a shop at a deadline that the search may rule out.
type visit struct {
	shop, deadline int
	fee, least     int64
}

type decision byte

const (
	undecided decision = iota
	made
	refused
)

type search struct {
	basket Basket
	visits []visit
	solved []map[string]Purchase // by item, then by the visits refused that touch it
	nodes  int

	found bool
	best  Order

	open   bool  // some branch ended without an order as good as its bound
	bound  worth // the least bound of such branches
	missed visit // the least order that failed there
}

func newSearch(b Basket) *search {
	s := &search{basket: b, solved: make([]map[string]Purchase, len(b.Items))}
	for i := range s.solved {
		s.solved[i] = map[string]Purchase{}
	}
	// A free shop needs no decision, unless sending its customers elsewhere
	// could fill a least order.
	least := slices.ContainsFunc(b.Shops, func(shop Shop) bool {
		return slices.ContainsFunc(shop.LeastCents, func(c int64) bool { return c > 0 })
	})
	deadlines := 0
	if len(b.Items) > 0 {
		deadlines = len(b.Items[0].NeedGrams)
	}
	for n, shop := range b.Shops {
		for k := range deadlines {
			v := visit{shop: n, deadline: k}
			if shop.VisitCents != nil {
				v.fee = shop.VisitCents[k]
			}
			if shop.LeastCents != nil {
				v.least = shop.LeastCents[k]
			}
			if least || v.fee > 0 {
				s.visits = append(s.visits, v)
			}
		}
	}
	return s
}

// descend explores one node. A node that cannot be met is no error unless it
// is the root: there nothing has been refused yet.
func (s *search) descend(state []decision) error {
	root := s.nodes == 0
	s.nodes++
	order, err := s.relax(state)
	if err != nil {
		if root {
			return err
		}
		return nil
	}
	bound := order
	for i, v := range s.visits {
		if state[i] == made {
			bound.CostCents += v.fee
		}
	}
	if s.found && !bound.worth().less(s.best.worth()) {
		return nil
	}
	spent := s.spent(order)
	branch, missed := s.offer(order, state, spent)
	if branch < 0 && missed < 0 {
		return nil // the order just offered is as good as the bound
	}
	if branch < 0 || s.nodes >= MostNodes {
		if !s.open || bound.worth().less(s.bound) {
			s.open, s.bound = true, bound.worth()
			if missed >= 0 {
				s.missed = s.visits[missed]
			}
		}
		return nil
	}
	for _, d := range []decision{refused, made} {
		state[branch] = d
		if err := s.descend(state); err != nil {
			return err
		}
	}
	state[branch] = undecided
	return nil
}

// relax solves every item alone with all visits but the refused, none paid.
func (s *search) relax(state []decision) (Order, error) {
	var o Order
	for i := range s.basket.Items {
		p, err := s.item(i, state)
		if err != nil {
			return Order{}, err
		}
		o.Purchases = append(o.Purchases, p)
		o.CostCents += p.CostCents
		o.LeftGrams += p.LeftGrams
		o.Packages += p.Packages
	}
	return o, nil
}

func (s *search) item(i int, state []decision) (Purchase, error) {
	it := s.basket.Items[i]
	key := make([]byte, len(state))
	for n, v := range s.visits {
		if state[n] == refused && it.sells(v) {
			key[n] = 1
		}
	}
	if p, ok := s.solved[i][string(key)]; ok {
		return p, nil
	}
	p, err := Solve(it.without(func(pack, deadline int) bool {
		for n, v := range s.visits {
			if key[n] == 1 && v.shop == it.Packages[pack].Shop && v.deadline == deadline {
				return true
			}
		}
		return false
	}))
	if err == nil {
		s.solved[i][string(key)] = p
	}
	return p, err
}

func (it Item) sells(v visit) bool {
	return slices.ContainsFunc(it.Packages, func(p Package) bool {
		return p.Shop == v.shop && p.Offers[v.deadline].Available > 0
	})
}

// without is the item less the offers (package, deadline) that gone tells.
func (it Item) without(gone func(pack, deadline int) bool) Item {
	packs := slices.Clone(it.Packages)
	for p := range packs {
		packs[p].Offers = slices.Clone(packs[p].Offers)
		for k := range packs[p].Offers {
			if gone(p, k) {
				packs[p].Offers[k] = Offer{}
			}
		}
	}
	it.Packages = packs
	return it
}

// spent is what the order buys on each visit; -1 where it buys nothing.
func (s *search) spent(o Order) []int64 {
	spent := make([]int64, len(s.visits))
	for n, v := range s.visits {
		spent[n] = -1
		for i, it := range s.basket.Items {
			for p, pack := range it.Packages {
				if count := o.Purchases[i].Counts[p][v.deadline]; pack.Shop == v.shop && count > 0 {
					spent[n] = max(spent[n], 0) + count*pack.Offers[v.deadline].PriceCents
				}
			}
		}
	}
	return spent
}

// offer proposes a relaxed order as the answer, topped up where a least order
// is missed. It returns the first visit left to decide because the order makes
// it, and the first visit whose least order it missed; -1 for none.
func (s *search) offer(o Order, state []decision, spent []int64) (branch, missed int) {
	branch, missed = -1, -1
	for n, v := range s.visits {
		if spent[n] < 0 {
			continue
		}
		if spent[n] < v.least && missed < 0 {
			missed = n
		}
		if state[n] == undecided && branch < 0 {
			branch = n
		}
	}
	if missed >= 0 {
		o = s.topUp(o, spent)
		spent = s.spent(o)
	}
	for n, v := range s.visits {
		if spent[n] < 0 {
			continue
		}
		if spent[n] < v.least {
			return branch, missed
		}
		o.VisitCents += v.fee
		o.CostCents += v.fee
	}
	if !s.found || o.worth().less(s.best.worth()) {
		s.found, s.best = true, o
	}
	return branch, missed
}

func (s *search) unreached() error {
	shop := s.basket.Shops[s.missed.shop]
	return fmt.Errorf("%s: the least order of %d cents for deadline %d is not reached: buy more there or elsewhere",
		shop.Name, s.missed.least, s.missed.deadline+1)
}
