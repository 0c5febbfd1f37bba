package menufill

// climber raises the bound that prices prove by the volume algorithm (Barahona and Anbil 2000, from memory): steps go from the best
// prices so far along the average of the rules' violations, which settles where single answers jump to and fro.
type climber struct {
	evaluate func(*prices) *relaxed
	steps    *budget
	mark     int64 // work at which the climb ends
	ceiling  int64 // a bound that no answer can reach: past it there is no answer, and prices would grow for ever
	groups   []coordinate
	// trust, when not 0, keeps each price near its start: a unit of its rule may come to cost so much more or less.
	trust float64
}

// coordinate is one price, at least 0, with the typical size of its rule's violation.
type coordinate struct {
	price   func(p *prices) *int64
	excess  func(p *prices, r *relaxed) float64 // how far the answer breaks the rule: the slope of the bound
	unit    float64
	average float64 // excess in units, averaged over the answers
	newest  float64
	most    int64 // what breaking the rule costs, and so the most it is worth; 0: it must not be broken
	low     int64 // least and most the price may be now
	high    int64
}

// The step lengths of the climb; tuned on generated trips against the linear programme's bound.
const (
	newest      = 0.1   // most weight of the newest answer in the average
	leastNewest = 0.005 // it is halved down to this
	halfEvery   = 50    // after so many steps
	halfUnder   = 0.01  // in which the bound grew by less than this share
	firstStep   = 0.5   // share of the way to the target
	longer      = 1.1   // after a step that helped and could have gone on
	shorter     = 0.67  // after patience steps that did not help
	patience    = 15
	ahead       = 0.02 // the target lies so much over the best bound
)

// climb returns the best prices found from start within so many steps, and their bound.
func (c *climber) climb(start *prices, steps int) (*prices, int64) {
	best := start.clone()
	r := c.evaluate(best)
	bound := r.bound
	for i := range c.groups {
		g := &c.groups[i]
		g.average = g.excess(best, r) / g.unit
		if g.low, g.high = 0, c.ceiling; c.trust > 0 { // a dearer price moves nothing: a broken rule costs more than any plan
			reach := int64(c.trust / g.unit)
			g.low, g.high = max(0, *g.price(best)-reach), *g.price(best)+reach
		}
		if g.most > 0 {
			g.high = min(g.high, g.most)
		}
	}
	stride, idle, most, last := firstStep, 0, newest, bound
	for round := range steps {
		if round%halfEvery == halfEvery-1 {
			if float64(bound-last) < halfUnder*float64(bound) {
				most = max(most/2, leastNewest)
			}
			last = bound
		}
		if c.steps.past(c.mark) || bound > c.ceiling {
			break
		}
		trial := best.clone()
		distance := ahead * float64(max(bound, -bound, 1<<scale))
		if !c.step(trial, stride*distance) {
			break
		}
		r := c.evaluate(trial)
		agree := c.average(trial, r, most)
		if r.bound > bound {
			best, bound, idle = trial, r.bound, 0
			if agree {
				stride *= longer
			}
			continue
		}
		if idle++; idle >= patience {
			stride, idle = stride*shorter, 0
		}
	}
	return best, bound
}

// average takes the newest answer into the averages, by as much as makes them smallest within the most allowed, and tells whether it
// points the same way.
func (c *climber) average(p *prices, r *relaxed, most float64) bool {
	dot, old, latest := 0.0, 0.0, 0.0
	for i := range c.groups {
		g := &c.groups[i]
		g.newest = g.excess(p, r) / g.unit
		dot += float64(g.newest * g.average)
		old += float64(g.average * g.average)
		latest += float64(g.newest * g.newest)
	}
	share := most / 10
	if apart := old + latest - 2*dot; apart > 0 && old > dot {
		share = min(most, max(share, (old-dot)/apart))
	}
	for i := range c.groups {
		g := &c.groups[i]
		g.average = float64(share*g.newest) + float64((1-share)*g.average)
	}
	return dot > 0
}

// step moves the prices along the averages; false when no rule is broken on average, so that the bound cannot rise.
func (c *climber) step(p *prices, distance float64) bool {
	norm := 0.0
	for i := range c.groups {
		if g := &c.groups[i]; g.average > 0 || *g.price(p) > 0 {
			norm += float64(g.average * g.average)
		}
	}
	if norm == 0 {
		return false
	}
	length := distance / norm
	for i := range c.groups {
		g := &c.groups[i]
		price := g.price(p)
		*price = min(g.high, max(g.low, *price+int64(float64(length*g.average)/g.unit)))
	}
	return true
}
