package menufill

// newClimber climbs by all prices.
func newClimber(m *model, evaluate func(*prices) *relaxed, steps *budget) *climber {
	c := &climber{evaluate: evaluate, steps: steps, groups: linkCoordinates(m)}
	for d := range m.p.Days {
		c.groups = append(c.groups, dayCoordinates(m, d)...)
	}
	return c
}

// newDayClimber climbs by the prices inside day d only.
func newDayClimber(m *model, evaluate func(*prices) *relaxed, d int, steps *budget) *climber {
	return &climber{evaluate: evaluate, steps: steps, groups: dayCoordinates(m, d)}
}

// dayCoordinates lists the prices of the rules inside day d.
func dayCoordinates(m *model, d int) []coordinate {
	var list []coordinate
	for g := range m.p.Classes {
		if m.eats[g][d] {
			list = append(list, floorCoordinate(m, g, d), ceilingCoordinate(m, g, d), proteinCoordinate(m, g, d))
			for k := range m.p.Wants {
				if m.p.Wants[k].Burden > 0 {
					list = append(list, wantCoordinate(m, k, g, d))
				}
			}
		}
	}
	for _, w := range m.singles[d] {
		list = append(list, windowCoordinate(m, w))
	}
	return append(list, cookCoordinate(m, d))
}

// newLinkClimber climbs by the prices between days only.
func newLinkClimber(m *model, evaluate func(*prices) *relaxed, steps *budget) *climber {
	return &climber{evaluate: evaluate, steps: steps, groups: linkCoordinates(m)}
}

// linkCoordinates lists the prices between days of rules that can bind.
func linkCoordinates(m *model) []coordinate {
	var list []coordinate
	for g := range m.p.Classes {
		if m.totalBinds[g] {
			list = append(list, totalCoordinate(m, g))
		}
	}
	slots := make([]int, len(m.p.Recipes))
	for _, s := range m.slots {
		for _, r := range s.candidates {
			slots[r]++
		}
	}
	for r := range m.p.Recipes {
		if slots[r] > 1 && (m.p.Weights.Repeat > 0 || slots[r] > m.maxRepeats[r]) {
			list = append(list, repeatCoordinate(r))
		}
	}
	for w := range m.windows {
		if !m.windows[w].single() {
			list = append(list, windowCoordinate(m, w))
		}
	}
	return list
}

func floorCoordinate(m *model, g, d int) coordinate {
	least := m.p.Classes[g].EnergyMin[d]
	return coordinate{
		price:  func(p *prices) *int64 { return &p.floor[g][d] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(least - r.kcal[g][d]) },
		unit:   max(1, float64(least)/10),
	}
}

func ceilingCoordinate(m *model, g, d int) coordinate {
	most := m.p.Classes[g].EnergyMax[d]
	return coordinate{
		price:  func(p *prices) *int64 { return &p.ceiling[g][d] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(r.kcal[g][d] - most) },
		unit:   max(1, float64(most)/10),
	}
}

func proteinCoordinate(m *model, g, d int) coordinate {
	least := m.p.Classes[g].ProteinMin[d]
	return coordinate{
		price:  func(p *prices) *int64 { return &p.protein[g][d] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(least - r.protein[g][d]) },
		unit:   max(1, float64(least)/10),
	}
}

func cookCoordinate(m *model, d int) coordinate {
	most := m.p.CookMinutes[d]
	return coordinate{
		price:  func(p *prices) *int64 { return &p.cook[d] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(r.cook[d] - most) },
		unit:   max(1, float64(most)/5),
	}
}

func totalCoordinate(m *model, g int) coordinate {
	least := m.p.Classes[g].EnergyTotal
	return coordinate{
		price: func(p *prices) *int64 { return &p.total[g] },
		excess: func(_ *prices, r *relaxed) float64 {
			got := 0
			for _, kcal := range r.kcal[g] {
				got += kcal
			}
			return float64(least - got)
		},
		unit: max(1, float64(least)/20),
	}
}

func repeatCoordinate(recipe int) coordinate {
	return coordinate{
		price: func(p *prices) *int64 { return &p.repeat[recipe] },
		excess: func(p *prices, r *relaxed) float64 {
			return float64(int64(r.uses[recipe]) - p.freeUses(recipe))
		},
		unit: 1,
	}
}

func windowCoordinate(m *model, w int) coordinate {
	return coordinate{
		most:   m.windows[w].most,
		price:  func(p *prices) *int64 { return &p.window[w] },
		excess: func(_ *prices, r *relaxed) float64 { return float64(r.windows[w] - 1) },
		unit:   1,
	}
}
