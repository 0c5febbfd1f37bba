package menufill

// missed is what class g misses of its wants on day d with the amounts got, as objective.
func (m *model) missed(g, d int, got []int64) int64 {
	sum := int64(0)
	for k, amount := range got {
		if short := int64(m.p.Classes[g].Wants[k][d]) - amount; short > 0 {
			sum += short * m.wantBurden(k, g, d)
		}
	}
	return sum
}

// wantBurden is what each unit that every eater of a class misses costs.
func (m *model) wantBurden(k, g, d int) int64 {
	return int64(m.p.Wants[k].Burden) * int64(m.present[g][d])
}

// dearestWants is more than all that can be missed.
func (m *model) dearestWants() int64 {
	sum := int64(0)
	for k := range m.p.Wants {
		for g := range m.p.Classes {
			for d := range m.p.Days {
				if m.eats[g][d] {
					least := m.extreme(g, d, -1, func(v *Serving) int { return v.Amounts[k] })
					sum += int64(max(0, m.p.Classes[g].Wants[k][d]-least)) * m.wantBurden(k, g, d)
				}
			}
		}
	}
	return sum
}

// wantCoordinate is the price of a want, which is never worth more than missing it costs.
func wantCoordinate(m *model, k, g, d int) coordinate {
	least := m.p.Classes[g].Wants[k][d]
	return coordinate{
		price:  func(p *prices) *int64 { return &p.want[k][g][d] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(least - r.amounts[k][g][d]) },
		unit:   max(1, float64(max(least, -least))/10),
		most:   m.wantBurden(k, g, d) << scale,
	}
}
