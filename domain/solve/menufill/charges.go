package menufill

import "slices"

// charges is what each unit costs by which a plan breaks a rule.
type charges struct {
	kcal, protein []int64 // [day and class]
	total         []int64 // kcal of each class over the trip
	minute        int64
	use           int64 // a use too many, or too near another
}

// rates is the objective that usually comes with a unit: charged once, keeping a rule and breaking it cost about the same.
type rates struct {
	kcal, protein []float64 // [day and class], of all its eaters
	total         []float64
	minute, use   float64
}

// Shares of a day's food that a cook minute, and a use less, are usually worth.
const (
	minuteRate = 1.0 / 200
	useRate    = 1.0 / 50
)

func newRates(m *model) rates {
	value, kcal, protein := m.usualDay()
	r := rates{minute: minuteRate * value, use: useRate * value}
	for d := range m.p.Days {
		for g := range m.p.Classes {
			eaters := float64(m.present[g][d])
			r.kcal = append(r.kcal, eaters*value/max(1, kcal))
			r.protein = append(r.protein, eaters*value/max(1, protein)/2)
		}
	}
	for g := range m.p.Classes {
		r.total = append(r.total, float64(slices.Max(m.present[g]))*value/max(1, kcal))
	}
	return r
}

// usualDay is the average objective, kcal and tenths of grams of protein of a day that cooks at random.
func (m *model) usualDay() (value, kcal, protein float64) {
	for i := range m.slots {
		s := &m.slots[i]
		share := 1 / float64(m.p.Days*max(1, len(s.candidates)))
		for _, g := range s.classes {
			for _, r := range s.candidates {
				v := s.serving(r, g)
				value += float64(share * float64(s.cellValue(g, r)))
				kcal += float64(share * float64(v.Kcal*s.eaters[g]))
				protein += float64(share * float64(v.ProteinDg*s.eaters[g]))
			}
		}
	}
	return value, kcal, protein
}

// harder is how much dearer a rule gets that a stage leaves broken.
const harder = 1.2

// harden makes the rules of days and of the trip's energy dearer that the plan breaks, so that none of them stays broken to the end.
func (r *rates) harden(t *table) {
	if t.charged == 0 {
		return
	}
	for g := range t.m.p.Classes {
		if t.totalCharge(g, t.total[g]) > 0 {
			r.total[g] *= harder
		}
		for d := range t.m.p.Days {
			at := d*len(t.m.p.Classes) + g
			if t.m.eats[g][d] && t.dayCharge(at, d, g, t.kcal[at], t.protein[at]) > 0 {
				r.kcal[at], r.protein[at] = r.kcal[at]*harder, r.protein[at]*harder
			}
		}
	}
	for d, most := range t.m.p.CookMinutes {
		if t.minutes[d] > most {
			r.minute *= harder
			break
		}
	}
}

// times makes so many times the rates the charges, each at least 1.
func (r rates) times(n float64) charges {
	whole := func(list []float64) (c []int64) {
		for _, rate := range list {
			c = append(c, 1+int64(n*rate))
		}
		return c
	}
	return charges{kcal: whole(r.kcal), protein: whole(r.protein), total: whole(r.total), minute: 1 + int64(n*r.minute), use: 1 + int64(n*r.use)}
}
