package carry

import (
	"cmp"
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Excess is how far a member is over the fair level of a morning, and why.
type Excess struct {
	Member trip.MemberID `json:"member"`
	Day    int           `json:"day"` // 1-based
	Fair   units.Mass    `json:"fair_g"`
	Over   units.Mass    `json:"over_g"`
	Why    prose.Text    `json:"-"` // in words, with names
}

// Part is the excess as a part of the fair load.
func (e Excess) Part() float64 { return float64(e.Over) / float64(max(1, e.Fair)) }

// holding is what a member has whatever the split does: own kit and the things
// only they may carry.
type holding struct {
	kit, held  units.Mass
	limit      optional.Value[units.Mass]
	capability units.Mass
}

// floor is what keeps a member from a lighter load on a morning.
type floor struct {
	holding
	fair  float64 // level of all who are there
	group float64 // level of the cook group alone with what only its members may carry
}

// reckonFair gives a stage its fair levels, before anything is decided on the
// way, and remembers what keeps whom above them.
func (c *calculation) reckonFair(stage *Stage, r run, pieces []piece) {
	ties := c.ties(pieces)
	for day := r.first; day <= r.last; day++ {
		holds := make([]holding, len(c.Trip.Crew))
		for _, place := range r.present {
			member := &c.Trip.Crew[place]
			holds[place] = holding{kit: member.OwnKit, held: member.OwnKit, limit: member.LoadLimit, capability: c.result.Members[place].Capability}
		}
		var all units.Mass
		groups := map[trip.GroupID]units.Mass{}
		for i := range pieces {
			mass := pieces[i].on(day, r.first)
			switch tie := ties[i]; {
			case tie.alone:
				holds[tie.place].held += mass
				continue
			case tie.group != 0:
				groups[tie.group] += mass
			}
			all += mass
		}
		var crew []holding
		fellows := map[trip.GroupID][]holding{}
		for _, place := range r.present {
			group := c.Trip.Crew[place].Group
			crew, fellows[group] = append(crew, holds[place]), append(fellows[group], holds[place])
		}
		level := fairLevel(crew, all)
		stage.Fair = append(stage.Fair, level)
		of := map[trip.GroupID]float64{}
		for group := range fellows {
			of[group] = fairLevel(fellows[group], groups[group])
		}
		for _, place := range r.present {
			c.floors[place][day-1] = floor{holding: holds[place], fair: level, group: of[c.Trip.Crew[place].Group]}
		}
	}
}

// tie is to whom a piece is bound: to one member, to a cook group, or to nobody.
type tie struct {
	alone bool
	place int
	group trip.GroupID
}

func (c *calculation) ties(pieces []piece) []tie {
	list := make([]tie, len(pieces))
	for i := range pieces {
		allowed := pieces[i].allowed
		if len(allowed) == 0 {
			continue
		}
		group := c.Trip.Crew[allowed[0]].Group
		switch {
		case len(allowed) == 1:
			list[i] = tie{alone: true, place: allowed[0]}
		case !slices.ContainsFunc(allowed, func(place int) bool { return c.Trip.Crew[place].Group != group }):
			list[i].group = group
		}
	}
	return list
}

// fairLevel is the share everybody would carry if the shared mass could be cut
// to the gram and only load limits counted. Who holds more than that carries what
// they hold, and the others share the rest: the least level at which the packs
// take all of it, as water finds its level. Where the limits leave none it is the
// level without them.
func fairLevel(crew []holding, shared units.Mass) float64 {
	if level, ok := waterLevel(crew, shared, true); ok {
		return level
	}
	level, _ := waterLevel(crew, shared, false)
	return level
}

// bend is where a pack begins or ceases to fill.
type bend struct {
	level float64
	by    float64 // grams for each unit of level
}

// waterLevel raises the level from bend to bend. It is false where the packs
// are full before all is in them.
func waterLevel(crew []holding, shared units.Mass, limited bool) (level float64, ok bool) {
	var bends []bend
	for _, m := range crew {
		if m.capability <= 0 {
			continue
		}
		capability := float64(m.capability)
		bends = append(bends, bend{float64(m.held) / capability, capability})
		if limit, has := m.limit.Get(); has && limited {
			bends = append(bends, bend{float64(max(limit, m.held)) / capability, -capability})
		}
	}
	if len(bends) == 0 {
		return 0, true
	}
	slices.SortStableFunc(bends, func(a, b bend) int { return cmp.Compare(a.level, b.level) })
	if shared <= 0 {
		return bends[len(bends)-1].level, true // nobody's load can be other than it is
	}
	rest, slope := float64(shared), 0.0
	level = bends[0].level
	for _, next := range bends {
		takes := float64(slope * (next.level - level))
		if takes >= rest {
			return level + rest/slope, true
		}
		rest -= takes
		level, slope = next.level, slope+next.by
	}
	const dry = 1 // gram by capability: what is left of the sums once every pack is at its limit
	if slope < dry {
		return level, false
	}
	return level + rest/slope, true
}

// reviewFair tells who is over the fair level by more than anybody feels, each
// on the morning of a stage on which it is most.
func (c *calculation) reviewFair() {
	for s := range c.result.Stages {
		stage := &c.result.Stages[s]
		for i := range c.result.Members {
			var most Excess
			for day := stage.FirstDay; day <= stage.LastDay; day++ {
				d := &c.result.Members[i].Days[day-1]
				f := &c.floors[i][day-1]
				if !d.Present || f.capability == 0 {
					continue
				}
				fair := f.capability.Scale(f.fair)
				found := Excess{Member: c.result.Members[i].Member, Day: day, Fair: fair, Over: d.Load - fair}
				if found.Part() > NearlyFair-1 && found.Part() > most.Part() {
					found.Why = c.whyOver(&c.Trip.Crew[i], f, d, stage, day)
					most = found
				}
			}
			if most.Day > 0 {
				stage.Over = append(stage.Over, most)
			}
		}
	}
}

// whyOver names the plainest thing that keeps a load above the fair level.
func (c *calculation) whyOver(member *trip.Member, f *floor, d *Day, stage *Stage, day int) prose.Text {
	fair := f.capability.Scale(f.fair)
	full := c.full(stage, day)
	switch {
	case f.kit > fair:
		return prose.Say("The own kit alone is %s.", f.kit)
	case f.held > fair && f.held <= d.Load:
		return prose.Say("Own kit and what only %s may carry are %s.", member.Name, f.held)
	case f.group > f.fair*NearlyFair:
		group := ""
		if g := c.Trip.Group(member.Group); g != nil {
			group = g.Name
		}
		return prose.Say("What stays with the cook group %s makes %.1f %% for each of it at the least.", group, 100*f.group)
	case c.passed[stage.FirstDay]:
		return prose.Say("No split was found that keeps every limit: this one passes them least.")
	case len(full) > 0:
		return prose.Say("Within load limit and room there is no place for a fair part with %s.", joinNames(full))
	case stage.LastDay > stage.FirstDay:
		return prose.Say("Everything keeps its carrier on these days, in whole bags: no fairer split was found.")
	default:
		return prose.Say("With whole bags no fairer split was found.")
	}
}

// full names who carries less than a fair part on a day because their pack was
// full, or at its limit with water in it, on a morning of the stage.
func (c *calculation) full(stage *Stage, day int) []prose.Text {
	const brim = 0.9 // of what is left beside the own kit: few bags fit into the rest
	var names []prose.Text
	for i := range c.result.Members {
		m, days := &c.Trip.Crew[i], c.result.Members[i].Days
		d, f := &days[day-1], &c.floors[i][day-1]
		if !d.Present || float64(d.Load)*NearlyFair >= float64(f.capability.Scale(f.fair)) {
			continue
		}
		full := float64(days[stage.FirstDay-1].Volume) > brim*float64(m.PackRoom)
		limit, limited := m.LoadLimit.Get()
		for on := stage.FirstDay; limited && on <= stage.LastDay; on++ {
			full = full || float64(days[on-1].Load+days[on-1].Water-m.OwnKit) > brim*float64(limit-m.OwnKit)
		}
		if full {
			names = append(names, prose.Verbatim(m.Name))
		}
	}
	return names
}
