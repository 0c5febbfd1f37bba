package trip

import (
	"fmt"
	"strings"

	"sumpter/domain/prose"
)

func (c *checker) progress() {
	p := &c.trip.Progress
	if c.size("progress.purchases", "purchases", len(p.Purchases), 0, MaxPurchases) {
		for i := range p.Purchases {
			c.at("progress.purchases", i, 0, "")
			c.purchase(&p.Purchases[i])
		}
	}
	if c.size("progress.packed", "packed bags", len(p.Packed), 0, MaxNotedBags) {
		for i := range p.Packed {
			c.at("progress.packed", i, 0, "")
			c.packedBag(&p.Packed[i])
		}
		c.where = Where{List: "progress.packed"}
		distinct(c, "", "bag", p.Packed, func(b PackedBag) string { return b.Bag })
	}
	if c.size("progress.ends", "bags whose end is noted", len(p.Ends), 0, MaxNotedBags) {
		for i := range p.Ends {
			c.at("progress.ends", i, 0, "")
			c.bagEnd(&p.Ends[i])
		}
		c.where = Where{List: "progress.ends"}
		distinct(c, "", "bag", p.Ends, func(e BagEnd) string { return e.Bag })
	}
	c.partsGone(p.PartsGone)
	c.fuelNotes(p.FuelNotes)
	c.missingBoxes(p.MissingBoxes)
	c.theWay(p)
}

func (c *checker) purchase(p *Purchase) {
	named := 0
	for _, is := range []bool{p.Food != 0, p.Fuel != "", p.Other != ""} {
		if is {
			named++
		}
	}
	if named != 1 {
		c.add("", prose.Say("the purchase names not exactly one of food, fuel container and anything else"), prose.Say("one of the three"), prose.Say("Keep one of them, or take the purchase out."))
	}
	if p.Food != 0 {
		if !c.foods[p.Food] {
			c.missing("food", "food", int64(p.Food), "one of the foods, or take the purchase out")
		}
		c.above("net_g", "net mass of a package", p.Net.Kilograms(), maxStockKilograms, "kg")
	} else {
		c.within("net_g", "net mass of a package", p.Net.Kilograms(), 0, 0, "kg")
	}
	c.line("fuel_container", "fuel container", p.Fuel)
	c.line("other", "what was bought", p.Other)
	c.line("shop", "shop", p.Shop)
	c.within("count", "number bought", float64(p.Count), 1, maxInStock, "")
	if paid, known := p.Paid.Get(); known {
		c.price("paid", "amount paid", paid)
	}
	if p.By != 0 && !c.members[p.By] {
		c.missing("paid_by", "member", int64(p.By), "one of the crew, or nobody")
	}
}

func (c *checker) packedBag(b *PackedBag) {
	c.bagKey(b.Bag)
	if b.InBox != 0 && c.trip.Point(b.InBox) == nil {
		c.missing("in_box", "resupply point", int64(b.InBox), "one of the resupply points, or none")
	}
	if b.InPack != 0 && !c.members[b.InPack] {
		c.missing("in_pack", "member", int64(b.InPack), "one of the crew, or nobody")
	}
	if b.InBox != 0 && b.InPack != 0 {
		c.add("in_pack", prose.Say("the bag is in a box and in a pack"), prose.Say("one of the two"), prose.Say("Take one of them out."))
	}
	if !c.count("weighed", "weighings", len(b.Weighed), 0, maxWeighings) {
		return
	}
	distinct(c, "weighed", "weighing of food", b.Weighed, func(w Weighing) FoodID { return w.Food })
	for i, w := range b.Weighed {
		c.enter("weighed", i)
		if !c.foods[w.Food] {
			c.missing("food", "food", int64(w.Food), "one of the foods, or take the weighing out")
		}
		c.within("mass_g", "mass on the scale", w.Mass.Kilograms(), 0, maxStockKilograms, "kg")
		c.leave()
	}
}

func (c *checker) bagKey(key string) {
	if c.line("bag", "key of the bag", key) && isBlank(key) {
		c.add("bag", prose.Say("no bag is named"), prose.Say("the key of a bag, as the plan shows it"), prose.Say("Name the bag, or take the line out."))
	}
}

func isBlank(text string) bool { return strings.TrimSpace(text) == "" }

func (c *checker) bagEnd(e *BagEnd) {
	c.bagKey(e.Bag)
	word(c, "end", "end of the bag", e.End, Ends()...)
	c.dayOf(e.Day, prose.Say("Enter the day on which it happened."))
}

func (c *checker) partsGone(parts []PartGone) {
	if !c.size("progress.parts_gone", "parts of bags that are gone", len(parts), 0, MaxNotedBags) {
		return
	}
	for i := range parts {
		part := &parts[i]
		c.at("progress.parts_gone", i, 0, "")
		c.bagKey(part.Bag)
		word(c, "end", "end of the food", part.End, Ends()...)
		c.dayOf(part.Day, prose.Say("Enter the day on which it happened."))
		c.above("mass_g", "mass of what is gone", part.Mass.Kilograms(), maxStockKilograms, "kg")
	}
	c.where = Where{List: "progress.parts_gone"}
	distinct(c, "", "part of bag", parts, func(g PartGone) string { return fmt.Sprintf("%s on day %d", g.Bag, g.Day) })
}

func (c *checker) fuelNotes(notes []FuelNote) {
	if !c.size("progress.fuel_notes", "notes of fuel", len(notes), 0, MaxNotedBags) {
		return
	}
	for i := range notes {
		note := &notes[i]
		c.at("progress.fuel_notes", i, 0, "")
		if c.line("fuel_container", "key of the container", note.Container) && isBlank(note.Container) {
			c.add("fuel_container", prose.Say("no container is named"), prose.Say("the key of a fuel container, as the plan shows it"), prose.Say("Name the container, or take the line out."))
		}
		c.dayOf(note.Day, prose.Say("Enter the day on whose morning it was looked at."))
		c.within("left_g", "fuel left", note.Left.Kilograms(), 0, maxStockKilograms, "kg")
	}
	c.where = Where{List: "progress.fuel_notes"}
	distinct(c, "", "note of container", notes, func(f FuelNote) string { return fmt.Sprintf("%s on day %d", f.Container, f.Day) })
}

func (c *checker) missingBoxes(points []PointID) {
	if !c.size("progress.missing_boxes", "boxes that did not come", len(points), 0, MaxPoints) {
		return
	}
	distinct(c, "", "resupply point", points, func(id PointID) PointID { return id })
	for i, id := range points {
		c.at("progress.missing_boxes", i, 0, "")
		if c.trip.Point(id) == nil {
			c.missing("", "resupply point", int64(id), "one of the resupply points, or take the line out")
		}
	}
}

func (c *checker) dayOf(day int, remedy prose.Text) {
	if day < 1 || day > len(c.trip.Days) {
		c.add("day", prose.Say("the day is %d", day), prose.Say("a day from 1 to %d", len(c.trip.Days)), remedy)
	}
}
