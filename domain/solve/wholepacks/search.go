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
	most   int                   // visits allowed
	solved []map[string]Purchase // by item, then by the visits refused that touch it
	bare   []map[string][]option // by item, then by the visits refused and the one to be filled
	nodes  int
	work   int // steps of filling least orders

	found bool
	best  Order

	open   bool  // some branch ended without an order as good as its bound
	bound  worth // the least bound of such branches
	missed visit // the least order that failed there
}

func newSearch(b Basket) *search {
	s := &search{basket: b, solved: make([]map[string]Purchase, len(b.Items)), bare: make([]map[string][]option, len(b.Items))}
	for i := range s.solved {
		s.solved[i], s.bare[i] = map[string]Purchase{}, map[string][]option{}
	}
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
			if !shop.Everywhere && slices.ContainsFunc(b.Items, func(it Item) bool { return it.sells(v) }) {
				s.visits = append(s.visits, v)
			}
		}
	}
	s.most = len(s.visits)
	return s
}

// run finds the best order of at most so many visits; false if there is none.
// The error is that of the root: with every visit allowed, the stock is short.
func (s *search) run(most int) (bool, error) {
	s.most, s.nodes, s.work, s.found, s.open = most, 0, 0, false, false
	if err := s.descend(make([]decision, len(s.visits))); err != nil || !s.found {
		return false, err
	}
	s.best.BoundCents, s.best.Proven = s.best.CostCents, true
	if s.open && s.bound.less(s.best.worth()) {
		s.best.BoundCents, s.best.Proven = s.bound.cents, false
	}
	return true, nil
}

// descend explores one node. A node that cannot be met is no error unless it
// is the root: there nothing has been refused yet.
func (s *search) descend(state []decision) error {
	root := s.nodes == 0
	s.nodes++
	state = s.atMost(state)
	order, missed, err := s.relax(state)
	if err != nil {
		if root {
			return err
		}
		return nil
	}
	if missed == unreachable {
		return nil
	}
	bound := order.lower()
	for i, v := range s.visits {
		if state[i] == made {
			bound.cents += v.fee
		}
	}
	if s.found && !bound.less(s.best.worth()) {
		return nil
	}
	spent := s.spent(order)
	s.offer(order, spent)
	branch := slices.IndexFunc(spent, func(c int64) bool { return c >= 0 })
	for branch >= 0 && (spent[branch] < 0 || state[branch] != undecided) {
		if branch++; branch == len(spent) {
			branch = -1
		}
	}
	if branch < 0 || s.nodes >= MostNodes {
		if branch >= 0 || missed >= 0 || order.lower().cents < order.CostCents {
			s.leaveOpen(bound, missed)
		}
		return nil
	}
	for _, d := range []decision{refused, made} {
		state[branch] = d
		if err := s.descend(state); err != nil {
			return err
		}
	}
	return nil
}

// leaveOpen notes a node that was not explored to its end.
func (s *search) leaveOpen(bound worth, missed int) {
	if s.open && !bound.less(s.bound) {
		return
	}
	s.open, s.bound = true, bound
	if missed >= 0 {
		s.missed = s.visits[missed]
	}
}

// atMost copies a state; once all visits that are allowed are made, the others
// are refused.
func (s *search) atMost(state []decision) []decision {
	state = slices.Clone(state)
	count := 0
	for _, d := range state {
		if d == made {
			count++
		}
	}
	for i := range state {
		if state[i] == undecided && count >= s.most {
			state[i] = refused
		}
	}
	return state
}

// unreachable as a missed visit says that no purchase reaches its least order.
const unreachable = -2

// relax solves every item alone with all visits but the refused, none paid. If
// then one visit that is made misses its least order, the order is the best
// that reaches it; of several the first is reached, which still is a bound. It
// gives the place of a visit that is made and missed still, or -1.
func (s *search) relax(state []decision) (Order, int, error) {
	var o Order
	for i := range s.basket.Items {
		p, err := s.item(i, state)
		if err != nil {
			return Order{}, -1, err
		}
		o.take(p)
	}
	missed := s.missedOf(o, state)
	if missed < 0 {
		return o, -1, nil
	}
	reached, known, ok := s.reach(o, state, s.visits[missed])
	switch {
	case !known:
		return o, missed, nil
	case !ok:
		return o, unreachable, nil
	default:
		return reached, s.missedOf(reached, state), nil
	}
}

// missedOf is the first visit that is made and misses its least order, or -1.
func (s *search) missedOf(o Order, state []decision) int {
	spent := s.spent(o)
	for n, v := range s.visits {
		if state[n] == made && max(0, spent[n]) < v.least {
			return n
		}
	}
	return -1
}

// take adds the purchase of the next item.
func (o *Order) take(p Purchase) {
	o.Purchases = append(o.Purchases, p)
	o.CostCents += p.CostCents
	o.LeftGrams += p.LeftGrams
	o.Packages += p.Packages
}

// lower is a bound of an order's worth, visits aside.
func (o Order) lower() worth {
	w := o.worth()
	for _, p := range o.Purchases {
		w.cents += p.BoundCents - p.CostCents
	}
	return w
}

func (s *search) item(i int, state []decision) (Purchase, error) {
	it := s.basket.Items[i]
	key := string(s.refusedKey(it, state))
	if p, ok := s.solved[i][key]; ok {
		return p, nil
	}
	p, err := Solve(it.without(func(pack, deadline int) bool { return s.isRefused(it, state, pack, deadline) }))
	if err == nil {
		s.solved[i][key] = p
	}
	return p, err
}

// refusedKey tells the visits refused that touch an item.
func (s *search) refusedKey(it Item, state []decision) []byte {
	key := make([]byte, len(state), len(state)+2)
	for n, v := range s.visits {
		if state[n] == refused && it.sells(v) {
			key[n] = 1
		}
	}
	return key
}

func (s *search) isRefused(it Item, state []decision, pack, deadline int) bool {
	for n, v := range s.visits {
		if state[n] == refused && v.shop == it.Packages[pack].Shop && v.deadline == deadline {
			return true
		}
	}
	return false
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
					spent[n] = max(spent[n], 0) + pack.Offers[v.deadline].cents(count)
				}
			}
		}
	}
	return spent
}

// offer proposes a relaxed order as the answer, topped up where a least order
// is missed.
func (s *search) offer(o Order, spent []int64) {
	for n, v := range s.visits {
		if spent[n] >= 0 && spent[n] < v.least {
			o = s.topUp(o, spent)
			spent = s.spent(o)
			break
		}
	}
	for n, v := range s.visits {
		if spent[n] < 0 {
			continue
		}
		if spent[n] < v.least {
			return
		}
		o.Visits++
		o.VisitCents += v.fee
		o.CostCents += v.fee
	}
	if o.Visits <= s.most && (!s.found || o.worth().less(s.best.worth())) {
		s.found, s.best = true, o
	}
}

func (s *search) unreached() error {
	shop := s.basket.Shops[s.missed.shop]
	return fmt.Errorf("%s: the least order of %d cents for deadline %d is not reached: buy more there or elsewhere",
		shop.Name, s.missed.least, s.missed.deadline+1)
}
