package wholepacks

import (
	"fmt"
	"math"
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
	above  []*above              // by visit, once asked for
	nodes  int
	work   int // steps of reaching least orders, in all runs

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
	s.most, s.above = len(s.visits), make([]*above, len(s.visits))
	return s
}

// run finds the best order of at most so many visits; false if there is none.
// The error is that of the root: with every visit allowed, the stock is short.
func (s *search) run(most int) (bool, error) {
	s.most, s.nodes, s.found, s.open = most, 0, false, false
	if err := s.descend(make([]decision, len(s.visits))); err != nil || !s.found {
		return false, err
	}
	s.best.BoundCents, s.best.Proven = s.best.CostCents, true
	if s.open && s.bound.less(s.best.worth()) {
		s.best.BoundCents, s.best.Proven = s.bound.cents, s.bound.cents >= s.best.CostCents
	}
	return true, nil
}

// descend explores one node. A node that cannot be met is no error unless it
// is the root: there nothing has been refused yet.
func (s *search) descend(state []decision) error {
	root := s.nodes == 0
	s.nodes++
	state = s.atMost(state)
	var fees int64
	for i, v := range s.visits {
		if state[i] == made {
			fees += v.fee
		}
	}
	relaxed, err := s.relax(state, fees)
	if err != nil {
		if root {
			return err
		}
		return nil
	}
	order, bound, missed := relaxed.order, relaxed.bound, relaxed.missed
	if relaxed.outcome == unreachable {
		if !s.found {
			s.missed = s.visits[missed]
		}
		return nil
	}
	bound.cents += fees
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
		if branch >= 0 || missed >= 0 || bound.less(worth{order.CostCents + fees, order.worth().rest}) {
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

// relaxation is the best order under the decisions made so far.
type relaxation struct {
	order   Order
	bound   worth // no order under these decisions is better, fees aside
	missed  int   // visit that is made and whose least order is missed still, or -1
	outcome outcome
}

// relax solves every item alone with all visits but the refused, none paid.
// Where visits that are made then miss their least orders, the order is the
// best that reaches them.
func (s *search) relax(state []decision, fees int64) (relaxation, error) {
	var alone Order
	for i := range s.basket.Items {
		p, err := s.item(i, state)
		if err != nil {
			return relaxation{}, err
		}
		alone.take(p)
	}
	limit := int64(math.MaxInt64)
	if s.found {
		limit = s.best.CostCents - fees
	}
	x := relaxation{order: alone, bound: alone.lower(), missed: -1}
	var filled []int
	for {
		missed := s.missedOf(x.order, state)
		if len(missed) == 0 {
			x.missed = -1
			return x, nil
		}
		x.missed = missed[0]
		filled = append(filled, missed...)
		if len(filled) > mostReached {
			return x, nil
		}
		r := s.newReaching(alone, state, filled)
		o, tied, outcome := r.best(limit)
		switch x.outcome = outcome; outcome {
		case reached:
			if x.order, x.bound = o, o.lower(); tied {
				x.bound.rest = 0
			}
		case unreachable:
			return x, nil
		case unknown:
			if len(o.Purchases) > 0 {
				x.order = o
			} else if o, ok := r.likely(); ok {
				x.order = o
			}
			if b := (worth{cents: r.leastCents()}); x.bound.less(b) {
				x.bound = b
			}
			return x, nil
		}
	}
}

// missedOf lists the visits that are made and miss their least order.
func (s *search) missedOf(o Order, state []decision) []int {
	var missed []int
	spent := s.spent(o)
	for n, v := range s.visits {
		if state[n] == made && max(0, spent[n]) < v.least {
			missed = append(missed, n)
		}
	}
	return missed
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
