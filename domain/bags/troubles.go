package bags

import (
	"cmp"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// troubles are what packing met, once for each food.
type troubles struct {
	untyped, unbottled, tight map[trip.FoodID]bool
}

func newTroubles() troubles {
	return troubles{map[trip.FoodID]bool{}, map[trip.FoodID]bool{}, map[trip.FoodID]bool{}}
}

func (s *troubles) note(f fit, l *lot) {
	for _, a := range l.lines {
		id := a.ware.food.ID
		s.untyped[id] = s.untyped[id] || f.untyped
		s.unbottled[id] = s.unbottled[id] || f.unbottled
		s.tight[id] = s.tight[id] || f.tight
	}
}

// findings tells what the leader must know about the bags.
func (k *packer) findings() []findings.Finding {
	list := k.typeFindings()
	for i := range k.trip.Foods {
		if w := k.foods[k.trip.Foods[i].ID]; k.used(w.food.ID) {
			list = append(list, k.foodFindings(w)...)
		}
	}
	list = append(list, k.apartFindings()...)
	list = append(list, k.storageFindings()...)
	findings.Sort(list)
	return list
}

func (k *packer) used(id trip.FoodID) bool {
	_, ok := k.seen.untyped[id]
	return ok
}

func finding(severity findings.Severity, code string, place findings.Place, what, why, remedy prose.Text) findings.Finding {
	return findings.Finding{Severity: severity, Stage: findings.Bags, Code: code, Place: place, What: what, Why: why, Remedy: remedy}
}

// typeFindings speaks of bag types that are missing altogether.
func (k *packer) typeFindings() []findings.Finding {
	var list []findings.Finding
	if names := k.names(k.seen.untyped); len(names) > 0 {
		list = append(list, finding(findings.LookAt, "no-bag-type", findings.Place{},
			prose.Say("The trip has no bag to pack %s into: no tare is reckoned.", listed(names)),
			prose.Say("A bag weighs 2 to 12 g and is carried to the end (common practice, no source)."),
			prose.Say("Enter the bags you have, with size and weight.")))
	}
	if names := k.names(k.seen.unbottled); len(names) > 0 {
		list = append(list, finding(findings.LookAt, "no-bottle", findings.Place{},
			prose.Say("There is no bottle or jar for %s: double bags are planned.", listed(names)),
			prose.Say("What runs leaks out of a bag under pressure and spoils what lies around it, for an allergic member too (common practice, no source)."),
			prose.Say("Enter a bottle or jar as a bag type that holds liquids.")))
	}
	return list
}

// foodFindings speaks of one food.
func (k *packer) foodFindings(w *ware) []findings.Finding {
	place := findings.Place{Food: w.food.ID}
	var list []findings.Finding
	if !w.densityKnown {
		list = append(list, finding(findings.Note, "density-unknown", place,
			prose.Say("How much room %s takes is not known; %.2f g per mL is reckoned.", w.food.Name, w.density),
			prose.Say("A light bulk density for its form, so that the bag is large enough rather than too small (common practice, no source)."),
			prose.Say("Weigh a full cup of it and enter the bulk density.")))
	}
	if k.seen.tight[w.food.ID] {
		list = append(list, finding(findings.LookAt, "bag-too-small", place,
			prose.Say("A bag with %s does not close even in the largest size.", w.food.Name),
			prose.Say("The smallest amount the scale can weigh out takes more room than the largest bag has."),
			prose.Say("Enter a larger bag, or a finer step of the scale.")))
	}
	if day, rest := k.opened(w); day > 0 {
		list = append(list, finding(findings.LookAt, "opened-package", findings.Place{Day: day, Food: w.food.ID},
			prose.Say("%s stays in its package, but day %d needs %s less than whole packages hold.", w.food.Name, day, rest),
			prose.Say("Once opened it needs cold; what is left over in a warm pack is not safe to keep (FDA Food Code 1-201.10, 3-501.16)."),
			prose.Say("Set the portions to whole packages, or eat the rest at once.")))
	}
	return list
}

// opened finds the first day on which an opened package that then needs cold
// is not used up.
func (k *packer) opened(w *ware) (day int, rest units.Mass) {
	if !w.food.Storage.TCSWhenOpen || !w.food.PackedAsBought {
		return 0, 0
	}
	for i := range k.bags {
		for _, c := range k.bags[i].Contents {
			if c.Food != w.food.ID {
				continue
			}
			if pack, count := w.bought(c.Mass); pack != nil && pack.Net*units.Mass(count) > c.Mass {
				return k.bags[i].Day, pack.Net*units.Mass(count) - c.Mass
			}
		}
	}
	return 0, 0
}

// apartFindings say why a member has bags of their own beside their snacks.
func (k *packer) apartFindings() []findings.Finding {
	var list []findings.Finding
	for i := range k.trip.Crew {
		member := &k.trip.Crew[i]
		var count int
		var first *Bag
		for j := range k.bags {
			if bag := &k.bags[j]; bag.Kind == OwnBag && bag.Member == member.ID {
				if count++; first == nil {
					first = bag
				}
			}
		}
		if first == nil {
			continue
		}
		cause, allergen, ok := k.apart.why(first)
		if !ok {
			continue // lunches in own bags, as the settings ask
		}
		what := prose.Say("%s has %d bags of their own: others eat %s beside them, which holds or may hold %s.", member.Name, count, k.foods[cause.food].food.Name, allergen)
		if count == 1 {
			what = prose.Say("%s has a bag of their own: others eat %s beside them, which holds or may hold %s.", member.Name, k.foods[cause.food].food.Name, allergen)
		}
		list = append(list, finding(findings.Note, "sealed-apart", findings.Place{Day: first.Day, Member: member.ID, Bag: first.Key}, what,
			prose.Say("Hands and spoons that were in one bag carry traces into the next (common practice, no source)."),
			prose.Say("Pack them first, seal them, and let %s open them with clean hands.", member.Name)))
	}
	return list
}

// storageFindings compares what must be kept from animals on the fullest night
// of each leg with the containers there are for it. All food smells, so all
// bags count, and what members have that smells besides.
func (k *packer) storageFindings() []findings.Finding {
	var room units.Volume
	for i := range k.trip.Gear {
		if k.trip.Gear[i].Kind == trip.FoodStorage {
			room += k.trip.Gear[i].Capacity
		}
	}
	if room == 0 {
		return nil
	}
	var list []findings.Finding
	for n, leg := range k.legs {
		night := leg.FirstDay
		if outdoors(k.trip, leg.From) {
			night-- // the box is opened in the evening, and all of it is there over night
		}
		var food units.Volume
		for i := range k.bags {
			if k.bags[i].Leg == n && k.bags[i].LastDay > night {
				food += k.bags[i].Volume
			}
		}
		var besides units.Volume
		for i := range k.trip.Crew {
			if k.trip.Crew[i].Present(night) {
				besides += k.trip.Settings.Smellables
			}
		}
		if food+besides <= room {
			continue
		}
		list = append(list, finding(findings.LookAt, "food-storage-room", findings.Place{Day: night, Point: leg.From},
			prose.Say("On the night after day %d there is %s of food, and %s of what smells besides, for %s of food-storage containers.", night, food, besides, room),
			prose.Say("Where rules ask for containers, everything that smells belongs inside: food, rubbish, paste, soap. Local rules decide (common practice, no source)."),
			prose.Say("Take containers for %s more, resupply earlier, or ask the land manager what else is allowed.", food+besides-room)))
	}
	return list
}

// outdoors tells whether food that comes at a point is out there over night: a
// post, a shop and a hut have a roof and a door.
func outdoors(t *trip.Trip, id trip.PointID) bool {
	p := t.Point(id)
	return p != nil && (p.Kind == trip.Cache || p.Kind == trip.Meeting)
}

// names of the foods in a set, by ID.
func (k *packer) names(set map[trip.FoodID]bool) []string {
	var ids []trip.FoodID
	for id, in := range set {
		if in {
			ids = append(ids, id)
		}
	}
	slices.SortFunc(ids, func(a, b trip.FoodID) int { return cmp.Compare(a, b) })
	var names []string
	for _, id := range ids {
		names = append(names, k.foods[id].food.Name)
	}
	return names
}

// listed joins the first names and counts the rest.
func listed(names []string) prose.Text {
	const most = 3
	if len(names) <= most {
		return prose.List(", ", names)
	}
	return prose.Say("%s and %d more", prose.List(", ", names[:most]), len(names)-most)
}
