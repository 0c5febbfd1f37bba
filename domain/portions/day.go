package portions

import (
	"math"
	"slices"
)

// sizeDay chooses the size of every plate of one member's day: all by the
// same factor, within what people eat of each recipe, so that the day brings
// its energy; then more of what is rich in protein and less of what is not,
// until the day brings its protein too.
func (s *sizing) sizeDay(who, day int) {
	plates := s.plates[who][day-1]
	if len(plates) == 0 || who >= len(s.needs.Members) {
		return
	}
	need := s.needs.Members[who].Days[day-1]
	scales := commonScales(plates, float64(need.TargetKcal))
	d := &dayPlates{plates: plates, scales: scales}
	d.raiseProtein(need.ProteinGrams, float64(need.TargetKcal), s.trip.Settings.DayHigh)
	for i := range plates {
		s.scale[plates[i].key] = d.scales[i]
	}
}

// commonScales finds the one factor, held within each recipe's bounds, at
// which the plates bring the energy. The sum grows with the factor, so
// halving finds it; where the bounds forbid it the nearest is taken.
func commonScales(plates []plate, kcal float64) []float64 {
	low, high := 0.0, 0.0
	for _, p := range plates {
		high = math.Max(high, p.recipe.MaxScale)
	}
	for range 60 {
		middle := (low + high) / 2
		if energyAt(plates, middle) < kcal {
			low = middle
		} else {
			high = middle
		}
	}
	scales := make([]float64, len(plates))
	for i, p := range plates {
		scales[i] = clamp(high, p.recipe.MinScale, p.recipe.MaxScale)
	}
	return scales
}

func energyAt(plates []plate, factor float64) float64 {
	sum := 0.0
	for _, p := range plates {
		sum += p.fixed + p.grows*clamp(factor, p.recipe.MinScale, p.recipe.MaxScale)
	}
	return sum
}

func clamp(value, low, high float64) float64 { return math.Max(low, math.Min(high, value)) }

// dayPlates is one day with its sizes so far.
type dayPlates struct {
	plates []plate
	scales []float64
}

func (d *dayPlates) kcal() float64 {
	sum := 0.0
	for i, p := range d.plates {
		sum += p.fixed + p.grows*d.scales[i]
	}
	return sum
}

func (d *dayPlates) protein() float64 {
	sum := 0.0
	for i, p := range d.plates {
		sum += p.always + p.growsProtein*d.scales[i]
	}
	return sum
}

// raiseProtein moves energy from the plates poorest in protein to the
// richest, a pair at a time, and only then lets the day grow to its upper
// bound. It stops when the protein is there or the bounds are reached.
func (d *dayPlates) raiseProtein(protein, kcal, dayHigh float64) {
	order := make([]int, len(d.plates))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return compareFloats(d.richness(b), d.richness(a))
	})
	poor := len(order) - 1
	for rich := 0; rich < len(order) && d.protein() < protein; {
		i, j := order[rich], order[max(poor, 0)]
		if rich >= poor {
			break
		}
		moved := d.exchange(i, j, protein-d.protein())
		switch {
		case d.scales[i] >= d.plates[i].recipe.MaxScale-1e-12:
			rich++
		case d.scales[j] <= d.plates[j].recipe.MinScale+1e-12:
			poor--
		case moved == 0:
			rich++
		}
	}
	for _, i := range order {
		d.grow(i, protein-d.protein(), kcal*dayHigh-d.kcal())
	}
}

// richness is grams of protein per kcal of what grows.
func (d *dayPlates) richness(i int) float64 {
	if d.plates[i].grows <= 0 {
		return 0
	}
	return d.plates[i].growsProtein / d.plates[i].grows
}

// exchange grows plate i and shrinks plate j by the same energy, as far as
// the missing protein asks and the bounds allow. It gives the kcal moved.
func (d *dayPlates) exchange(i, j int, missing float64) float64 {
	gain := d.richness(i) - d.richness(j)
	if gain <= 0 || d.plates[i].grows <= 0 || d.plates[j].grows <= 0 {
		return 0
	}
	room := (d.plates[i].recipe.MaxScale - d.scales[i]) * d.plates[i].grows
	spare := (d.scales[j] - d.plates[j].recipe.MinScale) * d.plates[j].grows
	kcal := math.Min(missing/gain, math.Min(room, spare))
	if kcal <= 0 {
		return 0
	}
	d.scales[i] = math.Min(d.plates[i].recipe.MaxScale, d.scales[i]+kcal/d.plates[i].grows)
	d.scales[j] = math.Max(d.plates[j].recipe.MinScale, d.scales[j]-kcal/d.plates[j].grows)
	return kcal
}

// grow makes plate i larger for missing protein, within the energy there is
// room for.
func (d *dayPlates) grow(i int, missing, room float64) {
	p := d.plates[i]
	if missing <= 0 || room <= 0 || p.growsProtein <= 0 {
		return
	}
	by := math.Min(missing/p.growsProtein, p.recipe.MaxScale-d.scales[i])
	if p.grows > 0 {
		by = math.Min(by, room/p.grows)
	}
	d.scales[i] += math.Max(0, by)
}

func compareFloats(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	default:
		return 0
	}
}
