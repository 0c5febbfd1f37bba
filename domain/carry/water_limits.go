package carry

import (
	"context"
	"slices"

	"sumpter/domain/solve/fairsplit"
	"sumpter/domain/units"
)

// The water to dry camps is poured on a split that did not know of it. Where that
// passes a load limit, the stage is split again with so much less allowed in those
// packs, a few times, as what is poured moves along.
const waterRounds = 4

// spareForWater is left free besides, so that a gram here and there in the next
// round of the plan asks for no new search.
const spareForWater = 50 * units.Gram

// leaveRoomForWater makes the split one that keeps load limits with the water in
// the packs, or passes them least, and lowers the limits of the problem to what
// that took. It tells whether it changed them.
func (c *calculation) leaveRoomForWater(ctx context.Context, r run, pieces []piece, problem *fairsplit.Problem, options fairsplit.Options, solved *fairsplit.Result) (bool, error) {
	if !solved.Feasible || decidedOn(c.Decided, r.first) != nil {
		return false, nil
	}
	over, most := c.overWithWater(r, pieces, solved.Carrier)
	least, found := total(over), false
	tight := *problem
	for range waterRounds {
		if least == 0 {
			break
		}
		tight.Crew = slices.Clone(tight.Crew)
		lowered := false
		for seat, load := range most {
			m, held := &tight.Crew[seat], steps(c.floors[r.present[seat]][r.first-1].held)
			if over[seat] > 0 && m.MaxGrams > held {
				m.MaxGrams, lowered = max(held, min(m.MaxGrams, steps(load))), true
			}
		}
		if !lowered {
			break // what is over a limit is their own
		}
		again, err := c.solve(ctx, r, tight, options)
		if err != nil {
			return found, err
		}
		if !again.Feasible {
			break
		}
		over, most = c.overWithWater(r, pieces, again.Carrier)
		now := total(over)
		if now >= least {
			break
		}
		least, found, *solved, *problem = now, true, again, tight
	}
	return found, nil
}

func total(masses []units.Mass) (sum units.Mass) {
	for _, mass := range masses {
		sum += mass
	}
	return sum
}

// overWithWater tells by how much the packs of a split pass the load limits on
// the mornings on which water is carried to a dry camp, by seat, and what load on
// the first morning should do: what is eaten before the dry camp is no help.
func (c *calculation) overWithWater(r run, pieces []piece, carrier []int) (over, most []units.Mass) {
	over, most = make([]units.Mass, len(r.present)), make([]units.Mass, len(r.present))
	dry := map[int]bool{}
	for _, water := range c.Cooking.Water {
		dry[water.Day] = dry[water.Day] || water.CarriedDrink > 0
	}
	for _, camp := range c.Cooking.DryCamps {
		dry[camp.Day] = true
	}
	var first map[int]filled
	for day := r.first; day <= r.last; day++ {
		if !dry[day] {
			continue
		}
		if first == nil {
			first = c.packsOn(r, pieces, carrier, r.first)
		}
		packs := c.packsOn(r, pieces, carrier, day)
		shares := c.shareWater(func(place, on int) filled {
			if on != day {
				return filled{}
			}
			return packs[place]
		})
		for seat, place := range r.present {
			share := shares[memberDay{place, day}]
			water := share.drink + share.toCook
			limit, limited := c.Trip.Crew[place].LoadLimit.Get()
			by := packs[place].load + water - limit
			if !limited || water == 0 || by <= over[seat] {
				continue
			}
			over[seat], most[seat] = by, first[place].load-by-spareForWater
			begun, left := first[place].load-c.floors[place][r.first-1].held, packs[place].load-c.floors[place][day-1].held
			if left > 0 && begun > left {
				most[seat] = first[place].load - (by + spareForWater).Scale(float64(begun)/float64(left))
			}
		}
	}
	return over, most
}

// packsOn gives the packs of a split on a day, by place in the crew.
func (c *calculation) packsOn(r run, pieces []piece, carrier []int, day int) map[int]filled {
	packs := map[int]filled{}
	for _, place := range r.present {
		packs[place] = filled{load: c.Trip.Crew[place].OwnKit}
	}
	for i := range pieces {
		if carrier[i] == fairsplit.Nobody {
			continue
		}
		p, place := &pieces[i], r.present[carrier[i]]
		pack := packs[place]
		pack.load += p.on(day, r.first)
		if day <= p.until {
			pack.room += p.volume
		}
		packs[place] = pack
	}
	return packs
}

// boundWithoutWater tells how near a split is to the best by what was proven
// before room was left for water.
func boundWithoutWater(solved *fairsplit.Result, dry fairsplit.Result) {
	solved.R1Bound, solved.SBound = dry.R1Bound, dry.SBound
	solved.Proven = dry.Proven && solved.R1.Cmp(dry.R1) <= 0 && solved.S.Cmp(dry.S) <= 0
}

// passesLimit tells whether a load of a stage passes its limit, water included.
func (c *calculation) passesLimit(of *Result, stage *Stage) bool {
	for i := range of.Members {
		m := c.Trip.Member(of.Members[i].Member)
		if m == nil {
			continue
		}
		limit, limited := m.LoadLimit.Get()
		for day := stage.FirstDay; limited && day <= min(stage.LastDay, len(of.Members[i].Days)); day++ {
			if d := &of.Members[i].Days[day-1]; d.Load+d.Water > limit {
				return true
			}
		}
	}
	return false
}
