package stops

import (
	"cmp"
	"slices"
)

// node is a usable point, or the start.
type node struct {
	Point
	day, point int
}

// line is a problem made ready: sums over days, usable points in order.
type line struct {
	problem Problem
	days    int
	eaten   []int64 // eaten[d]: by days 1..d
	moment  []int64 // sum of day times food of days 1..d
	fed     []int   // fed[v]: last day that supplies through v reach, fasting days included
	reach   []int   // reach[t]: last day through which the packs can hold leaving t
	nodes   []node
	labels  []label
	left    int // comparisons of labels still allowed
}

func newLine(p Problem) *line {
	days := len(p.FoodGrams)
	l := &line{problem: p, days: days,
		eaten: make([]int64, days+1), moment: make([]int64, days+1),
		fed: make([]int, days+1), reach: make([]int, days+1)}
	for d, g := range p.FoodGrams {
		l.eaten[d+1] = l.eaten[d] + g
		l.moment[d+1] = l.moment[d] + int64(d+1)*g
	}
	l.fed[days], l.reach[days] = days, days
	for t := days - 1; t >= 0; t-- {
		l.fed[t] = t
		if p.FoodGrams[t] == 0 {
			l.fed[t] = l.fed[t+1]
		}
		// Every morning on the way must have the room, not just the first.
		v := l.reach[t+1]
		for v > t && l.eaten[v]-l.eaten[t] > p.RoomGrams[t] {
			v--
		}
		l.reach[t] = v
	}
	l.nodes = []node{{Point: Point{ParcelGrams: Boundless, Parcels: Boundless}, point: -1}}
	for i, pt := range p.Points {
		if pt.Shut == "" && pt.Parcels > 0 && pt.Day >= 1 && pt.Day < days {
			l.nodes = append(l.nodes, node{pt, pt.Day, i})
		}
	}
	slices.SortStableFunc(l.nodes, func(a, b node) int {
		return cmp.Or(cmp.Compare(a.day, b.day), cmp.Compare(a.point, b.point))
	})
	return l
}

// label is a partial choice that has just left a node.
type label struct {
	sum     [measures]int64
	node    int32
	through int // supplied through this day
	prev    int32
	stops   int32
}

// front is a set of labels, by index, none of which beats another.
type front []int32

// place makes room for a label in a front: false if one there is as good by all
// measures; else those that the label beats are struck. Equals: fewer stops win.
func (l *line) place(f *front, b *label, by []Measure) bool {
	l.left -= len(*f)
	if l.left < 0 {
		return false
	}
	keep := (*f)[:0]
	for _, at := range *f {
		old := &l.labels[at]
		better, worse := false, false
		for _, m := range by {
			better = better || b.sum[m] < old.sum[m]
			worse = worse || b.sum[m] > old.sum[m]
		}
		if !better && (worse || old.stops <= b.stops) {
			// Nothing was struck before: old would have beaten that as well.
			return false
		}
		if better && worse {
			keep = append(keep, at)
		}
	}
	*f = keep
	return true
}

// merge brings labels into another front.
func (l *line) merge(into *front, from front, by []Measure) {
	for _, at := range from {
		if l.place(into, &l.labels[at], by) {
			*into = append(*into, at)
		}
	}
}

// run sets labels from a node on, and returns those at the end of the trip;
// false if that took more comparisons than allowed.
func (l *line) run(from int, by []Measure, allowed int) (ends []int32, ok bool) {
	l.labels, l.left = l.labels[:0], allowed
	arrive := make([][]front, len(l.nodes))
	for n := range arrive {
		arrive[n] = make([]front, l.days+1)
	}
	var end front
	for n := from; n < len(l.nodes); n++ {
		leave := l.leave(n, n == from, arrive[n], by)
		for v := range leave {
			if len(leave[v]) == 0 {
				continue
			}
			if v == l.days {
				l.merge(&end, leave[v], by)
				continue
			}
			for m := n + 1; m < len(l.nodes) && l.nodes[m].day <= v; m++ {
				if l.nodes[m].day > l.nodes[n].day && l.mayArrive(m, v) {
					l.merge(&arrive[m][v], leave[v], by)
				}
			}
		}
		if l.left < 0 {
			return nil, false
		}
	}
	return end, true
}

// leave makes the labels that leave a node, by the day supplied through. A run
// begins at its first node with nothing in hand.
func (l *line) leave(n int, first bool, arrive []front, by []Measure) []front {
	leave := make([]front, l.days+1)
	at := l.nodes[n]
	if first {
		start := label{prev: -1, node: int32(n), through: l.fed[at.day]}
		if start.through == l.days {
			l.labels = append(l.labels, start)
			leave[l.days] = front{int32(len(l.labels) - 1)}
			return leave
		}
		if start.through >= l.nextStop(n) {
			// Nothing is eaten before the next stop: leave with nothing.
			leave[start.through] = front{int32(len(l.labels))}
			l.labels = append(l.labels, start)
		}
		l.takeOn(leave, n, start, -1, by)
		return leave
	}
	for u := range arrive {
		for _, from := range arrive[u] {
			l.takeOn(leave, n, l.labels[from], from, by)
		}
	}
	return leave
}

// takeOn extends one label, arrived at node n with index from (-1: the run
// begins here), by every amount that can be taken on there.
func (l *line) takeOn(leave []front, n int, b label, from int32, by []Measure) {
	at, t := &l.nodes[n], int64(l.nodes[n].day)
	held := b.through
	next := l.nextStop(n)
	b.node, b.prev, b.stops = int32(n), from, b.stops+1
	base := b.sum
	for v := l.fed[held+1]; v <= l.reach[t]; v = l.fed[v+1] {
		g := l.eaten[v] - l.eaten[held]
		parcels := at.parcels(held+1, v, g)
		if parcels > at.Parcels {
			return
		}
		if v >= next {
			carried := l.moment[v] - l.moment[held] - t*g
			money := 1000*(at.StopCents+parcels*at.ParcelCents) + at.PremiumCents*g
			b.through = v
			b.sum[ByMoney] = base[ByMoney] + money
			b.sum[ByCarried] = base[ByCarried] + carried
			b.sum[ByDetour] = base[ByDetour] + at.Detour
			b.sum[ByPeak] = max(base[ByPeak], l.eaten[v]-l.eaten[t])
			b.sum[ByCost] = base[ByCost] + money + l.problem.CarryCents*carried + 1000*at.Detour*at.DetourCents
			if l.place(&leave[v], &b, by) {
				leave[v] = append(leave[v], int32(len(l.labels)))
				l.labels = append(l.labels, b)
			}
		}
		if v == l.days {
			return
		}
	}
}

// nextStop is the first day after node n at which a usable point or the end lies.
func (l *line) nextStop(n int) int {
	for _, m := range l.nodes[n:] {
		if m.day > l.nodes[n].day {
			return m.day
		}
	}
	return l.days
}

// mayArrive tells whether arriving at node m with supplies through day v can be
// worth it. Where more can be taken on freely, it is at best when all is used up.
func (l *line) mayArrive(m, v int) bool {
	if l.problem.WholeLegs || l.nodes[m].free() {
		return v == l.fed[l.nodes[m].day]
	}
	return true
}
