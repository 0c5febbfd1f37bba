package wholepacks

import "slices"

// creditScale is what a cent counts in reduced prices. On a visit whose least
// order is to be reached a cent spent is credited with a part of it.
const creditScale = 1 << 12

// reaching is the search for the best order that spends, on some visits, at
// least their least order, the visits refused aside.
//
// A credit for each cent spent on those visits (a Lagrange multiplier) parts
// the items: each at its best with the credit, and the credit of the least
// orders paid back, is a bound. At the best credits the bound is so near that
// few ways to buy an item stay within what an order may cost above it; those
// are combined, item by item, by what is spent on each visit.
type reaching struct {
	search  *search
	visits  []int // places in search.visits
	items   []*reachItem
	fixed   Order // the other items
	credit  []int64
	bound   int64 // scaled; no order is under it
	onVisit []*above
}

// reachItem is an item sold on a visit to be filled.
type reachItem struct {
	index  int
	item   Item // without what is refused
	offers []reachOffer
	worths map[string]credited
	paid   int64              // its part of the bound
	after  []Item             // at the credits: with the offers from one on
	least  []map[string]int64 // what those cost at least, by need
	rests  map[string]*Purchase
	rest   Item // with none of the offers
}

// reachOffer is a package on one of the visits.
type reachOffer struct {
	pack, deadline int
	visit          int // place in reaching.visits
	most           int64
}

type credited struct {
	bound int64
	spent []int64
}

func (s *search) newReaching(relaxed Order, state []decision, visits []int) *reaching {
	r := &reaching{search: s, visits: visits, credit: make([]int64, len(visits))}
	for _, n := range visits {
		r.onVisit = append(r.onVisit, s.aboveOn(n))
	}
	for i, it := range s.basket.Items {
		var offers []reachOffer
		for place, n := range visits {
			v := s.visits[n]
			for p, pack := range it.Packages {
				if pack.Shop == v.shop && pack.Offers[v.deadline].Available > 0 {
					offers = append(offers, reachOffer{p, v.deadline, place, it.mostHere(p, v)})
				}
			}
		}
		if len(offers) == 0 {
			r.fixed.take(relaxed.Purchases[i])
			continue
		}
		open := it.without(func(pack, deadline int) bool { return s.isRefused(it, state, pack, deadline) })
		r.items = append(r.items, &reachItem{
			index: i, item: open, offers: offers, worths: map[string]credited{},
			rest:  open.without(func(pack, deadline int) bool { return s.isOn(it, visits, pack, deadline) }),
			rests: map[string]*Purchase{},
		})
	}
	return r
}

func (s *search) isOn(it Item, visits []int, pack, deadline int) bool {
	return slices.ContainsFunc(visits, func(n int) bool {
		return s.visits[n].shop == it.Packages[pack].Shop && s.visits[n].deadline == deadline
	})
}

// at is the item with scaled prices less the credit, and the first offers left out.
func (ri *reachItem) at(credit []int64, from int) Item {
	it := ri.item.without(func(int, int) bool { return false })
	for p := range it.Packages {
		// Prices now differ by deadline; that each may draw on the whole stock
		// keeps it a bound.
		it.Packages[p].OneStock = false
		for k := range it.Packages[p].Offers {
			o := &it.Packages[p].Offers[k]
			o.PriceCents, o.ManyCents = o.PriceCents*creditScale, o.ManyCents*creditScale
		}
	}
	for n, off := range ri.offers {
		o := &it.Packages[off.pack].Offers[off.deadline]
		o.PriceCents = o.PriceCents / creditScale * (creditScale - credit[off.visit])
		o.ManyCents = o.ManyCents / creditScale * (creditScale - credit[off.visit])
		if n < from {
			*o = Offer{}
		}
	}
	return it
}

// worthAt is what the item costs at least with credits, and what it then
// spends on each visit.
func (r *reaching) worthAt(ri *reachItem, credit []int64) credited {
	touched := make([]int64, len(credit))
	for _, off := range ri.offers {
		touched[off.visit] = credit[off.visit]
	}
	key := keyOf(touched)
	if w, known := ri.worths[key]; known {
		return w
	}
	r.search.work += ri.item.size()
	w := credited{spent: make([]int64, len(credit))}
	if p, err := ri.at(credit, 0).buy(); err == nil {
		w.bound = p.BoundCents
		for _, off := range ri.offers {
			w.spent[off.visit] += ri.item.Packages[off.pack].Offers[off.deadline].cents(p.Counts[off.pack][off.deadline])
		}
	}
	ri.worths[key] = w
	return w
}

// size is about how many steps it takes to solve the item.
func (it Item) size() int {
	var need int64
	for _, q := range it.NeedGrams {
		need += q
	}
	if step := it.step(); step > 0 {
		return 100 + int(need/step)*len(it.Packages)
	}
	return 100
}

// boundAt is the bound at credits, and by how much each least order is missed there.
func (r *reaching) boundAt(credit []int64) (bound int64, missing []int64) {
	bound = r.fixed.lower().cents * creditScale
	missing = make([]int64, len(credit))
	for place, n := range r.visits {
		missing[place] = r.search.visits[n].least
		bound += missing[place] * credit[place]
	}
	for _, ri := range r.items {
		w := r.worthAt(ri, credit)
		bound += w.bound
		for place, cents := range w.spent {
			missing[place] -= cents
		}
	}
	return bound, missing
}

// raise finds good credits, one after another until none gets better, and
// their bound.
func (r *reaching) raise() {
	r.bound, _ = r.boundAt(r.credit)
	for sweep := 0; sweep < 4; sweep++ {
		before := r.bound
		for place := range r.credit {
			r.raiseOne(place)
		}
		if r.bound == before || len(r.credit) == 1 {
			break
		}
	}
	for _, ri := range r.items {
		ri.paid = r.worthAt(ri, r.credit).bound
		for from := range len(ri.offers) + 1 {
			ri.after, ri.least = append(ri.after, ri.at(r.credit, from)), append(ri.least, map[string]int64{})
		}
	}
}

// raiseOne finds the best credit of one visit, the others fixed. The bound is
// concave and made of straight pieces: each step tries where the pieces at both
// ends meet.
func (r *reaching) raiseOne(place int) {
	credit := slices.Clone(r.credit)
	try := func(c int64) (bound, slope int64) {
		credit[place] = c
		b, missing := r.boundAt(credit)
		if b > r.bound {
			r.bound, r.credit = b, slices.Clone(credit)
		}
		return b, missing[place]
	}
	low, high := int64(0), int64(creditScale-1)
	atLow, up := try(low)
	if up <= 0 {
		return
	}
	atHigh, down := try(high)
	for down < 0 && high-low > 1 {
		meet := low + (atHigh-atLow-down*(high-low))/(up-down)
		meet = min(max(meet, low+1), high-1)
		b, slope := try(meet)
		if slope > 0 {
			low, atLow, up = meet, b, slope
		} else {
			high, atHigh, down = meet, b, slope
		}
		if slope == 0 || up == down {
			break
		}
	}
}

// likely is the order with each item at its best with the credits, and what is
// then missing bought above need; false if that cannot be had.
func (r *reaching) likely() (Order, bool) {
	chosen := map[int]Purchase{}
	for _, ri := range r.items {
		p, err := ri.at(r.credit, 0).buy()
		if err != nil {
			return Order{}, false
		}
		chosen[ri.index] = ri.item.priced(p)
	}
	o := r.assemble(chosen)
	spent := r.search.spent(o)
	for place, n := range r.visits {
		v := r.search.visits[n]
		missing := v.least - max(0, spent[n])
		if missing > 0 && len(r.onVisit[place].extras) == 0 {
			return Order{}, false
		}
		for _, x := range r.onVisit[place].packages(max(0, missing)) {
			o.add(x, v.deadline)
		}
	}
	return o, true
}

// assemble makes an order of chosen purchases and the fixed ones.
func (r *reaching) assemble(chosen map[int]Purchase) Order {
	var o Order
	next := 0
	for i := range r.search.basket.Items {
		p, ok := chosen[i]
		if !ok {
			p = r.fixed.Purchases[next]
			next++
		}
		o.take(p)
	}
	return o
}
