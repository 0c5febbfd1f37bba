package carry

import (
	"math/bits"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dip is the step in which cooking water is shared out: what people measure
// with a cup.
const dip = units.Litre / 10

// memberDay is a place in the crew and a day from 1.
type memberDay struct{ place, day int }

// waterShare is what one member carries to a dry camp.
type waterShare struct{ drink, toCook units.Mass }

// filled is a pack before water comes into it.
type filled struct {
	load units.Mass
	room units.Volume // of shared things in it
}

// shareWater gives what each carries to the dry camps. What a member drinks
// there stays with them. What their cook group cooks with is poured out in
// steps of a tenth of a litre, each to whom it leaves with the least load by
// strength that day, water included: that makes the most loaded of them as
// little loaded as can be. No step goes where it passes a load limit or the
// room of the pack as long as another of the group has place for it; nor to who
// carries nothing by their strength.
func (w *Work) shareWater(pack func(place, day int) filled) map[memberDay]waterShare {
	place := map[trip.MemberID]int{}
	for i := range w.Trip.Crew {
		place[w.Trip.Crew[i].ID] = i
	}
	shares := map[memberDay]waterShare{}
	for _, water := range w.Cooking.Water {
		if i, known := place[water.Member]; known && water.CarriedDrink > 0 {
			shares[memberDay{i, water.Day}] = waterShare{drink: waterMass(water.CarriedDrink)}
		}
	}
	for _, camp := range w.Cooking.DryCamps {
		var jugs []jug
		for i := range w.Trip.Crew {
			if member := &w.Trip.Crew[i]; member.Group == camp.Group && w.there(i, camp.Day) {
				jugs = append(jugs, newJug(i, member, pack(i, camp.Day), shares[memberDay{i, camp.Day}].drink))
			}
		}
		pour(camp.Cooking, jugs)
		for _, j := range jugs {
			at := memberDay{j.place, camp.Day}
			shares[at] = waterShare{drink: shares[at].drink, toCook: waterMass(j.water)}
		}
	}
	return shares
}

// waterMass is what water weighs, a gram a millilitre.
func waterMass(v units.Volume) units.Mass { return units.FromGrams(v.Millilitres()) }

// jug is a member while water is poured out.
type jug struct {
	place    int
	strength uint64     // hectograms
	load     units.Mass // with the water in it
	most     units.Mass // hard limit
	room     units.Volume
	water    units.Volume // cooking water so far
}

func newJug(place int, member *trip.Member, pack filled, drink units.Mass) jug {
	j := jug{place: place, strength: uint64(hectograms(member)), load: pack.load + drink, most: units.Mass(1) << 50}
	if limit, limited := member.LoadLimit.Get(); limited {
		j.most = limit
	}
	j.room = member.PackRoom - pack.room - units.FromMillilitres(drink.Grams())
	return j
}

// pour shares out cooking water step by step; the last step may be smaller.
func pour(cooking units.Volume, jugs []jug) {
	for cooking > 0 && len(jugs) > 0 {
		step := min(dip, cooking)
		j := &jugs[nextJug(jugs, step)]
		j.load, j.room, j.water = j.load+waterMass(step), j.room-step, j.water+step
		cooking -= step
	}
}

// nextJug is who takes the next step: of those who may, by the rules that can
// still be kept, who has the least load by strength with it, the first of
// equals.
func nextJug(jugs []jug, step units.Volume) int {
	mass := waterMass(step)
	for _, may := range []func(*jug) bool{
		func(j *jug) bool { return j.strength > 0 && j.load+mass <= j.most && j.room >= step },
		func(j *jug) bool { return j.strength > 0 && j.load+mass <= j.most },
		func(j *jug) bool { return j.strength > 0 },
	} {
		best := -1
		for i := range jugs {
			if may(&jugs[i]) && (best < 0 || jugs[i].lessBurdened(&jugs[best], mass)) {
				best = i
			}
		}
		if best >= 0 {
			return best
		}
	}
	least := 0 // nobody is strong enough to carry anything: even amounts
	for i := range jugs {
		if jugs[i].water < jugs[least].water {
			least = i
		}
	}
	return least
}

// lessBurdened compares loads by strength with so much more in each, exactly.
func (j *jug) lessBurdened(other *jug, more units.Mass) bool {
	high, low := bits.Mul64(uint64(j.load+more), other.strength)
	otherHigh, otherLow := bits.Mul64(uint64(other.load+more), j.strength)
	return high < otherHigh || high == otherHigh && low < otherLow
}

// reckonWater puts the water to dry camps on top of the loads.
func (c *calculation) reckonWater() {
	shares := c.shareWater(func(place, day int) filled {
		d := &c.result.Members[place].Days[day-1]
		return filled{load: d.Load, room: d.Volume}
	})
	for at, share := range shares {
		d := &c.result.Members[at.place].Days[at.day-1]
		d.Water, d.ToCook = share.drink+share.toCook, share.toCook
	}
}

// CookingWater is how much of their group's cooking water each carries to the
// dry camp of a day; empty where there is none.
func (r *Result) CookingWater(day int) map[trip.MemberID]units.Volume {
	found := map[trip.MemberID]units.Volume{}
	for i := range r.Members {
		m := &r.Members[i]
		if day >= 1 && day <= len(m.Days) && m.Days[day-1].ToCook > 0 {
			found[m.Member] = m.Days[day-1].ToCookWith()
		}
	}
	return found
}

// CarryIn is the water to a dry camp as a volume.
func (d *Day) CarryIn() units.Volume { return units.FromMillilitres(d.Water.Grams()) }

// ToCookWith is the part of that water that the cook group cooks with.
func (d *Day) ToCookWith() units.Volume { return units.FromMillilitres(d.ToCook.Grams()) }

// reviewWater warns where water to a dry camp brings a load over a hard limit
// that it keeps without. It was poured where there was place for it, so nobody
// of the cook group has any left.
func (c *calculation) reviewWater() {
	for i := range c.Trip.Crew {
		member := &c.Trip.Crew[i]
		limit, limited := member.LoadLimit.Get()
		if !limited {
			continue
		}
		for d, day := range c.result.Members[i].Days {
			if over := day.Load + day.Water - limit; day.Water > 0 && day.Load <= limit && over > 0 {
				c.find(findings.MustFix, "water-over-limit", findings.Place{Day: d + 1, Member: member.ID},
					prose.Say("With the water to the dry camp %s carries %s more than their limit on day %d.", member.Name, over, d+1),
					c.whyWater(limit, &day),
					prose.Say("Let another cook group carry %s of that water, give %s so much less to carry, raise the limit, or camp where there is water.", over, member.Name))
			}
		}
	}
}

func (c *calculation) whyWater(limit units.Mass, day *Day) prose.Text {
	if day.ToCook == 0 {
		return prose.Say("The load without water keeps the limit of %s; %s of their own drink come on top.", limit, day.Water)
	}
	return prose.Say("The load without water keeps the limit of %s; %s of water come on top, %s of it to cook with: nobody of their cook group can take more within their limit.", limit, day.Water, day.ToCook)
}
