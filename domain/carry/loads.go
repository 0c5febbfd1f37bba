package carry

import (
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/prose"
	"sumpter/domain/science/loadlimits"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// tally is what a member carries on one morning beside own kit.
type tally struct {
	food, gear, fuel, waste units.Mass
	volume, wasteRoom       units.Volume
}

// addLoads puts a piece on its carrier's back for the days of the stage.
func (c *calculation) addLoads(place int, p *piece, r run) {
	for day := r.first; day <= r.last; day++ {
		t := &c.loads[place][day-1]
		full := day <= p.until
		mass := p.on(day, r.first)
		if full {
			t.volume += p.volume
		}
		switch p.kind {
		case BagItem:
			if full {
				t.food += mass
			} else {
				t.waste += mass
				t.wasteRoom += p.empty
			}
		case GearItem:
			t.gear += mass
		case FuelItem:
			t.fuel += mass
		case WasteItem:
			t.waste += mass
			t.wasteRoom += p.empty
		}
	}
}

// reckonLoads writes every member's load of every day.
func (c *calculation) reckonLoads() {
	for i := range c.Trip.Crew {
		member := &c.Trip.Crew[i]
		for d := range c.Trip.Days {
			if !c.there(i, d+1) {
				continue
			}
			t := c.loads[i][d]
			day := Day{
				Present: true, OwnKit: member.OwnKit, Food: t.food, Gear: t.gear, Fuel: t.fuel, Waste: t.waste,
				Volume: t.volume, WasteRoom: t.wasteRoom,
			}
			day.Load = day.OwnKit + day.Food + day.Gear + day.Fuel + day.Waste
			if capability := c.result.Members[i].Capability; capability > 0 {
				day.Share = float64(day.Load) / float64(capability)
			}
			c.result.Members[i].Days[d] = day
		}
	}
	c.reckonWater()
	c.measureStages()
}

// measureStages takes the shares of the exact loads, where the solver saw
// tenths of grams rounded up.
func (c *calculation) measureStages() {
	for s := range c.result.Stages {
		stage := &c.result.Stages[s]
		hours, sum := 0.0, 0.0
		for day := stage.FirstDay; day <= stage.LastDay; day++ {
			worst := c.worstShare(day)
			if day == stage.FirstDay {
				stage.Worst = worst
			}
			weight := float64(c.hoursTenths(day))
			hours, sum = hours+weight, sum+float64(weight*worst)
		}
		if hours > 0 {
			stage.Mean = sum / hours
		}
		stage.WorstBound, stage.MeanBound = min(stage.WorstBound, stage.Worst), min(stage.MeanBound, stage.Mean)
	}
}

func (c *calculation) worstShare(day int) float64 {
	worst := 0.0
	for i := range c.result.Members {
		worst = max(worst, c.result.Members[i].Days[day-1].Share)
	}
	return worst
}

// adultAge is when the cautions for the young end.
const adultAge = 18

// reviewLoads warns where a member's heaviest morning is much for their body,
// and where water to a dry camp comes on top of a hard limit.
func (c *calculation) reviewLoads() {
	c.reviewWater()
	c.reviewFuel()
	for i := range c.Trip.Crew {
		member := &c.Trip.Crew[i]
		heaviest, load := 0, units.Mass(0)
		for d, day := range c.result.Members[i].Days {
			if day.Load+day.Water > load {
				heaviest, load = d+1, day.Load+day.Water
			}
		}
		if load == 0 || member.BodyMass <= 0 {
			continue
		}
		c.warnOfLoad(member, heaviest, load)
	}
}

func (c *calculation) warnOfLoad(member *trip.Member, day int, load units.Mass) {
	young := member.Age < adultAge
	caution := loadlimits.Cautions(young)
	part := float64(load) / float64(referenceMass(member))
	severity := findings.Note
	switch {
	case part > caution.Red:
		severity = findings.LookAt
	case part <= caution.Amber:
		return
	}
	c.find(severity, "heavy-load", findings.Place{Day: day, Member: member.ID},
		prose.Say("%s starts day %d with %s, %.0f %% of body mass.", member.Name, day, load, 100*part),
		publishedLoads(young, caution),
		c.lighten(member, day, referenceMass(member).Scale(caution.Amber)))
}

// lighten tells how a load comes down to a mass. Less own kit alone would not
// do: the fair split would fill the pack again.
func (c *calculation) lighten(member *trip.Member, day int, to units.Mass) prose.Text {
	at := c.place[member.ID]
	d := &c.result.Members[at].Days[day-1]
	to -= to % (100 * units.Gram)
	if own := c.floors[at][day-1].held + d.Water - d.ToCook; own > to {
		return prose.Say("Own kit, and what else only %s carries, are %s: take %s off that, or send more food ahead. Ask a doctor where health is in doubt.", member.Name, own, own-to)
	}
	return prose.Say("Give %s a load limit of %s, so that others carry the rest, or send more food ahead. Ask a doctor where health is in doubt.", member.Name, to)
}

// publishedLoads tells what a caution rests on.
func publishedLoads(young bool, caution loadlimits.Limits) prose.Text {
	if young {
		return prose.Say("For the young above %.0f %% is a caution and above %.0f %% a strong one, after %.0f to %.0f %% for school bags (American Academy of Pediatrics). It is not a medical limit.",
			100*caution.Amber, 100*caution.Red, 100*loadlimits.SchoolBagLeast, 100*loadlimits.SchoolBagMost)
	}
	return prose.Say("Above %.0f %% is a caution (common practice) and above %.0f %% a strong one (US Army ADP 3-90); a mountaineer should stay under %.0f %% (Langmuir 2004), and %.0f %% is for emergencies. It is not a medical limit.",
		100*caution.Amber, 100*caution.Red, 100*loadlimits.Mountaineer, 100*loadlimits.ApproachMarch)
}

// referenceMass is the body mass that cautions and strength are measured by.
func referenceMass(member *trip.Member) units.Mass {
	return units.FromKilograms(loadlimits.AllowanceMass(member.BodyMass.Kilograms(), 100*float64(member.Height)))
}

// Loads gives each member's load of each day, by place in the crew and day-1,
// as the needs of the next round want them: dry-camp water is on the back too.
func (r *Result) Loads() needs.Loads {
	loads := make(needs.Loads, len(r.Members))
	for i := range r.Members {
		loads[i] = make([]units.Mass, len(r.Members[i].Days))
		for d, day := range r.Members[i].Days {
			loads[i][d] = day.Load + day.Water
		}
	}
	return loads
}
