package menufill

// offers is what every recipe is in a slot: most slots share one.
type offers struct {
	minutes  []int
	burden   []int64
	servings [][]Serving
	value    [][]int64 // [recipe][class] objective of one serving
}

// baseOffers are the recipes as they describe themselves.
func baseOffers(p *Problem) *offers {
	o := &offers{}
	for i := range p.Recipes {
		o.add(p, p.Recipes[i].CookMinutes, 0, p.Recipes[i].Servings)
	}
	return o
}

// slotOffers are the recipes as a slot says they are there.
func slotOffers(p *Problem, list []Offer) *offers {
	o := &offers{}
	for i := range list {
		o.add(p, list[i].CookMinutes, list[i].Burden, list[i].Servings)
	}
	return o
}

func (o *offers) add(p *Problem, minutes, burden int, servings []Serving) {
	values := make([]int64, len(p.Classes))
	for g, v := range servings {
		values[g] = int64(p.Weights.Mass)*int64(v.MassDg) + int64(p.Weights.Cost)*int64(v.CostCents) + int64(v.Burden)
	}
	o.minutes, o.burden = append(o.minutes, minutes), append(o.burden, int64(burden))
	o.servings, o.value = append(o.servings, servings), append(o.value, values)
}

// free is the same with nothing that counts but minutes.
func (o *offers) free() *offers {
	return &offers{minutes: o.minutes, burden: make([]int64, len(o.burden)), servings: o.servings, value: o.value}
}

// serving is what an eater of class g gets of recipe r in the slot.
func (s *slot) serving(r, g int) *Serving { return &s.offers.servings[r][g] }

// cellValue is the objective of class g eating r in the slot.
func (s *slot) cellValue(g, r int) int64 { return int64(s.eaters[g]) * s.offers.value[r][g] }
