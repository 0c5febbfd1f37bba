package onward

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// packed gives the bags with what is really in them: what the scale showed on
// packing night, less what is gone out of bags whose rest is still there. It
// tells whether any differs from the plan.
func (w *work) packed(planned []bags.Bag) (list []bags.Bag, differ bool) {
	weighed := map[string]*trip.PackedBag{}
	for i := range w.done.Packed {
		if b := &w.done.Packed[i]; len(b.Weighed) > 0 {
			weighed[b.Bag] = b
		}
	}
	gone := map[string][]trip.PartGone{}
	for _, part := range w.done.PartsGone {
		gone[part.Bag] = append(gone[part.Bag], part)
	}
	list = slices.Clone(planned)
	for i := range list {
		bag := &list[i]
		night, parts := weighed[bag.Key], gone[bag.Key]
		if night == nil && len(parts) == 0 {
			continue
		}
		if len(bag.Uses) == 0 { // a reserve: nothing is planned to be taken from it
			w.packedReserve(bag, night, parts)
			differ = differ || bag.Food != planned[i].Food
			continue
		}
		bag.Uses = cloneUses(bag.Uses)
		if night != nil {
			w.weigh(bag, night)
		}
		slices.SortStableFunc(parts, func(a, b trip.PartGone) int { return a.Day - b.Day })
		for _, part := range parts {
			w.takeOut(bag, part)
		}
		w.addUp(bag, &planned[i])
		differ = differ || bag.Food != planned[i].Food || !slices.Equal(bag.Contents, planned[i].Contents)
	}
	return list, differ
}

// packedReserve does the same for a bag that serves no meal.
func (w *work) packedReserve(bag *bags.Bag, night *trip.PackedBag, parts []trip.PartGone) {
	bag.Contents = slices.Clone(bag.Contents)
	bag.Food, bag.Kcal = 0, 0
	for i := range bag.Contents {
		c := &bag.Contents[i]
		if night != nil {
			if mass, ok := night.WeighedMass(c.Food); ok {
				c.Mass = mass
			}
		}
		for j := range parts {
			taken := min(parts[j].Mass, c.Mass)
			c.Mass, parts[j].Mass = c.Mass-taken, parts[j].Mass-taken
		}
		bag.Food += c.Mass
		if food := w.foods[c.Food]; food != nil {
			bag.Kcal += food.Kcal(c.Mass)
		}
	}
	bag.Contents = slices.DeleteFunc(bag.Contents, func(c bags.Content) bool { return c.Mass <= 0 })
}

func cloneUses(uses []bags.Use) []bags.Use {
	list := slices.Clone(uses)
	for i := range list {
		list[i].Contents, list[i].Shares = slices.Clone(list[i].Contents), slices.Clone(list[i].Shares)
	}
	return list
}

// weigh scales each food to what was weighed in; each use gets its part, the
// last what rounding leaves.
func (w *work) weigh(bag *bags.Bag, night *trip.PackedBag) {
	for _, content := range bag.Contents {
		mass, ok := night.WeighedMass(content.Food)
		if !ok || mass == content.Mass || content.Mass <= 0 {
			continue
		}
		scaleFood(bag.Uses, content.Food, content.Mass, mass)
	}
}

// scaleFood changes how much of a food the uses take together.
func scaleFood(uses []bags.Use, food trip.FoodID, from, to units.Mass) {
	left := to
	var last *bags.Content
	for i := range uses {
		for j := range uses[i].Contents {
			if c := &uses[i].Contents[j]; c.Food == food {
				c.Mass = min(left, c.Mass.Scale(float64(to)/float64(from)))
				left -= c.Mass
				last = c
			}
		}
	}
	if last != nil {
		last.Mass += left
	}
}

// takeOut takes food that is gone from what is eaten on its day and later, of
// everything alike.
func (w *work) takeOut(bag *bags.Bag, part trip.PartGone) {
	first := slices.IndexFunc(bag.Uses, func(u bags.Use) bool { return u.Day >= part.Day })
	if first < 0 {
		return
	}
	uses := bag.Uses[first:]
	var there units.Mass
	held := map[trip.FoodID]units.Mass{}
	for i := range uses {
		for _, c := range uses[i].Contents {
			held[c.Food] += c.Mass
			there += c.Mass
		}
	}
	if there <= 0 {
		return
	}
	left := max(0, there-part.Mass)
	foods := slices.DeleteFunc(slices.Clone(bag.Contents), func(c bags.Content) bool { return held[c.Food] <= 0 })
	for i, c := range foods {
		to := min(left, held[c.Food].Scale(max(0, 1-float64(part.Mass)/float64(there))))
		if i == len(foods)-1 {
			to = min(left, held[c.Food])
		}
		left -= to
		scaleFood(uses, c.Food, held[c.Food], to)
	}
}

// addUp makes the sums of a bag those of its uses. What is to be shared out
// keeps its proportions, and so does the water.
func (w *work) addUp(bag, planned *bags.Bag) {
	held := map[trip.FoodID]units.Mass{}
	bag.Food, bag.Kcal, bag.Water, bag.PourOff = 0, 0, 0, 0
	for i := range bag.Uses {
		use, before := &bag.Uses[i], &planned.Uses[i]
		was, mass := before.Mass(), use.Mass()
		use.Contents = slices.DeleteFunc(use.Contents, func(c bags.Content) bool { return c.Mass <= 0 })
		use.Kcal = 0
		for _, c := range use.Contents {
			held[c.Food] += c.Mass
			if food := w.foods[c.Food]; food != nil {
				use.Kcal += food.Kcal(c.Mass)
			}
		}
		if part := float64(mass) / float64(max(1, was)); mass != was {
			use.Water, use.PourOff = before.Water.Scale(part), before.PourOff.Scale(part)
			scaleShares(use, part, mass)
		}
		bag.Food += mass
		bag.Kcal += use.Kcal
		if bag.Kind != bags.StoreBag {
			bag.Water += use.Water
			bag.PourOff += use.PourOff
		}
	}
	bag.Contents = nil
	for _, c := range planned.Contents {
		if held[c.Food] > 0 {
			bag.Contents = append(bag.Contents, bags.Content{Food: c.Food, Mass: held[c.Food]})
		}
	}
}

func scaleShares(use *bags.Use, part float64, mass units.Mass) {
	if len(use.Shares) == 0 {
		return
	}
	left := mass
	for i := range use.Shares {
		share := &use.Shares[i]
		share.Mass = min(left, share.Mass.Scale(part))
		if i == len(use.Shares)-1 {
			share.Mass = left
		}
		left -= share.Mass
	}
	use.Shares = slices.DeleteFunc(use.Shares, func(s bags.Share) bool { return s.Mass <= 0 })
}

// unticked lists the bags that packing night did not close, once it closed
// any: whether they are there nobody noted.
func (w *work) unticked() []string {
	ticked := map[string]bool{}
	for i := range w.done.Packed {
		if w.done.Packed[i].Done {
			ticked[w.done.Packed[i].Bag] = true
		}
	}
	if len(ticked) == 0 {
		return nil
	}
	var list []string
	for i := range w.plan.Bags.Bags {
		bag := &w.plan.Bags.Bags[i]
		_, ended := w.ends[bag.Key]
		if !ticked[bag.Key] && !ended && bag.LastDay >= w.from && !w.unfed[bag.Leg] {
			list = append(list, bag.Key)
		}
	}
	return list
}
