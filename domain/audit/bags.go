package audit

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sittingFood is what bags and batches have in common.
type sittingFood struct {
	day    int
	meal   trip.Meal
	group  trip.GroupID
	recipe trip.RecipeID
	food   trip.FoodID
}

// checkBatchesInBags compares what is cooked with what is packed.
func checkBatchesInBags(a *auditor) {
	balance := map[sittingFood]units.Mass{}
	for i := range a.Portions.Batches {
		batch := &a.Portions.Batches[i]
		for _, total := range batch.Totals {
			balance[sittingFood{batch.Day, batch.Meal, batch.Group, batch.Recipe, total.Food}] += total.Mass
		}
	}
	for i := range a.Bags.Bags {
		bag := &a.Bags.Bags[i]
		for _, use := range bag.Uses {
			for _, content := range use.Contents {
				balance[sittingFood{use.Day, use.Meal, bag.Group, use.Recipe, content.Food}] -= content.Mass
			}
		}
	}
	for key, rest := range balance {
		if rest != 0 {
			a.fault(findings.Place{Day: key.day, Meal: key.meal, Group: key.group, Recipe: key.recipe, Food: key.food},
				prose.Say("bags hold what is cooked, to the gram"), prose.Say("bags and batches differ by %v", rest))
		}
	}
}

// checkBags looks into every bag.
func checkBags(a *auditor) {
	seen, codes := map[string]bool{}, map[string]bool{}
	for i := range a.Bags.Bags {
		bag := &a.Bags.Bags[i]
		place := findings.Place{Day: bag.Day, Meal: bag.Meal, Group: bag.Group, Bag: bag.Key}
		if seen[bag.Key] || codes[bag.Code] {
			a.fault(place, prose.Say("each bag has a name of its own"), prose.Say("bag %s is there twice", bag.Code))
		}
		seen[bag.Key], codes[bag.Code] = true, true
		sum := units.Mass(0)
		for _, content := range bag.Contents {
			sum += content.Mass
			if content.Mass <= 0 {
				a.fault(place, prose.Say("a bag holds something"), prose.Say("bag %s holds %s of %s", bag.Code, content.Mass, a.foodName(content.Food)))
			}
		}
		if sum != bag.Food || bag.Tare < 0 {
			a.fault(place, prose.Say("a bag weighs what it holds"), prose.Say("contents of bag %s add up to %v, the label says %v", bag.Code, sum, bag.Food))
		}
		a.checkUses(bag, place)
		a.checkLabel(bag, place)
	}
}

// checkUses compares what a bag holds with what is taken from it, and its days
// with its leg.
func (a *auditor) checkUses(bag *bags.Bag, place findings.Place) {
	if bag.Kind == bags.ReserveBag {
		return // it is held against what each member should have
	}
	taken := map[trip.FoodID]units.Mass{}
	first, last := len(a.Trip.Days)+1, 0
	for _, use := range bag.Uses {
		first, last = min(first, use.Day), max(last, use.Day)
		var all, shared units.Mass
		for _, content := range use.Contents {
			taken[content.Food] += content.Mass
			all += content.Mass
		}
		for _, share := range use.Shares {
			shared += share.Mass
			if share.Mass <= 0 || bag.Member != 0 && share.Member != bag.Member {
				a.fault(place, prose.Say("a share is somebody's"), prose.Say("%s gets %s of bag %s", a.memberName(share.Member), share.Mass, bag.Code))
			}
		}
		if use.Place == trip.AtBowl && shared != all {
			a.fault(place, prose.Say("shares add up to what is shared"), prose.Say("bag %s on day %d: shares of %v, %v are taken", bag.Code, use.Day, shared, all))
		}
		if trip.LegOf(a.Legs, use.Day) != bag.Leg {
			a.fault(place, prose.Say("a bag travels with its leg"), prose.Say("bag %s of day %d is in leg %d", bag.Code, use.Day, bag.Leg+1))
		}
	}
	for _, content := range bag.Contents {
		taken[content.Food] -= content.Mass
	}
	for food, rest := range taken {
		if rest != 0 {
			a.fault(place, prose.Say("a bag is eaten up"), prose.Say("%s of %s more than bag %s holds is taken out of it", rest, a.foodName(food), bag.Code))
		}
	}
	if first != bag.Day || last != bag.LastDay {
		a.fault(place, prose.Say("a bag tells its days"), prose.Say("bag %s is used on days %d to %d, it says %d to %d", bag.Code, first, last, bag.Day, bag.LastDay))
	}
}

// checkReserve makes sure that each member's emergency reserve is in bags of
// their own, that the member may eat it, and that nothing else is.
func checkReserve(a *auditor) {
	type held struct {
		member trip.MemberID
		food   trip.FoodID
	}
	balance := map[held]units.Mass{}
	for i := range a.Portions.Reserve {
		for _, amount := range a.Portions.Reserve[i].Packed {
			balance[held{a.Portions.Reserve[i].Member, amount.Food}] += amount.Mass
		}
	}
	for i := range a.Bags.Bags {
		bag := &a.Bags.Bags[i]
		if bag.Kind != bags.ReserveBag {
			continue
		}
		place := findings.Place{Day: bag.Day, Member: bag.Member, Bag: bag.Key}
		member := a.index.member[bag.Member]
		if member == nil || len(bag.Uses) > 0 || !bag.Reserve {
			a.fault(place, prose.Say("a reserve is somebody's and for no meal"), prose.Say("bag %s is of %s, meals that take from it: %d", bag.Code, a.memberName(bag.Member), len(bag.Uses)))
			continue
		}
		for _, content := range bag.Contents {
			balance[held{bag.Member, content.Food}] -= content.Mass
			food := a.index.food[content.Food]
			if food != nil && slices.ContainsFunc(member.Objections(food), trip.Objection.Dangerous) {
				a.fault(place, prose.Say("nobody is served what their allergy or diet forbids"), prose.Say("%s has %s in the emergency reserve", member.Name, food.Name))
			}
		}
	}
	for key, rest := range balance {
		if rest != 0 {
			a.fault(findings.Place{Member: key.member, Food: key.food}, prose.Say("bags hold the emergency reserve, to the gram"), prose.Say("bags and reserve differ by %v", rest))
		}
	}
}

// checkLabel compares a bag's allergens with its contents.
func (a *auditor) checkLabel(bag *bags.Bag, place findings.Place) {
	label := map[trip.Allergen]trip.Presence{}
	for _, allergen := range bag.Allergens {
		label[allergen.Allergen] = allergen.Presence
	}
	for _, allergen := range trip.DeclaredAllergens() {
		worst := trip.Free
		for _, content := range bag.Contents {
			if food := a.index.food[content.Food]; food != nil {
				worst = trip.Worse(worst, food.Presence(allergen))
			}
		}
		told, ok := label[allergen]
		if !ok {
			told = trip.Free
		}
		if told != worst {
			a.fault(place, prose.Say("the label tells every allergen"), prose.Say("label of bag %s says %s %s, its contents say %s", bag.Code, allergen, told, worst))
		}
	}
}

// checkBoxes makes sure that each bag of a later leg waits in one box.
func checkBoxes(a *auditor) {
	boxed, bought := map[string]int{}, map[string]units.Mass{}
	for _, box := range a.Resupply.Boxes {
		sum := units.Mass(0)
		for _, b := range box.BoughtThere {
			bought[b.Bag] += b.Mass
			if bag := a.index.bag[b.Bag]; bag == nil || bag.Leg != box.Leg {
				a.fault(findings.Place{Point: box.Point, Bag: b.Bag}, prose.Say("food is bought on the way for the days after"), prose.Say("%s is not of the leg that begins there", a.bagName(b.Bag)))
			}
		}
		for _, key := range box.Bags {
			boxed[key]++
			bag := a.index.bag[key]
			if bag == nil || bag.Leg != box.Leg {
				a.fault(findings.Place{Point: box.Point, Bag: key}, prose.Say("a box holds the bags of its leg"), prose.Say("%s does not belong into this box", a.bagName(key)))
				continue
			}
			sum += bag.Mass() - bought[key]
		}
		if sum != box.Mass {
			a.fault(findings.Place{Point: box.Point}, prose.Say("a box weighs what it holds"), prose.Say("bags add up to %v, the box says %v", sum, box.Mass))
		}
		if latest := max(box.PostBy, box.SendOn); box.Posted && latest > box.PickUp && !a.told(box.Point, "sent-too-late") {
			a.fault(findings.Place{Point: box.Point}, prose.Say("a box is posted before it is picked up"), prose.Say("posted on %s, picked up %s", latest, box.PickUp))
		}
		parcelled := 0
		for _, parcel := range box.Parcels {
			parcelled += len(parcel.Bags)
		}
		if box.Posted && parcelled != len(box.Bags) {
			a.fault(findings.Place{Point: box.Point}, prose.Say("each bag is in one parcel"), prose.Say("%d of %d bags are in parcels", parcelled, len(box.Bags)))
		}
	}
	for i := range a.Bags.Bags {
		bag := &a.Bags.Bags[i]
		want := 0
		if bag.Leg > 0 {
			want = 1
		}
		if bag.Leg > 0 && bought[bag.Key] == bag.Food {
			want = 0 // filled on the way
		}
		if boxed[bag.Key] != want {
			a.fault(findings.Place{Day: bag.Day, Bag: bag.Key}, prose.Say("a bag waits in one box or is carried from the start"), prose.Say("bag %s is in %d boxes", bag.Code, boxed[bag.Key]))
		}
	}
}

// checkShopping balances what is bought with what is packed.
func checkShopping(a *auditor) {
	packed := map[trip.FoodID]units.Mass{}
	for i := range a.Bags.Bags {
		for _, content := range a.Bags.Bags[i].Contents {
			packed[content.Food] += content.Mass
		}
	}
	needed := map[trip.FoodID]units.Mass{}
	for _, line := range a.Shopping.Lines {
		needed[line.Food] += line.Needed
		place := findings.Place{Food: line.Food}
		if line.FromHome+line.Bought-line.Leftover != line.Needed || line.Leftover < 0 || line.FromHome < 0 {
			a.fault(place, prose.Say("bought less leftover is what is needed"), prose.Say("%v at home and %v bought less %v left over is not %v", line.FromHome, line.Bought, line.Leftover, line.Needed))
		}
		bought := units.Mass(0)
		for _, buy := range line.Buys {
			bought += buy.Net * units.Mass(buy.Count)
		}
		if bought != line.Bought {
			a.fault(place, prose.Say("packages add up to what is bought"), prose.Say("packages add up to %v, the line says %v", bought, line.Bought))
		}
	}
	for i := range a.Trip.Foods {
		id := a.Trip.Foods[i].ID
		if packed[id] != needed[id] && !a.said(findings.Shopping, func(f findings.Finding) bool { return f.Place.Food == id }) {
			a.fault(findings.Place{Food: id}, prose.Say("what is packed is bought"), prose.Say("bags hold %v of %s, the shopping list has %v", packed[id], a.Trip.Foods[i].Name, needed[id]))
		}
	}
}
