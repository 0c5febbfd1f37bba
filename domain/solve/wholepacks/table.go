package wholepacks

import (
	"cmp"
	"math"
)

// worth is the objective of a partial purchase: cents, then steps bought and
// packages in one number (steps << packageBits | packages). Both add up.
type worth struct {
	cents int64
	rest  int64
}

// packageBits leaves room for more packages than MostSteps can hold.
const packageBits = 24

var never = worth{cents: math.MaxInt64}

func (a worth) less(b worth) bool {
	return a.cents < b.cents || a.cents == b.cents && a.rest < b.rest
}

func (a worth) compare(b worth) int {
	return cmp.Or(cmp.Compare(a.cents, b.cents), cmp.Compare(a.rest, b.rest))
}

func (a worth) plus(b worth) worth { return worth{a.cents + b.cents, a.rest + b.rest} }

// table holds the best worth for each amount bought so far, in steps. The top
// amount stands for "all that will ever be needed, or more": whatever passes
// it is left over, and nothing more is bought from there.
type table struct {
	best []worth
}

func newTable(steps int) *table {
	t := &table{best: make([]worth, steps+1)}
	for e := 1; e <= steps; e++ {
		t.best[e] = never
	}
	return t
}

func (t *table) top() int { return len(t.best) - 1 }

// pass is one sweep of the table that offers one package (a fixed number of
// them at a time) and remembers where it was taken.
type pass struct {
	pack, deadline int
	count          int64 // packages taken at a time
	steps          int   // what they add, at most the table's top
	repeat         bool  // may be taken again
	taken          []uint64
	counts         []int32 // where the number is free: packages taken for each amount
	topFrom        int     // the amount from which the top was reached
}

// buy sweeps the table with one offer: once if the stock cannot run out, else
// with 1, 2, 4 .. packages at a time so that every number up to the stock is a
// sum of them.
func (t *table) buy(pack, deadline int, steps int64, o Offer) []*pass {
	enough := (int64(t.top())-1)/steps + 1
	if o.ManyFrom > 0 && o.Available >= o.ManyFrom {
		return []*pass{t.buyMany(pack, deadline, steps, o)}
	}
	if o.Available >= enough {
		p := t.newPass(pack, deadline, 1, steps)
		p.repeat = true
		t.sweepRepeat(p, price(1, steps, o))
		return []*pass{p}
	}
	var passes []*pass
	for left, n := o.Available, int64(1); left > 0; left, n = left-n, 2*n {
		n = min(n, left)
		p := t.newPass(pack, deadline, n, steps)
		t.sweepOnce(p, price(n, steps, o))
		passes = append(passes, p)
	}
	return passes
}

// buyMany sweeps the table with every number of an offer whose price falls with
// the number; no more than what is needed, or what the lower price asks for.
func (t *table) buyMany(pack, deadline int, steps int64, o Offer) *pass {
	p := &pass{pack: pack, deadline: deadline, steps: int(min(steps, int64(t.top()))), counts: make([]int32, len(t.best))}
	for e := t.top() - 1; e >= 0; e-- { // downwards, so that each amount is left as it was before
		from := t.best[e]
		if from.cents == never.cents {
			continue
		}
		most := min(o.Available, max(o.ManyFrom, int64(t.top()-e-1)/steps+1))
		for n := int64(1); n <= most; n++ {
			to := int(min(int64(e)+n*steps, int64(t.top())))
			add := price(n, steps, o)
			if sum := from.plus(add); sum.less(t.best[to]) {
				t.best[to], p.counts[to] = sum, int32(n)
				if to == t.top() {
					p.topFrom = e
				}
			}
		}
	}
	return p
}

// takenAt tells how many packages the pass added to reach an amount; 0: none.
func (p *pass) takenAt(e int) int64 {
	if p.counts != nil {
		return int64(p.counts[e])
	}
	if p.taken[e/64]>>(e%64)&1 == 1 {
		return p.count
	}
	return 0
}

func price(n, steps int64, o Offer) worth {
	return worth{cents: o.cents(n), rest: n*steps<<packageBits + n}
}

func (t *table) newPass(pack, deadline int, count, steps int64) *pass {
	return &pass{
		pack: pack, deadline: deadline, count: count,
		steps: int(min(count*steps, int64(t.top()))),
		taken: make([]uint64, t.top()/64+1),
	}
}

// sweepRepeat goes upwards, so that a package may follow itself.
func (t *table) sweepRepeat(p *pass, add worth) {
	for e := range t.top() {
		t.try(p, e, add)
	}
}

// sweepOnce goes downwards, so that each amount is left as it was before.
func (t *table) sweepOnce(p *pass, add worth) {
	for e := t.top() - 1; e >= 0; e-- {
		t.try(p, e, add)
	}
}

func (t *table) try(p *pass, e int, add worth) {
	from := t.best[e]
	if from.cents == never.cents {
		return
	}
	to := min(e+p.steps, t.top())
	sum := from.plus(add)
	if !sum.less(t.best[to]) {
		return
	}
	t.best[to] = sum
	p.taken[to/64] |= 1 << (to % 64)
	if to == t.top() {
		p.topFrom = e
	}
}

// settle closes a deadline: amounts under what is due are struck out, and so
// is each amount that a larger one equals or beats.
func (t *table) settle(due int) {
	lead := never
	for e := t.top(); e >= 0; e-- {
		if e < due || !t.best[e].less(lead) {
			t.best[e] = never
			continue
		}
		lead = t.best[e]
	}
}

// bought is one step of the answer.
type bought struct {
	pack, deadline int
	count          int64
}

// trace walks the passes backwards from amount e to nothing.
func trace(passes []*pass, e int) []bought {
	var list []bought
	top := e
	for i := len(passes) - 1; i >= 0; i-- {
		p := passes[i]
		for n := p.takenAt(e); n > 0; n = p.takenAt(e) {
			list = append(list, bought{p.pack, p.deadline, n})
			switch {
			case e == top:
				e = p.topFrom
			case p.counts != nil:
				e -= int(n) * p.steps
			default:
				e -= p.steps
			}
			if !p.repeat {
				break
			}
		}
	}
	return list
}
