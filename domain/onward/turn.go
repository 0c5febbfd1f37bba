package onward

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Lasts is for how many days from the morning of From the food in the packs of
// a cook group reaches, boxes to come left aside.
type Lasts struct {
	Group            trip.GroupID
	Full, Most, Some float64 // at all of the need, at 90 % and at 80 %
	UntilFood        int     // days until food is taken on next, or the trip ends
}

// TurnBack says how long the way back is fed, while the way on is not: the way
// back is walked in as many days as were walked since food was last taken on.
type TurnBack struct {
	Needed bool
	By     int          // last day on whose evening the way back is still fed at 80 % of the need; 0: none is
	Days   int          // days back from there, or from the evening before From
	To     trip.PointID // 0: where the trip began
}

// Purchase is what is missing after a place where food can be bought until the
// next.
type Purchase struct {
	Point trip.PointID // 0: wherever food is found before Day
	Day   int          // first day that wants it
	Until int
	Kcal  units.Kcal
	Foods []FoodToBuy // what was packed for these days and is not there, most first
}

// FoodToBuy is a food that is missing.
type FoodToBuy struct {
	Food trip.FoodID
	Mass units.Mass
	Sold bool // by a shop of the trip at the point
}

// lasts says how far what is in the packs this morning reaches, by cook group.
func (w *work) lasts() []Lasts {
	leg := w.legNowOf(w.from)
	var list []Lasts
	for _, group := range w.trip.Groups {
		have := w.inPacks(w.from, group.ID)
		one := Lasts{Group: group.ID, UntilFood: leg.LastDay - w.from + 1}
		if w.needOf(w.from, group.ID) <= 0 {
			continue // nobody of it is there
		}
		one.Full, one.Most, one.Some = w.reach(group.ID, have, 1), w.reach(group.ID, have, 0.9), w.reach(group.ID, have, 0.8)
		list = append(list, one)
	}
	return list
}

// legNowOf gives the days without food coming in around a day.
func (w *work) legNowOf(day int) trip.Leg {
	leg := trip.LegOf(w.plan.Legs, day)
	now := w.plan.Legs[leg]
	for leg > 0 && w.unfed[leg] {
		leg--
		now.FirstDay, now.From = w.plan.Legs[leg].FirstDay, w.plan.Legs[leg].From
	}
	for next := trip.LegOf(w.plan.Legs, day) + 1; next < len(w.plan.Legs) && w.unfed[next]; next++ {
		now.LastDay = w.plan.Legs[next].LastDay
	}
	return now
}

// inPacks is what those of a cook group (0: all) have for a day and later out
// of what is in the packs on the morning of From. Nothing is left of what is
// eaten before that day.
func (w *work) inPacks(day int, group trip.GroupID) units.Kcal {
	have := units.Kcal(0)
	for i := range w.lots {
		l := &w.lots[i]
		if len(l.bags) > 0 && l.earliest <= w.from && l.now.day >= day && (group == 0 || l.now.group == group) {
			have += l.kcal()
		}
	}
	return have
}

// needOf is what those of a cook group (0: all) should eat from the packs on a
// day.
func (w *work) needOf(day int, group trip.GroupID) units.Kcal {
	need := units.Kcal(0)
	for i := range w.needs.Members {
		member := &w.needs.Members[i]
		if w.present(member.Member, day) && day <= len(member.Days) && (group == 0 || w.trip.Crew[i].Group == group) {
			need += member.Days[day-1].TargetKcal
		}
	}
	return need
}

// reach counts days until a part of the need is no longer covered; beyond the
// last day it goes on as on that day.
func (w *work) reach(group trip.GroupID, have units.Kcal, part float64) float64 {
	days := 0.0
	for number := w.from; ; number++ {
		need := w.needOf(min(number, len(w.trip.Days)), group) * units.Kcal(part)
		if need <= 0 || number > len(w.trip.Days)+30 {
			return days
		}
		if have < need {
			return days + float64(have/need)
		}
		have -= need
		days++
	}
}

// someNeed is the part of the need on which a group can walk for some days
// (common practice, no source).
const someNeed = 0.8

// turnBack finds the last evening from which what is left feeds the way back.
func (w *work) turnBack(rest *Rest) TurnBack {
	leg := w.legNowOf(w.from)
	short := slices.ContainsFunc(rest.Lasts, func(l Lasts) bool { return l.Some < float64(l.UntilFood) })
	if !short || !rest.Changed {
		return TurnBack{}
	}
	back := TurnBack{Needed: true, Days: w.from - leg.FirstDay, To: leg.From}
	walked := units.Kcal(0)
	for day := leg.FirstDay; day < w.from; day++ {
		walked += w.needOf(day, 0)
	}
	for evening := w.from - 1; evening < leg.LastDay; evening++ {
		if evening >= w.from {
			walked += w.needOf(evening, 0)
		}
		if evening < leg.FirstDay || w.inPacks(evening+1, 0) < walked*someNeed {
			continue
		}
		back.By, back.Days = evening, evening-leg.FirstDay+1
	}
	return back
}

// toBuy says what is missing from one place where food can be bought to the
// next.
func (w *work) toBuy(days []Day) []Purchase {
	var list []Purchase
	stops := w.stops()
	for i, stop := range stops {
		until := len(w.trip.Days)
		if i+1 < len(stops) {
			until = stops[i+1].Day - 1
		}
		stop.Until = until
		for _, day := range days {
			if day.Number >= stop.Day && day.Number <= until && day.Share() < lean {
				stop.Kcal += day.Planned - day.Kcal
			}
		}
		if stop.Kcal <= 0 {
			continue
		}
		stop.Foods = w.missingFoods(stop)
		list = append(list, stop)
	}
	return list
}

// stops are the stretches between places where food can be bought, the one
// before the first among them.
func (w *work) stops() []Purchase {
	list := []Purchase{{Day: w.from}}
	for i := range w.trip.Points {
		p := &w.trip.Points[i]
		if p.AfterDay >= w.from-1 && p.AfterDay < len(w.trip.Days) && w.sellsFood(p) {
			list = append(list, Purchase{Point: p.ID, Day: p.AfterDay + 1})
		}
	}
	slices.SortStableFunc(list, func(a, b Purchase) int { return cmp.Compare(a.Day, b.Day) })
	if len(list) > 1 && list[1].Day == w.from {
		list = list[1:] // the group stands at it
	}
	return list
}

func (w *work) sellsFood(p *trip.ResupplyPoint) bool {
	return p.Kind == trip.ShopOnWay || p.Kind == trip.Hut ||
		slices.ContainsFunc(w.trip.Shops, func(s trip.Shop) bool { return s.Point == p.ID && s.Use })
}

func (w *work) missingFoods(stop Purchase) []FoodToBuy {
	var list []FoodToBuy
	for _, bag := range w.gone {
		if bag.Day < stop.Day || bag.Day > stop.Until {
			continue
		}
		for _, c := range bag.Contents {
			at := slices.IndexFunc(list, func(f FoodToBuy) bool { return f.Food == c.Food })
			if at < 0 {
				at = len(list)
				list = append(list, FoodToBuy{Food: c.Food, Sold: w.trip.SoldAt(stop.Point, w.foods[c.Food])})
			}
			list[at].Mass += c.Mass
		}
	}
	slices.SortStableFunc(list, func(a, b FoodToBuy) int {
		return cmp.Or(cmp.Compare(b.Mass, a.Mass), cmp.Compare(a.Food, b.Food))
	})
	return list
}
