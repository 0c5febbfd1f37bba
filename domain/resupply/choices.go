package resupply

import (
	"errors"
	"math"
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/posting"
	"sumpter/domain/prose"
	"sumpter/domain/science/loadlimits"
	"sumpter/domain/science/walktime"
	"sumpter/domain/solve/stops"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// What the recommendation weighs against fees, in the smallest unit of money.
// Design choice; the leader picks by their own lights.
const (
	kilogramMorning = 50  // one kilogram carried one morning
	detourTenth     = 100 // a tenth of an hour of the whole group
)

// choices weighs the sets of points that could be used for the days as they
// are now bagged. Each box holds what is eaten until the next point.
func choices(t *trip.Trip, b bags.Result, legs []trip.Leg) ([]Choice, []findings.Finding) {
	if len(t.Points) == 0 || len(t.Days) == 0 {
		return nil, nil
	}
	p := problem(t, b)
	by := []stops.Measure{stops.ByMoney, stops.ByPeak, stops.ByCarried, stops.ByDetour}
	front, err := stops.Unbeaten(p, by...)
	var trouble []findings.Finding
	var no *stops.InfeasibleError
	if errors.As(err, &no) {
		trouble = gapFindings(t, no)
		for d := range p.RoomGrams {
			p.RoomGrams[d] = stops.Boundless
		}
		front, err = stops.Unbeaten(p, by...)
	}
	if err != nil {
		return nil, trouble
	}
	var list []Choice
	current := currentPoints(legs)
	least, found := int64(0), false
	best := 0
	for i, c := range front.Choices {
		if !found || c.Cost < least {
			least, best, found = c.Cost, i, true
		}
		list = append(list, choice(t, c))
		list[i].Current = slices.Equal(list[i].Points, current)
	}
	list[best].Recommended = true
	list[best].Why = why(t, list, best)
	if !slices.ContainsFunc(list, func(c Choice) bool { return c.Current }) {
		list = append(list, weigh(t, p, current))
	}
	return list, trouble
}

// problem states the trip for the solver.
func problem(t *trip.Trip, b bags.Result) stops.Problem {
	p := stops.Problem{
		FoodGrams: make([]int64, len(t.Days)), RoomGrams: room(t),
		CarryCents: kilogramMorning, WholeLegs: true,
	}
	byDay := make([][]*bags.Bag, len(t.Days)) // by the day a bag is first eaten from
	weight := make([]units.Mass, len(t.Days)) // of what is eaten each day, a bag itself with its first
	for i := range b.Bags {
		bag := &b.Bags[i]
		byDay[bag.Day-1] = append(byDay[bag.Day-1], bag)
		if bag.Kind == bags.ReserveBag {
			leaveRoom(p.RoomGrams, t.Member(bag.Member), bag)
			continue
		}
		weight[bag.Day-1] += bag.Tare
		for j := range bag.Uses {
			weight[bag.Uses[j].Day-1] += bag.Uses[j].Mass()
		}
	}
	for d := range weight {
		p.FoodGrams[d] = weight[d].CeilGrams()
	}
	for i := range t.Points {
		p.Points = append(p.Points, candidate(t, &t.Points[i], byDay))
	}
	return p
}

// leaveRoom takes a reserve out of the room for meals on all mornings it is
// carried, whichever points are used.
func leaveRoom(room []int64, member *trip.Member, reserve *bags.Bag) {
	for day := max(1, member.FirstDay); day <= reserve.LastDay; day++ {
		if room[day-1] != stops.Boundless {
			room[day-1] = max(0, room[day-1]-reserve.Mass().CeilGrams())
		}
	}
}

// candidate states one point. Its parcels are counted as they would be packed.
func candidate(t *trip.Trip, p *trip.ResupplyPoint, byDay [][]*bags.Bag) stops.Point {
	q := stops.Point{
		Day: p.AfterDay, StopCents: int64(p.VisitFee), ParcelCents: int64(p.FeePerParcel),
		Detour: tenths(detourHours(p)), DetourCents: detourTenth,
		ParcelGrams: stops.Boundless, Parcels: stops.Boundless, ParcelsFor: parcelsAt(t, p, byDay),
	}
	q.Shut = shut(t, p).String()
	return q
}

// detourHours is what a point costs in time: as given, else that of the extra
// way on the level.
//
// Source: walktime.Naismith.
func detourHours(p *trip.ResupplyPoint) units.Hours {
	if p.DetourHours > 0 {
		return p.DetourHours
	}
	return units.Hours(walktime.Naismith(p.Detour.Kilometres(), 0))
}

// shut says why a point cannot be used; nothing if it can.
func shut(t *trip.Trip, p *trip.ResupplyPoint) prose.Text {
	c := posting.Of(t, p)
	switch {
	case !c.PickUp.IsSet():
		return prose.Text{}
	case !c.Open:
		return prose.Say("%s is closed on %s and the day after", p.Name, t.DateOf(p.AfterDay))
	case c.Sent && c.Empty():
		return prose.Say("%s keeps a box too short a time for its transit", p.Name)
	default:
		return prose.Text{}
	}
}

// parcelsAt counts the parcels of a box for some days, each run of days once.
func parcelsAt(t *trip.Trip, p *trip.ResupplyPoint, byDay [][]*bags.Bag) func(first, last int) int64 {
	type run struct{ first, last int }
	counted := map[run]int64{}
	limit := limitOf(p)
	var pieces [][]piece // by day
	return func(first, last int) int64 {
		if pieces == nil {
			for _, held := range byDay {
				var day []piece
				for _, s := range sentOf(t, p, held) {
					if !s.nothing {
						day = append(day, s.piece())
					}
				}
				pieces = append(pieces, day)
			}
		}
		n, known := counted[run{first, last}]
		if !known {
			n = int64(len(packFew(slices.Concat(pieces[first-1:last]...), limit)))
			counted[run{first, last}] = n
		}
		return n
	}
}

// room is what the crew can carry of food each morning, in grams: up to hard
// limits, or the red caution where a member has none, less own kit and gear.
func room(t *trip.Trip) []int64 {
	var gear units.Mass
	for i := range t.Gear {
		gear += t.Gear[i].Mass
	}
	list := make([]int64, len(t.Days))
	for d := range t.Days {
		left := -gear
		for i := range t.Crew {
			if m := &t.Crew[i]; m.Present(d + 1) {
				caution := m.BodyMass.Scale(loadlimits.Cautions(m.Age < 18).Red)
				left += max(0, m.LoadLimit.Or(caution)-m.OwnKit)
			}
		}
		list[d] = max(0, int64(left/units.Gram))
	}
	return list
}

func choice(t *trip.Trip, c stops.Choice) Choice {
	out := Choice{
		Money: units.Money(c.Money / 1000), HeaviestFood: units.Mass(c.PeakGrams) * units.Gram,
		CarriedKgDay: float64(c.CarriedGramDays) / 1000, DetourHours: units.Hours(float64(c.Detour) / 10),
		Points: []trip.PointID{},
	}
	for _, s := range c.Stops {
		if s.Point >= 0 {
			out.Points = append(out.Points, t.Points[s.Point].ID)
		}
	}
	return out
}

// why says what the recommended choice is better at than the most different of
// the others: all food from the start, or else the lightest.
func why(t *trip.Trip, list []Choice, best int) prose.Text {
	if len(list) == 1 {
		return prose.Say("No other is better in anything.")
	}
	other := slices.IndexFunc(list, func(c Choice) bool { return len(c.Points) == 0 })
	if other < 0 || other == best {
		other = (best + 1) % len(list)
		for i, c := range list {
			if i != best && c.HeaviestFood < list[other].HeaviestFood {
				other = i
			}
		}
	}
	with, than := list[best], list[other]
	money := func(m units.Money) prose.Price { return prose.Price{Amount: m, Currency: t.Currency} }
	return prose.Say("Against %s: fees %s, heaviest morning %s, detour %s. Weighed at %s for each %s carried one morning and %s for an hour of detour, nothing is better.",
		pointNames(t, than), signed(with.Money-than.Money, func(m units.Money) prose.Text { return prose.Say("%s", money(m)) }),
		signed(with.HeaviestFood-than.HeaviestFood, func(m units.Mass) prose.Text { return prose.Say("%s", m) }),
		signed(tenths(with.DetourHours)-tenths(than.DetourHours), func(n int64) prose.Text { return prose.Say("%.1f h", float64(n)/10) }),
		money(kilogramMorning), units.Kilogram, money(10*detourTenth))
}

func tenths(h units.Hours) int64 { return int64(math.Round(float64(h) * 10)) }

// signed writes a difference with its sign.
func signed[T ~int64](difference T, write func(T) prose.Text) prose.Text {
	if difference < 0 {
		return prose.Say("\u2212%s", write(-difference))
	}
	return prose.Say("+%s", write(difference))
}

func pointNames(t *trip.Trip, c Choice) prose.Text {
	var names []string
	for _, id := range c.Points {
		if p := t.Point(id); p != nil {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return prose.Say("all food from the start")
	}
	return prose.List(" + ", names)
}

func currentPoints(legs []trip.Leg) []trip.PointID {
	list := []trip.PointID{}
	for _, leg := range legs {
		if leg.From != 0 {
			list = append(list, leg.From)
		}
	}
	return list
}

// weigh reckons a set of points that is beaten, or not to be used as it
// stands, but is the leader's.
func weigh(t *trip.Trip, p stops.Problem, points []trip.PointID) Choice {
	c := Choice{Points: points, Current: true, Beaten: true}
	from, at := 0, -1
	for n := 0; n <= len(points); n++ {
		until := len(p.FoodGrams)
		next := -1
		if n < len(points) {
			next = slices.IndexFunc(t.Points, func(q trip.ResupplyPoint) bool { return q.ID == points[n] })
			until = t.Points[next].AfterDay
		}
		var load, carried int64
		for d := from; d < until; d++ {
			load += p.FoodGrams[d]
			carried += p.FoodGrams[d] * int64(d+1-from)
		}
		c.HeaviestFood = max(c.HeaviestFood, units.Mass(load)*units.Gram)
		c.CarriedKgDay += float64(carried) / 1000
		if at >= 0 {
			q := p.Points[at]
			c.Money += units.Money(q.StopCents)
			if load > 0 {
				c.Money += units.Money(q.ParcelCents * q.ParcelsFor(from+1, until))
			}
			c.DetourHours += units.Hours(float64(q.Detour) / 10)
		}
		from, at = until, next
	}
	return c
}

// gapFindings says where the crew cannot carry enough to the next point.
func gapFindings(t *trip.Trip, no *stops.InfeasibleError) []findings.Finding {
	why := prose.Say("Hard limits of the crew, or 30 %% of body mass (20 %% under 18) where none is given, less own kit and gear; food with its bags.")
	var list []findings.Finding
	add := func(day int, what, remedy prose.Text) {
		list = append(list, findings.Finding{
			Severity: findings.LookAt, Stage: findings.Resupply, Code: "resupply-gap",
			Place: findings.Place{Day: day}, What: what, Why: why, Remedy: remedy,
		})
	}
	for _, h := range no.Heavy {
		add(h.Day, prose.Say("Day %d alone needs %s of food, the packs take %s.", h.Day, grams(h.NeedGrams), grams(h.RoomGrams)),
			prose.Say("Lighten own kit or gear, or plan lighter food."))
	}
	for _, g := range no.Gaps {
		what := prose.Say("Days %d to %d need %s of food, the packs take %s.", g.FirstDay, g.LastDay, grams(g.NeedGrams), grams(g.TakeGrams))
		var why []prose.Text
		for _, s := range g.Shut {
			why = append(why, shut(t, &t.Points[s.Point]))
		}
		if len(why) > 0 {
			what = prose.Say("Days %d to %d need %s of food, the packs take %s: %s.", g.FirstDay, g.LastDay, grams(g.NeedGrams), grams(g.TakeGrams), prose.List("; ", why))
		}
		add(g.FirstDay, what, prose.Say("Find a point between days %d and %d, lighten the packs by %s, or take more people or fewer days.",
			g.FirstDay, g.LastDay, grams(g.NeedGrams-g.TakeGrams)))
	}
	return list
}

func grams(g int64) units.Mass { return units.Mass(g) * units.Gram }
