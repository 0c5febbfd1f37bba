package spoilage

import (
	"slices"

	"sumpter/domain/science/daytemp"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// farAway bounds days left where nothing is used up.
const farAway = 9999.0

// account is what the way uses of a food's allowances up to a moment.
type account struct {
	dose    float64
	days    float64 // since it was bought
	used    float64 // days of life at 20 C
	unknown bool    // a temperature on the way is not known
	hottest float64 // peak
	warmest float64 // highest mean of a stage or day
	path    []Stretch
}

// judge settles the fate of one serving; ok is false for a food the trip does
// not have.
func (j *judge) judge(s serving) (fate Fate, ok bool) {
	w, ok := j.wares[s.food]
	if !ok {
		return Fate{}, false
	}
	hour := hourOf(s.meal)
	a := j.account(&w, s.leg, s.day-1, hour, true)
	fate = Fate{Day: s.day, Meal: s.meal, Group: s.group, Food: s.food, Dose: a.dose, Path: a.path}
	opened := s.openedAt != nil && !w.perishable()
	if opened {
		fate.Dose += j.exposure.between(s.openedAt.day, s.openedAt.hour, s.day-1, hour)
	}
	soaked := 0.0
	if s.soak >= longSoakMinutes {
		soaked = exposureBetween(j.packs[s.day-1], hour-s.soak/60, hour)
		fate.Dose += soaked
	}
	if w.shelfDays > 0 {
		fate.QualityKnown = !a.unknown
		fate.QualityUsed = a.used / w.shelfDays
	}
	for i := range fate.Path { // from days to shares
		fate.Path[i].QualityUsed *= w.perDay()
	}
	why := j.reasonFor(&w, &a, fate.Dose, soaked, opened)
	fate.Verdict, fate.Why = why.verdict(), why.words()
	if fate.QualityKnown {
		fate.DaysLeft = j.daysLeft(&w, &a, fate.Dose, s.day-1)
	}
	if softens, known := w.food.Storage.SoftensAt.Get(); known {
		fate.Melts = a.hottest >= float64(softens)
	}
	fate.LatestDay = j.latestDay(&w, s.leg, hour)
	j.reasons = append(j.reasons, why)
	return fate, true
}

// account follows a food to a day and hour; the stretch in the pack, and how
// hot it gets there, is only told on request.
func (j *judge) account(w *ware, leg, day int, hour float64, keepPath bool) account {
	a := j.before(w, leg)
	j.inPack(w, &j.ways[leg], day, hour, &a, keepPath)
	if !w.perishable() {
		a.dose = 0
	}
	return a
}

type wareOnLeg struct {
	food trip.FoodID
	leg  int
}

// before is the account of the way to the packs, the same for all slots of a
// leg.
func (j *judge) before(w *ware, leg int) account {
	k := wareOnLeg{w.food.ID, leg}
	if known, ok := j.arrivals[k]; ok {
		known.path = slices.Clone(known.path)
		return known
	}
	var a account
	if j.ways[leg].sold[w.food.ID] {
		j.arrivals[k] = a
		return a
	}
	cold := w.keptCold(&j.trip.Settings)
	for _, s := range j.ways[leg].before {
		if cold {
			s = s.cooled()
		}
		if s.days <= 0 {
			continue
		}
		used := qualityRate(w.q10)(s.day, 0, 24*s.days)
		a.meet(s.day, s.days, exposureBetween(s.day, 0, 24*s.days), used)
		a.unknown = a.unknown || !s.known
		a.path = append(a.path, stretch(s.where, s.days, s.day, s.known, used))
	}
	j.arrivals[k] = a
	a.path = slices.Clone(a.path)
	return a
}

// inPack adds the time in the pack.
func (j *judge) inPack(w *ware, route *way, day int, hour float64, a *account, keepPath bool) {
	hours := float64(24*(day-route.arrives)) + hour - route.hour
	if hours <= 0 {
		return
	}
	used := j.quality[w.q10].between(route.arrives, route.hour, day, hour)
	a.used += used
	a.dose += j.exposure.between(route.arrives, route.hour, day, hour)
	a.days += hours / 24
	for d := route.arrives; d <= day; d++ {
		if from, to := route.hoursOn(d, day, hour); to-from >= 12 {
			a.warmest = max(a.warmest, j.packs[d].Mean())
		}
	}
	if !keepPath {
		return
	}
	start := j.packs[route.arrives].At(route.hour)
	span := daytemp.Day{Low: start, High: start}
	for d := route.arrives; d <= day; d++ {
		from, to := route.hoursOn(d, day, hour)
		low, high := extremes(j.packs[d], from, to)
		span.Low, span.High = min(span.Low, low), max(span.High, high)
	}
	a.hottest = max(a.hottest, span.High)
	a.path = append(a.path, stretch(pack, hours/24, span, true, used))
}

// hoursOn gives the hours of a day on which food of the way is in a pack, if
// it is eaten at an hour of a last day.
func (w *way) hoursOn(day, last int, hour float64) (from, to float64) {
	from, to = 0, 24
	if day == w.arrives {
		from = w.hour
	}
	if day == last {
		to = hour
	}
	return from, to
}

func (a *account) meet(day daytemp.Day, days, dose, used float64) {
	a.dose += dose
	a.used += used
	a.hottest = max(a.hottest, day.High)
	if days >= 0.5 {
		a.warmest = max(a.warmest, day.Mean())
	}
	a.days += days
}

// extremes gives the lowest and highest temperature between two hours of a day.
func extremes(day daytemp.Day, from, to float64) (low, high float64) {
	low, high = min(day.At(from), day.At(to)), max(day.At(from), day.At(to))
	if from <= hottestHour && hottestHour <= to {
		high = day.High
	}
	if coldest := hottestHour - 12; from <= coldest && coldest <= to {
		low = day.Low
	}
	return low, high
}

func stretch(where string, days float64, day daytemp.Day, known bool, used float64) Stretch {
	return Stretch{Where: where, Days: days, Low: units.Celsius(day.Low), High: units.Celsius(day.High), Known: known, QualityUsed: used}
}

// daysLeft gives how much longer the food keeps at the temperatures of a day,
// by quality and, if it is perishable, by the exposure account.
func (j *judge) daysLeft(w *ware, a *account, dose float64, day int) float64 {
	left := farAway
	if rate := j.quality[w.q10].rate(j.packs[day], 0, 24); rate > 0 {
		left = (w.shelfDays - a.used) / rate
	}
	if w.perishable() {
		if rate := exposureBetween(j.packs[day], 0, 24); rate > 0 {
			left = min(left, (1-dose)/rate)
		}
	}
	return min(farAway, max(0, left))
}

type lastMeal struct {
	wareOnLeg
	hour float64
}

// latestDay gives the last day of the trip on which the food of a leg could be
// eaten at an hour and be safe, 0 if there is none.
func (j *judge) latestDay(w *ware, leg int, hour float64) int {
	k := lastMeal{wareOnLeg{w.food.ID, leg}, hour}
	if known, ok := j.latest[k]; ok {
		return known
	}
	latest := 0
	for day := j.legs[leg].FirstDay - 1; day < len(j.trip.Days); day++ {
		a := j.account(w, leg, day, hour, false)
		if j.reasonFor(w, &a, a.dose, 0, false).verdict() != Safe {
			break
		}
		latest = day + 1
	}
	j.latest[k] = latest
	return latest
}

// reasonFor decides, worst first.
func (j *judge) reasonFor(w *ware, a *account, dose, soaked float64, opened bool) reason {
	switch {
	case soaked >= 1:
		return soakedTooLong
	case opened && dose >= 1:
		return openTooLong
	case w.control == trip.TCSUnknown && a.dose >= 1:
		return controlUnknown
	case dose >= 1:
		return warmTooLong
	case w.perishable() && a.unknown:
		return placeUnknown
	case w.perishable() && w.shelfDays == 0 && a.days > coldDays:
		return coldTooLong
	case w.perishable() && w.shelfDays == 0:
		return keptColdAllTheWay
	case w.shelfDays == 0:
		return shelfUnknown
	case a.unknown:
		return placeUnknown
	case a.used > w.shelfDays:
		return pastShelf
	case w.tooWarm(a.warmest) && a.used > heatMargin*w.shelfDays:
		return beyondHeat
	case w.tooWarm(a.warmest):
		return warmButFresh
	default:
		return keeps
	}
}
